using System.Collections.Immutable;
using CsCheck;

namespace Farhold.Tests.Verdicts;

public class MoveCheckTests
{
    private static readonly Payload.CasualtyMoved Ahead = new(Movement.Carried, MovePhase.AboutTo);

    public static TheoryData<Movement> Moves => [.. Enum.GetValues<Movement>()];

    [Theory, MemberData(nameof(Moves))]
    public void A_move_in_an_attempt_is_objected_to(Movement how)
    {
        var trying = Case.Well.And("00:02", new Payload.AttemptStarted("w1", "t1"));
        var item = Items(trying, how).Single(i => i.Id == "attempt.left-leg");
        Assert.Equal((Truth.NotMet, true), (item.State, item.Holds));
        Assert.Contains("an attempt is under way on the left leg", Assert.Single(Against(trying, how)), StringComparison.Ordinal);
        Assert.Empty(Against(Case.Well, how));
    }

    [Theory]
    [InlineData(MovePhase.AboutTo)]
    [InlineData(MovePhase.Moved)]
    public void A_move_logged_in_an_attempt_is_told_of_by_the_record(MovePhase phase)
    {
        var moved = Case.Well.And("00:05", new Payload.AttemptStarted("w1", "t1"));
        Assert.DoesNotContain(moved.Judgement.Remarks, r => r.Text.Contains("attempt was under way", StringComparison.Ordinal));
        moved = moved.And("00:02", new Payload.CasualtyMoved(Movement.Lifted, phase));
        Assert.Contains(
            moved.Judgement.Remarks,
            r => r.Text.Contains("while an attempt was under way on the left leg", StringComparison.Ordinal)
        );
        var ended = moved.And("00:03", new Payload.AttemptEnded("w1", "t1", AttemptOutcome.Abandoned));
        Assert.DoesNotContain(ended.Judgement.Remarks, r => r.Text.Contains("attempt was under way", StringComparison.Ordinal));
    }

    /// <summary>Watch without a break for 15 minutes, then every 2 minutes to one hour (common practice, TCCC; design).</summary>
    [Theory]
    [InlineData("00:10", "without a break", true)]
    [InlineData("00:40", "every 2 min", true)]
    [InlineData("01:30", null, false)]
    public void A_wound_that_needs_close_watch_holds_a_carry_back(string loosened, string? how, bool holds)
    {
        var loose = Case.Well.TightFor("02:00").And(loosened, new Payload.TourniquetSlackened("t1"));
        var item = Items(loose, Movement.Carried).Single(i => i.Id == "watch.left-leg");
        Assert.Equal(holds, item.Holds && item.State == Truth.NotMet);
        if (how is not null)
            Assert.Contains(how, item.Text, StringComparison.Ordinal);
        Assert.Equal(Truth.Unknown, Items(loose, Movement.Turned).Single(i => i.Id == "watch.left-leg").State);
    }

    [Fact]
    public void What_the_record_answers_is_not_asked()
    {
        var items = Items(Case.Well, Movement.Carried);
        Assert.Equal(["bleeding", "attempt", "tight.left-leg", "shock"], items.Where(i => i.State == Truth.Met).Select(i => i.Id));
        Assert.Equal(
            [
                "decide.left-leg",
                "pulse.left-leg",
                "time.left-leg",
                "pain",
                "warmth",
                "reach",
                "watcher",
                "stops",
                "padding",
                "straps",
                "lines",
                "word",
            ],
            items.Where(i => i.State == Truth.Unknown).Select(i => i.Id)
        );
    }

    [Fact]
    public void What_stands_against_it_is_said()
    {
        var bad = Case
            .Well.NewSigns(s => s with { HeartRate = 140, Pain = 8 })
            .LookedOver(o => o with { VeryCold = true })
            .With("watch", new Payload.WatchStated(false))
            .And(
                "00:03",
                new Payload.SignsTaken
                {
                    DistalPulse = ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(Limb.LeftLeg, DistalPulse.Present),
                }
            );
        var against = Items(bad, Movement.Carried).Where(i => i.State == Truth.NotMet).Select(i => i.Id);
        Assert.Equal(["bleeding", "pulse.left-leg", "shock", "pain", "warmth", "watcher"], against);
        Assert.StartsWith("Not now, bleeding comes first", Assert.Single(Against(bad, Movement.Carried)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Movement.Turned, false)]
    [InlineData(Movement.Walked, false)]
    [InlineData(Movement.Carried, true)]
    [InlineData(Movement.Boat, true)]
    public void Straps_are_asked_for_where_somebody_is_strapped(Movement how, bool asked) =>
        Assert.Equal(asked, Items(Case.Well, how).Any(i => i.Id == "straps"));

    /// <summary>Entries taken away never turn an item that stands against the move, or is open, into one that is met.</summary>
    [Fact]
    public void What_nobody_recorded_is_never_good_news()
    {
        var bare = Case.Well.With("signs", null).With("earlier", null).With("over", null).With("bleeding", null).With("watch", null);
        Assert.Equal(["attempt"], Items(bare, Movement.Carried).Where(i => i.State == Truth.Met).Select(i => i.Id));
    }

    [Fact]
    public void Every_item_has_a_sentence_and_a_source_and_ids_are_its_own() =>
        Gens.Record.Sample(
            written =>
            {
                var judged = written.Judged();
                foreach (var how in Enum.GetValues<Movement>())
                {
                    var items = MoveCheck.Of(written.Record.Readings[0], judged, how);
                    Assert.Equal(items.Length, items.DistinctBy(i => i.Id).Count());
                    Assert.All(items, i => Assert.True(i.Text.EndsWith('.') && !i.Sources.IsEmpty, i.Text));
                    var trying = judged.Limbs.Any(l => l.Attempt is not null) || judged.Observed.Any(w => w.Attempt is not null);
                    if (trying)
                        Assert.NotEmpty(MoveCheck.Against(written.Record.Readings[0], judged, new(how, MovePhase.AboutTo)));
                }
            },
            iter: Gens.Cases(300)
        );

    [Fact]
    public void The_check_is_named_in_the_log() =>
        Assert.Equal(
            "Done: the check before the move (left open: straps)",
            EntryText.Of(new Payload.TaskDone(TaskNames.BeforeMove, "left open: straps"))
        );

    private static ImmutableArray<MoveItem> Items(Case said, Movement how) => MoveCheck.Of(said.Record.Readings[0], said.Judgement, how);

    private static ImmutableArray<string> Against(Case said, Movement how) =>
        MoveCheck.Against(said.Record.Readings[0], said.Judgement, Ahead with { How = how });
}
