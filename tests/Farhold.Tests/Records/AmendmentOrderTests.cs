namespace Farhold.Tests.Records;

/// <summary>Of several amendments of one entry the one recorded last counts, whatever it is called and however the lines arrive.</summary>
public class AmendmentOrderTests
{
    private static readonly Entry Signs = EntryWriting.Write(new("m", 1), Happened.At(Case.Now), Case.Now, "Ane", Some.GoodSigns);

    [Theory]
    [InlineData(2, 3)]
    [InlineData(3, 2)] // a clock that ran back
    public void The_one_recorded_last_counts(int first, int second)
    {
        Entry[] lines = [Signs, Amend(first, 1, 90), Amend(second, 5, 110)];
        Assert.Equal(110, HeartRate(lines));
        Assert.Equal(110, HeartRate([.. lines.Reverse()]));
    }

    [Fact]
    public void Of_two_recorded_at_once_the_greater_id_counts() => Assert.Equal(110, HeartRate([Signs, Amend(3, 1, 110), Amend(2, 1, 90)]));

    private static Entry Amend(int number, int minutes, int heartRate) =>
        EntryWriting.Write(
            new("m", number),
            Happened.At(Case.Now),
            Case.Now + Duration.FromMinutes(minutes),
            "Ane",
            new Payload.EntryAmended(Signs.Id, JsonText.Of($$"""{"heartRate":{{heartRate}}}"""))
        );

    private static double? HeartRate(Entry[] lines) =>
        new CareRecord(lines, []).Readings[0].Of(Kind.SignsTaken).Single().As<Payload.SignsTaken>().HeartRate;
}
