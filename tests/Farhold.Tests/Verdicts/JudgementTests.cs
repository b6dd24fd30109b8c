using static Farhold.Tests.Story;

namespace Farhold.Tests.Verdicts;

/// <summary>What stands beside the verdict, and several readings of one record; all read at 12:00.</summary>
public class JudgementTests
{
    [Theory]
    [InlineData("11:20", "13:20 window-2h", "17:20 limit-6h")]
    [InlineData("10:00", "16:00 limit-6h")] // the window ends this very moment
    [InlineData("09:59", "15:59 limit-6h")]
    [InlineData("06:00")]
    [InlineData("09:00-11:30", "15:00 limit-6h")] // as early as it can have been
    public void The_clock_tells_what_ends_next(string tightened, params string[] next) =>
        Assert.Equal(next, Limb(tightened).Next.Select(e => $"{e.At.ToString("HH:mm", null)} {e.What}"));

    [Fact]
    public void A_window_of_odd_length_is_named_by_hours_and_minutes()
    {
        var protocol = ShippedProtocol.Protocol with { Clock = ShippedProtocol.Protocol.Clock with { Window = Duration.FromMinutes(95) } };
        var next = Judge.At(Written(("11:20", Tight("t1"))), ShippedRules.Book.By(protocol), Case.Now).Limbs.Single().Next;
        Assert.Equal(["window-1h35", "limit-6h"], next.Select(e => e.What));
    }

    [Fact]
    public void What_to_look_at_is_told_only_where_looking_decides()
    {
        Assert.Empty(Case.Well.Limb.CheckFirst);
        var unseen = Case.Well.With("signs", null).Limb;
        Assert.Equal(Verdict.CheckFirst, unseen.Verdict);
        Assert.NotEmpty(unseen.CheckFirst);
        var shocked = Case.Well.With("bleeding", null).Signs(s => s with { HeartRate = 140 }).Limb;
        Assert.Equal(Verdict.LeaveOn, shocked.Verdict);
        Assert.Empty(shocked.CheckFirst);
    }

    [Fact]
    public void Shock_is_told_by_its_own_signs_alone()
    {
        var well = Case.Well.Judgement.Shock;
        Assert.Equal(Truth.NotMet, well.State);
        Assert.All(well.Signs, s => Assert.StartsWith("shock.", s.Criterion.Id, StringComparison.Ordinal));
        Assert.Equal(13 + 3, well.Signs.Length); // each sign; two soft ones, one, and one that stays
        Assert.Equal(Truth.Met, Case.Well.NewSigns(s => s with { RadialPulse = RadialPulse.Weak }).Judgement.Shock.State);
        Assert.Equal(Truth.Met, Case.Well.NewSigns(s => s with { Clammy = true, Cool = true }).Judgement.Shock.State);
        Assert.Equal(Truth.Unknown, Case.Well.NewSigns(s => s with { Clammy = true }).Judgement.Shock.State);
        Assert.Equal(Truth.Met, Case.Well.Signs(s => s with { Clammy = true }).Judgement.Shock.State);
        Assert.Equal(Truth.NotMet, Case.Well.With("bleeding", new Payload.BleedingChecked("w1", Bleeding.Active)).Judgement.Shock.State);
    }

    [Fact]
    public void Of_two_readings_the_one_that_speaks_against_an_attempt_counts()
    {
        var record = Disputed(Some.GoodSigns, Some.GoodSigns with { RadialPulse = RadialPulse.Weak });
        Assert.Equal(2, record.Readings.Length);
        var told = Judge.At(record, ShippedRules.Book, Case.Now);
        Assert.Equal((Verdict.LeaveOn, Truth.Met), (told.Limbs.Single().Verdict, told.Shock.State));
    }

    [Theory]
    [InlineData("10:00", "11:00")]
    [InlineData("11:00", "10:00")]
    public void Of_two_times_of_tightening_the_earlier_counts(string one, string other)
    {
        var told = Judge.At(Disputed(Tight("t1"), Tight("t1"), one, other), ShippedRules.Book, Case.Now).Limbs.Single();
        Assert.Equal(Duration.FromHours(2), told.Clock.SinceFirstTightened.Max);
        Assert.Equal(When("10:00"), told.Clock.FirstTightened);
    }

    [Fact]
    public void Where_two_readings_name_two_limbs_both_have_a_verdict_in_their_order() =>
        Assert.Equal(
            [Farhold.Values.Limb.LeftArm, Farhold.Values.Limb.RightLeg],
            Judge
                .At(
                    Disputed(Tight("t9", Farhold.Values.Limb.RightLeg), Tight("t9", Farhold.Values.Limb.LeftArm)),
                    ShippedRules.Book,
                    Case.Now
                )
                .Limbs.Select(l => l.Limb)
                .Where(l => l != Farhold.Values.Limb.LeftLeg)
        );

    [Fact]
    public void A_limb_that_is_tight_in_one_reading_and_loose_in_the_other_counts_as_tight()
    {
        var told = Judge.At(Disputed(Slack("t0"), new Payload.NoteWritten("nothing done")), ShippedRules.Book, Case.Now);
        Assert.Equal([Farhold.Values.Limb.LeftLeg], told.Limbs.Select(l => l.Limb));
        Assert.Empty(told.Observed);
    }

    [Fact]
    public void Of_two_looks_at_a_loose_limb_the_one_that_bleeds_counts()
    {
        var told = Judge.At(
            new(
                [
                    Line(1, "10:00", Tight("t1", wound: "w1")),
                    Line(2, "11:00", Slack("t1")),
                    Line(3, "11:30", new Payload.BleedingChecked("w1", Bleeding.None)),
                    Line(3, "11:30", new Payload.BleedingChecked("w1", Bleeding.Active)),
                ],
                []
            ),
            ShippedRules.Book,
            Case.Now
        );
        Assert.Equal(Truth.Met, told.Observed.Single().Bleeding);
        Assert.Equal("tighten.left-leg", told.Due.First(d => d.AtOnce && d.Limb is not null).Task);
        Assert.Single(told.Due, d => d.Task == "signs");
    }

    [Fact]
    public void A_task_is_due_at_the_earlier_of_two_times()
    {
        var told = Judge.At(Disputed(Some.GoodSigns, Some.GoodSigns, "11:00", "11:40"), ShippedRules.Book, Case.Now);
        Assert.Equal(Some.At("12:00"), told.Due.Single(d => d.Task == "signs").At);
    }

    private static LimbVerdict Limb(string tightened) =>
        Judge.At(Written((tightened, Tight("t1"))), ShippedRules.Book, Case.Now).Limbs.Single();

    /// <summary>A left leg tight under t0 unless that is disputed, and one entry of which there are two wordings.</summary>
    private static CareRecord Disputed(Payload one, Payload other, string when = "11:50", string otherWhen = "11:50") =>
        new(
            [
                .. one is Payload.TourniquetTightened { Limb: Farhold.Values.Limb.LeftLeg } ? (Entry[])[] : [Line(1, "11:40", Tight("t0"))],
                Line(2, when, one),
                Line(2, otherWhen, other),
            ],
            []
        );

    private static Entry Line(int number, string when, Payload what) =>
        EntryWriting.Write(new("a", number), When(when), Case.Now, "Ane", what);
}
