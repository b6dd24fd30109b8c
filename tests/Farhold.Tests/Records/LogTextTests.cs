namespace Farhold.Tests.Records;

/// <summary>What the log says of an entry that was corrected.</summary>
public class LogTextTests
{
    private static readonly Entry Drink = Said(1, "08:00", new Payload.FluidGiven(Fluid.OralWater, 500, "mouth"));

    [Fact]
    public void The_headline_is_the_entry_as_it_counts_and_the_old_value_stands_beneath()
    {
        var line = Line(Drink, Amend(2, "08:10", """{"millilitres":250}"""));
        Assert.Equal("Given 250 mL oral water, mouth", line.Text);
        Assert.Contains("500 becomes 250", Assert.Single(line.Changes), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_two_corrections_the_later_one_is_the_headline()
    {
        var line = Line(Drink, Amend(2, "08:10", """{"millilitres":250}"""), Amend(3, "08:20", """{"millilitres":300}"""));
        Assert.Equal("Given 300 mL oral water, mouth", line.Text);
        Assert.EndsWith("; a later correction counts instead", line.Changes[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_correction_that_was_withdrawn_is_no_headline()
    {
        var line = Line(
            Drink,
            Amend(2, "08:10", """{"millilitres":250}"""),
            Said(3, "08:20", new Payload.EntryWithdrawn(new("a", 2), "slip"))
        );
        Assert.Equal("Given 500 mL oral water, mouth", line.Text);
        Assert.EndsWith("; this correction was withdrawn", Assert.Single(line.Changes), StringComparison.Ordinal);
    }

    [Fact]
    public void A_later_correction_that_can_not_be_read_leaves_the_one_before_in_force()
    {
        var line = Line(Drink, Amend(2, "08:10", """{"millilitres":250}"""), Amend(3, "08:20", """{"millilitres":"much"}"""));
        Assert.Equal("Given 250 mL oral water, mouth", line.Text);
        Assert.EndsWith("can't be read and does not count", line.Changes[1], StringComparison.Ordinal);
    }

    private static LogLine Line(params Entry[] entries) => LogText.Lines(new CareRecord(entries, [])).Single(l => l.Entry.Id == Drink.Id);

    private static Entry Amend(int number, string at, string replace) =>
        Said(number, at, new Payload.EntryAmended(Drink.Id, JsonText.Of(replace)));

    private static Entry Said(int number, string at, Payload payload) =>
        EntryWriting.Write(new("a", number), Happened.At(Some.At(at)), Some.At(at), "Ane", payload);
}
