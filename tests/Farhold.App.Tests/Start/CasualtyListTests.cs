namespace Farhold.App.Tests.Start;

public class CasualtyListTests : CareTest
{
    /// <summary>Opened in the order from mild to grave, so that their order on the list is not that of their names or times.</summary>
    [Fact]
    public async Task The_gravest_comes_first_with_its_answer_its_clock_and_the_age_of_the_last_look()
    {
        var calm = await OpenCasualtyAsync("Calm");
        var shocked = await OpenCasualtyAsync("Shocked");
        await WriteAsync(30, new Payload.TourniquetTightened("t1", Limb.LeftLeg));
        await WriteAsync(4, Well with { RadialPulse = RadialPulse.Absent, Mental = Mental.Confused });
        await OpenCasualtyAsync("Longer");
        await WriteAsync(95, new Payload.TourniquetTightened("t1", Limb.RightArm));
        await OpenCasualtyAsync("Shorter");
        await WriteAsync(20, new Payload.TourniquetTightened("t1", Limb.RightLeg));
        await OpenCasualtyAsync("Bleeding");
        await WriteAsync(20, new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Bleeding));
        await WriteAsync(19, new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"));
        await WriteAsync(1, new Payload.BleedingChecked("w1", Bleeding.Active));
        await OpenCasualtyAsync("Ended");
        await WriteAsync(95, new Payload.TourniquetTightened("t1", Limb.RightArm));
        await WriteAsync(0, new Payload.CareEnded(CareEnd.HandedOver, "Dr Lind"));
        Session.Close();

        var list = Render<CasualtyList>();
        list.WaitForAssertion(() =>
            Assert.Equal(["Bleeding", "Shocked", "Longer", "Shorter", "Calm", "Ended"], list.FindAll(".casualties b").Select(Text))
        );
        var rows = list.FindAll(".casualties > li").Select(Text).ToArray();
        Assert.StartsWith("BleedingAt once: LEFT leg19 minlooked 1 min ago", rows[0], StringComparison.Ordinal);
        Assert.StartsWith("ShockedShock suspected30 minlooked 4 min ago", rows[1], StringComparison.Ordinal);
        Assert.StartsWith("LongerRIGHT arm: Check first1 h 35", rows[2], StringComparison.Ordinal);
        Assert.Contains("No tourniquet", rows[4], StringComparison.Ordinal);
        Assert.StartsWith("EndedCare ended", rows[5], StringComparison.Ordinal);
        Assert.Equal(Texts.ListEndedTitle, Text(list.Find("h2")));
        Assert.NotEqual(calm, shocked);
    }

    /// <summary>Signs gone stale don't take it away, there as on Now.</summary>
    [Fact]
    public async Task Shock_stands_on_the_list_until_it_is_looked_at_again()
    {
        await OpenCasualtyAsync("Shocked");
        await WriteAsync(100, new Payload.TourniquetTightened("t1", Limb.LeftLeg));
        await WriteAsync(90, Well with { RadialPulse = RadialPulse.Absent, Mental = Mental.Confused });
        Session.Close();
        var list = Render<CasualtyList>();
        list.WaitForAssertion(() => Assert.Contains("Shock suspected", Text(list.Find(".says")), StringComparison.Ordinal));
    }

    /// <summary>The list is read once before the entries are known that were made since the app was started.</summary>
    [Fact]
    public async Task A_casualty_with_entries_made_since_the_list_was_read_is_judged_too()
    {
        await OpenCasualtyAsync("Longer");
        await WriteAsync(95, new Payload.TourniquetTightened("t1", Limb.RightArm));
        Session.Close();
        var list = Render<CasualtyList>();
        await Session.ListAgainAsync();
        list.WaitForAssertion(() => Assert.Contains("RIGHT arm: Check first", Text(list.Find(".says")), StringComparison.Ordinal));
        Assert.Contains(Texts.Entries(2), Text(list.Find(".quiet")), StringComparison.Ordinal);
    }

    private Task WriteAsync(int minutesAgo, Payload payload) => LogAsync(minutesAgo, payload);
}
