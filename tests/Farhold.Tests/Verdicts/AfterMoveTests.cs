using System.Collections.Immutable;

namespace Farhold.Tests.Verdicts;

/// <summary>What a move of the casualty makes due: JTS combat medic module, after every movement.</summary>
public class AfterMoveTests
{
    private static readonly Payload Moved = new Payload.CasualtyMoved(Movement.Carried, MovePhase.Moved);
    private static readonly Payload Dry = new Payload.BleedingChecked("w1", Bleeding.None);

    private static readonly Payload NoPulse = new Payload.SignsTaken
    {
        DistalPulse = ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(Limb.LeftLeg, DistalPulse.Absent),
    };

    [Fact]
    public void A_move_makes_the_looks_at_a_tied_limb_due_at_once_and_before_the_next_act()
    {
        var due = Case.Well.And("00:02", NoPulse).And("00:01", Moved).Judgement.Due;
        Assert.Equal(["pulse-beyond.left-leg", "tourniquet.left-leg", "next.left-leg"], due.Take(3).Select(d => d.Task));
        Assert.All(due.Take(2), d => Assert.Equal((true, Case.Ago("00:01")), (d.Leads, d.At)));
        Assert.All(due.Take(2), d => Assert.StartsWith("After the move:", d.Text, StringComparison.Ordinal));
        Assert.DoesNotContain(due, d => d.AtOnce);
    }

    [Theory]
    [InlineData("00:02", true)] // looked before the move
    [InlineData("00:01", true)] // perhaps before it
    [InlineData("00:00", false)]
    public void Only_a_look_surely_after_the_move_does_it(string looked, bool due) =>
        Assert.Equal(due, Leads(Case.Well.And("00:01", Moved).And(looked, Dry, NoPulse), "tourniquet"));

    [Fact]
    public void A_move_that_is_only_ahead_or_is_over_before_the_tourniquet_was_tight_asks_for_nothing()
    {
        Assert.False(Leads(Case.Well.And("00:01", new Payload.CasualtyMoved(Movement.Carried, MovePhase.AboutTo)), "tourniquet"));
        Assert.False(Leads(Case.Well.And("00:50", Moved), "tourniquet"));
    }

    [Fact]
    public void A_move_of_which_the_time_is_not_known_counts_at_its_latest() =>
        Assert.True(Leads(Case.Well.And(new Happened(Case.Ago("00:30"), Case.Ago("00:03")), Moved).And("00:04", Dry), "tourniquet"));

    [Fact]
    public void A_limb_tightened_since_is_looked_at_for_its_tightening()
    {
        var due = Case
            .Well.And("00:03", Moved)
            .And("00:01", new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"))
            .Judgement.Due;
        Assert.Equal("effect.left-leg", due[0].Task);
        Assert.DoesNotContain(due, d => d.Leads && d.Task is "tourniquet.left-leg" or "pulse-beyond.left-leg" && d.Leads);
    }

    [Fact]
    public void A_loosened_limb_that_nobody_looked_at_since_the_move_leads()
    {
        var moved = Case
            .Well.With("bleeding", null)
            .TightFor("05:00")
            .And("04:00", new Payload.TourniquetSlackened("t1"))
            .And("00:10", Dry)
            .And("00:08", Moved);
        var watch = moved.Judgement.Due.Single(d => d.Task == "watch.left-leg");
        Assert.Equal((true, true, Case.Ago("00:08")), (watch.Leads, watch.Overdue, watch.At));
        Assert.False(moved.And("00:01", Dry).Judgement.Due.Single(d => d.Task == "watch.left-leg").Leads);
    }

    [Fact]
    public void Other_dressings_are_due_too_but_come_after_what_the_limb_asks_for()
    {
        var other = Case
            .Well.And("00:35", new Payload.WoundFound("w9", null, BodyRegion.Back, WoundNature.Other))
            .And("00:30", new Payload.BleedingChecked("w9", Bleeding.None))
            .And("00:05", new Payload.TaskDone("dressings"))
            .And("00:01", Moved);
        var dressings = other.Judgement.Due.Single(d => d.Task == "dressings");
        Assert.Equal((false, true, Case.Ago("00:01")), (dressings.Leads, dressings.Overdue, dressings.At));
        Assert.StartsWith("After the move:", dressings.Text, StringComparison.Ordinal);
    }

    private static bool Leads(Case said, string task) => said.Judgement.Due.Single(d => d.Task == $"{task}.left-leg").Leads;
}
