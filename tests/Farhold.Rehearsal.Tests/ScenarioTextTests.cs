using System.Text;
using CsCheck;

namespace Farhold.Rehearsal.Tests;

/// <summary>The form of an author changes single values of a scenario's text.</summary>
public class ScenarioTextTests
{
    public static TheoryData<string> All => [.. Shipped.Names];

    [Fact]
    public void The_one_to_begin_with_is_usable()
    {
        var scenario = Read(ScenarioText.New);
        Assert.Equal(("our-first", Limb.LeftLeg, 70), (scenario.Id, scenario.Wounds[0].Limb, scenario.Casualty.MassKg));
        Assert.DoesNotContain(scenario.Id, Shipped.Names);
    }

    [Theory, MemberData(nameof(All))]
    public void What_is_filled_in_is_what_the_reader_reads_and_all_else_stays(string name)
    {
        var text = Shipped.Text($"{name}.scenario.json");
        var was = Read(text);
        text = ScenarioText.WithTitle(text, "The \"long\" bridge\n");
        text = ScenarioText.WithBriefing(text, "Über dem Fjord.");
        text = ScenarioText.WithId(text, "ours");
        text = ScenarioText.WithStart(text, "2032-01-02T03:04:00Z");
        text = ScenarioText.WithAgeYears(text, 41.5);
        text = ScenarioText.WithMassKg(text, 88);
        text = ScenarioText.WithDifficulty(text, 0.75);
        text = ScenarioText.WithTiedMinutes(text, 45);
        text = ScenarioText.WithHelpMinutes(text, 300);
        var now = Read(text);
        Assert.Equal(("ours", "The \"long\" bridge\n", "Über dem Fjord."), (now.Id, now.Title, now.Briefing));
        Assert.Equal((41.5, 88, 0.75), (now.Casualty.AgeYears, now.Casualty.MassKg, now.Wounds[0].Difficulty));
        if (was.Before.Length == 1)
            Assert.Equal((-45 * 60.0, -47 * 60.0), (now.Before[0].At, now.InjuredAt));
        else
            Assert.Equal(was.Before.Select(b => b.At).Append(was.InjuredAt), now.Before.Select(b => b.At).Append(now.InjuredAt));
        Assert.Equal((Instant.FromUtc(2032, 1, 2, 3, 4), 300 * 60), (now.Start, now.Help!.Likely));
        Assert.InRange(now.Help.Likely, now.Help.Earliest ?? 0, now.Help.Latest ?? double.MaxValue);
        Assert.Equal(was.Injects.Length, now.Injects.Length);
        Assert.Equal(was.Kit, now.Kit);
        Assert.Equal(was.Party, now.Party);
        Assert.Equal(was.Learn, now.Learn);
        foreach (
            var (read, written) in ((object?, object?)[])
                [
                    (ScenarioText.Title(text), now.Title),
                    (ScenarioText.Briefing(text), now.Briefing),
                    (ScenarioText.Id(text), "ours"),
                    (ScenarioText.AgeYears(text), 41.5),
                    (ScenarioText.MassKg(text), 88.0),
                    (ScenarioText.Difficulty(text), 0.75),
                    (ScenarioText.TiedMinutes(text), was.Before.Length == 1 ? 45 : null),
                    (ScenarioText.HelpMinutes(text), 300),
                    (ScenarioText.Start(text), "2032-01-02T03:04:00Z"),
                ]
        )
            Assert.Equal(written, read);
    }

    [Fact]
    public void Another_limb_takes_its_tourniquet_along()
    {
        var text = ScenarioText.WithPlace(ScenarioText.New, Limb.RightArm);
        Assert.Equal(Limb.RightArm, ScenarioText.Place(text));
        Assert.Equal(new Act.Tighten(Limb: "right-arm"), Read(text).Before[0].Act);
    }

    [Fact]
    public void Help_that_nobody_spoke_of_is_put_in()
    {
        var without = ScenarioText.New.Replace(
            "  \"help\": {\"care\": \"surgery\", \"likely\": \"PT8H\"},\n",
            "",
            StringComparison.Ordinal
        );
        Assert.Null(Read(without).Help);
        Assert.Null(ScenarioText.HelpMinutes(without));
        Assert.Equal(120 * 60, Read(ScenarioText.WithHelpMinutes(without, 120)).Help!.Likely);
    }

    /// <summary>Somebody types in it: broken or not, the form neither falls over nor loses a character.</summary>
    [Fact]
    public void A_text_that_is_broken_is_left_alone() =>
        Gen.Int[0, ScenarioText.New.Length]
            .Sample(
                cut =>
                {
                    var text = ScenarioText.New[..cut];
                    var changed = ScenarioText.WithHelpMinutes(ScenarioText.WithTiedMinutes(ScenarioText.WithTitle(text, "x"), 9), 9);
                    _ = (ScenarioText.Place(text), ScenarioText.Difficulty(text), ScenarioText.AgeYears(text));
                    return changed == text || changed.Length > cut - 40;
                },
                iter: 500
            );

    private static Scenario Read(string text) => Shipped.Usable(ScenarioReader.Read(Encoding.UTF8.GetBytes(text), "own"));
}
