using System.Collections.Immutable;

namespace Farhold.App.Tests.Limbs;

public class BodyScreenTests : CareTest
{
    [Fact]
    public async Task Nothing_was_looked_at_before_somebody_says_so()
    {
        await StartAsync();
        var body = Show<BodyScreen>();
        Assert.Contains("not looked at: 12", Text(body.Find(".body-key")), StringComparison.Ordinal);
        Assert.Empty(body.FindAll(".block.seen"));
        await LogAsync(0, new Payload.RegionLooked(null, BodyRegion.Chest, LookFound.Nothing));
        Assert.Contains("not looked at: 11", Text(body.Find(".body-key")), StringComparison.Ordinal);
        Assert.Equal("Casualty’s Chest: looked at, nothing found", body.Find(".chest-zone").GetAttribute("aria-label"));
        Assert.Single(body.FindAll(".block.seen"));
    }

    /// <summary>One leg that bleeds says nothing of the other one.</summary>
    [Fact]
    public async Task A_wound_on_one_limb_does_not_make_the_others_looked_at_but_that_nothing_else_bleeds_does()
    {
        await TightAsync();
        await LogAsync(2, new Payload.StepLooked(LookStep.Bleeding, StepFound.Something));
        Assert.Equal("Casualty’s RIGHT leg: not looked at", Zone(Show<BodyScreen>(), "leg", "left"));
        await LogAsync(1, new Payload.CasualtyLookedOver(BleedingElsewhere: false));
        Assert.Equal("Casualty’s RIGHT leg: looked at, nothing found", Zone(Show<BodyScreen>(), "leg", "left"));
    }

    /// <summary>Seen from the front the casualty's left is on the right; from the back it is on the left. It is never mirrored.</summary>
    [Fact]
    public async Task The_casualtys_left_is_right_in_the_picture_from_the_front_and_left_from_the_back()
    {
        await TightAsync(75);
        await LogAsync(1, new Payload.BleedingChecked("w1", Bleeding.None));
        await LogAsync(
            1,
            new Payload.SignsTaken
            {
                DistalPulse = ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(Limb.LeftLeg, DistalPulse.Absent),
            }
        );
        const string Leg = "Casualty’s LEFT leg: tight 1\u00a0h\u00a015, wound dry, no pulse below";
        var front = Show<BodyScreen>();
        Assert.Equal(Leg, Zone(front, "leg", "right"));
        Assert.Equal(["casualty’sRIGHT", "casualty’sLEFT"], front.FindAll(".side-word").Select(Text));
        var back = Show<BodyScreen>((nameof(BodyScreen.View), "back"));
        Assert.Equal(Leg, Zone(back, "leg", "left"));
        Assert.Equal(["casualty’sLEFT", "casualty’sRIGHT"], back.FindAll(".side-word").Select(Text));
    }

    [Fact]
    public async Task Two_taps_from_the_figure_log_a_fact_of_the_limb_that_was_touched()
    {
        await TightAsync();
        var body = Show<BodyScreen>();
        body.Find(".leg.right").Click();
        Assert.Equal("LEFT leg", Text(body.Find("[role=dialog] h2")));
        Tap(body, "No pulse", "Pulse below the tourniquet");
        Assert.Equal(DistalPulse.Absent, Last<Payload.SignsTaken>().DistalPulse![Limb.LeftLeg]);
        Assert.Empty(body.FindAll("[role=dialog]"));
        body.Find(".arm.left").Click();
        Choose(body, "When", "40 min ago");
        Tap(body, "Tightened (t2) at 13:20", "Tourniquet tightened");
        Assert.Equal(("t2", Limb.RightArm), (Last<Payload.TourniquetTightened>().Tourniquet, Last<Payload.TourniquetTightened>().Limb));
        Assert.Equal(Happened.At(Now - Duration.FromMinutes(40)), State.Of(Kind.TourniquetTightened)[^1].When);
    }

    [Fact]
    public async Task A_region_offers_that_it_is_clear_and_says_how_its_bleeding_is_stopped()
    {
        await StartAsync();
        var body = Show<BodyScreen>();
        body.Find(".groin-zone").Click();
        Assert.Contains("Pack the wound and press with your body weight", Text(body.Find("[role=dialog]")), StringComparison.Ordinal);
        Tap(body, "Wound that bleeds", "Seen here");
        Assert.Equal((BodyRegion.Groin, BodyFace.Front), (Last<Payload.WoundFound>().Region, Last<Payload.WoundFound>().Face));
        Assert.Equal("Casualty’s Groin: wound, not looked at since", body.Find(".groin-zone").GetAttribute("aria-label"));
        body.Find(".neck-zone").Click();
        Tap(body, "Looked: nothing found", "Seen here");
        Assert.Equal(new(null, BodyRegion.Neck, LookFound.Nothing), Last<Payload.RegionLooked>());
    }

    /// <summary>Of two wounds that one was looked at is not that both were.</summary>
    [Fact]
    public async Task A_second_wound_that_nobody_looked_at_is_not_dry()
    {
        await TightAsync();
        await LogAsync(2, new Payload.BleedingChecked("w1", Bleeding.None));
        await LogAsync(2, new Payload.WoundFound("w2", Limb.LeftLeg, null, WoundNature.Bleeding));
        await LogAsync(1, new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w2"));
        await LogAsync(1, new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"));
        Assert.Contains("wound, not looked at since", Zone(Show<BodyScreen>(), "leg", "right"), StringComparison.Ordinal);
        await LogAsync(0, new Payload.BleedingChecked("w2", Bleeding.Active));
        Assert.Contains("bleeding", Zone(Show<BodyScreen>(), "leg", "right"), StringComparison.Ordinal);
    }

    private static string Zone(IRenderedComponent<Frame> body, string part, string side) =>
        body.Find($".{part}.{side}").GetAttribute("aria-label")!;
}
