namespace Farhold.App.Tests.Parts;

public class BigChoiceTests : ScreenTest
{
    [Fact]
    public void Nothing_is_chosen_until_it_is_pressed()
    {
        string? taken = null;
        var choice = Render<BigChoice<string>>(p =>
            p.Add(c => c.Label, "Bleeding")
                .Add(c => c.Options, [new("none", "None"), new("oozing", "Oozing"), new("active", "Active")])
                .Add(c => c.ValueChanged, v => taken = v)
        );
        Assert.Empty(choice.FindAll("input[checked]"));
        choice.FindAll("label").Single(l => l.TextContent.Trim() == "Oozing").QuerySelector("input")!.Change(true);
        Assert.Equal("oozing", taken);
    }

    [Fact]
    public void It_is_one_group_with_a_name()
    {
        var choice = Render<BigChoice<int>>(p =>
            p.Add(c => c.Label, "Eyes open").Add(c => c.Options, [new(1, "Never"), new(2, "To pain")])
        );
        Assert.Equal("Eyes open", choice.Find("fieldset > legend").TextContent);
        Assert.Single(choice.FindAll("input").Select(i => i.GetAttribute("name")).Distinct());
    }

    [Fact]
    public void A_name_out_of_a_record_is_shown_without_marks_and_taken_as_it_is()
    {
        const string name = "t1 \u202Egel\u0007";
        string? taken = null;
        var choice = Render<BigChoice<string>>(p =>
            p.Add(c => c.Label, "Tourniquet").Add(c => c.Options, [new(name, name)]).Add(c => c.ValueChanged, v => taken = v)
        );
        Assert.Equal("t1 gel", choice.Find("label").TextContent.Trim());
        choice.Find("input").Change(true);
        Assert.Equal(name, taken);
    }
}
