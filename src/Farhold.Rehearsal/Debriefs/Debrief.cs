using System.Collections.Immutable;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>
/// What there is to learn from a rehearsal: worked out from scenario, truth and record by the engine that judges real ones.
/// </summary>
/// <remarks>
/// Nothing in it rates a person. Three pairs of eyes look at the same time: <see cref="Known"/> at what had been written down by then,
/// <see cref="Hindsight"/> at all that the record came to hold, <see cref="AllSeeing"/> at the truth.
/// </remarks>
public sealed record Debrief
{
    public required RehearsalSession Session { get; init; }
    public required Proof Proof { get; init; }
    public required ImmutableArray<Sight> Known { get; init; }
    public required ImmutableArray<Sight> Hindsight { get; init; }
    public required ImmutableArray<Sight> AllSeeing { get; init; }
    public required ImmutableArray<Delays> Delays { get; init; }
    public required ImmutableArray<Catch> Catches { get; init; }
    public required LogTruth Log { get; init; }
    public required CasualtyCourse Course { get; init; }
    public required ImmutableArray<StepMark> Steps { get; init; }

    /// <summary>In order of time; empty where nothing is to be said.</summary>
    public required ImmutableArray<Remark> Remarks { get; init; }

    /// <summary>By the gravest remark; null where there is none.</summary>
    public TeachingPoint? OneThing => Remarks.IsEmpty ? null : Practice.For(Remarks.Min(r => r.Fault));

    /// <param name="rerun">Of the truth file, or of the session as it has just been.</param>
    /// <param name="record">As it came; not necessarily as it was sealed.</param>
    public static Debrief Of(Rerun rerun, ImmutableArray<Entry> record, Rulebook rules) =>
        Of(new(rerun.Session, record, rules), Proof.Of(rerun, record), record);

    /// <summary>Of a rehearsal that somebody led, with what the trainee logged on their own phone.</summary>
    public static Debrief Of(Rerun rerun, TraineeRecord record, Rulebook rules) =>
        Of(
            new(rerun.Session, record.Entries, rules)
            {
                Own = [.. record.Entries.OrderBy(e => e.Recorded)],
                Wall = record.Clock,
                WoundsElsewhere = record.WoundsElsewhere,
            },
            Proof.OfTrainee(rerun, record),
            // What the casualty, the kit and the help were is the run's to say.
            [.. rerun.Session.Record.Where(e => Eyes.IsOfScene(e.Payload)), .. record.Entries.Where(e => !Eyes.IsOfScene(e.Payload))]
        );

    /// <param name="all">What the all-seeing eye takes from the record.</param>
    private static Debrief Of(DebriefScene scene, Proof proof, ImmutableArray<Entry> all)
    {
        var (session, record, rules) = (scene.Session, scene.Record, scene.Rules);
        var (known, seeing) = (Eyes.Known(session, record, rules), Eyes.AllSeeing(session, all, rules));
        var catches = Catch.All(scene);
        var log = LogTruth.Of(scene);
        var delays = session.Scenario.Limbs.Select(l => Debriefs.Delays.Of(scene, known, seeing, l)).ToImmutableArray();
        return new()
        {
            Session = session,
            Proof = proof,
            Known = known,
            Hindsight = Eyes.Hindsight(session, record, rules),
            AllSeeing = seeing,
            Delays = delays,
            Catches = catches,
            Log = log,
            Course = CasualtyCourse.Of(session),
            Steps = StepMark.All(scene, known, catches),
            Remarks =
            [
                .. LettingOut
                    .Remarks(scene, known, seeing)
                    .Concat(Watching.Remarks(scene))
                    .Concat(Catch.Remarks(catches))
                    .Concat(Debriefs.Delays.Remarks(delays))
                    .Concat(Ignorance.Remarks(session, delays, known, seeing))
                    .Concat(log.Remarks)
                    .Concat(Looks.Remarks(scene))
                    .Concat(Expected.Remarks(scene, known))
                    .OrderBy(r => r.At)
                    .ThenBy(r => r.Fault),
            ],
        };
    }
}

/// <summary>Whether truth, record, scenario and seed belong together.</summary>
/// <param name="Truth">Where the truth file differs from its re-run; null: nowhere.</param>
/// <param name="ChangedEntries">Lines of the record that are not those that the truth has the hashes of, and such that are missing.</param>
/// <param name="Sealed">Whether the first entry names scenario and seed.</param>
/// <param name="Trainee">How many entries of the trainee's own the truth was laid beside; null where the record is the run's.</param>
public sealed record Proof(TruthDifference? Truth, int ChangedEntries, bool Sealed, int? Trainee = null)
{
    /// <summary>A trainee's own record has no seal of the run, so nothing in it is proven.</summary>
    internal static Proof OfTrainee(Rerun rerun, TraineeRecord record) => new(rerun.Differs, 0, false, record.Entries.Length);

    public bool Holds => Truth is null && ChangedEntries == 0 && Sealed;

    public static Proof Of(Rerun rerun, ImmutableArray<Entry> record)
    {
        var sealedHashes = rerun.Session.Truth.OfType<TruthLine.Logged>().Select(l => l.Sha256).ToHashSet();
        var held = record.Select(e => LineHash.Of(e.Json).ToString()).ToHashSet();
        var seal = record.Select(e => e.Payload).OfType<Payload.NoteWritten>().FirstOrDefault()?.Text;
        return new(
            rerun.Differs,
            held.Except(sealedHashes).Count() + sealedHashes.Except(held).Count(),
            seal?.Contains(rerun.Session.Seal, StringComparison.Ordinal) == true
        );
    }
}

/// <summary>What the parts of a debrief share.</summary>
internal sealed record DebriefScene(RehearsalSession Session, ImmutableArray<Entry> Record, Rulebook Rules)
{
    /// <summary>Design, in seconds: the clocks of two phones agree no better.</summary>
    private const double TwoClocks = 60;

    /// <summary>How time passed on the wall's clock, by which a trainee's own phone wrote; null where one clock is all.</summary>
    public RunClock? Wall { get; init; }

    /// <summary>Wounds of a trainee's record that the casualty has not.</summary>
    public ImmutableArray<string> WoundsElsewhere { get; init; } = [];

    /// <summary>In seconds: an entry may seem to be so much earlier than what it is about.</summary>
    public double Slack => Wall is null ? 0 : TwoClocks;

    /// <summary>From one time to another, in seconds: nobody is blamed for a run that was put on, or for one that stood.</summary>
    public double After(double from, double to) =>
        Wall is { } wall && to > from ? Math.Min(to - from, Math.Max(0, (wall.WallAt(to) - wall.WallAt(from)).TotalSeconds)) : to - from;

    /// <summary>As <see cref="After"/>, whichever is first.</summary>
    public double Apart(double one, double other) => After(Math.Min(one, other), Math.Max(one, other));

    /// <summary>What the trainee logged, in order of writing.</summary>
    public ImmutableArray<Entry> Own { get; init; } =
    [.. Record.Where(e => e.Recorded > Session.Scenario.Start || IsOwn(e, Session)).OrderBy(e => e.Recorded)];

    /// <summary>What the trainee's hands did, in order.</summary>
    public ImmutableArray<TruthLine.Began> Deeds { get; } =
    [.. Session.Truth.OfType<TruthLine.Began>().Where(b => b.At >= 0 && Asked(Session).Contains(ActFields.Word(b.Act)))];

    public double At(Entry entry) => Session.SecondsAt(entry.Recorded);

    public Limb? LimbOf(string wound) => Session.Scenario.Wounds.FirstOrDefault(w => w.Name == wound)?.Limb;

    public IEnumerable<ScenarioWound> On(Limb limb) => Session.Scenario.Wounds.Where(w => w.Limb == limb);

    /// <summary>The last pack of a wound that was over by a time.</summary>
    public TruthLine.Began? Packed(string wound, double by) =>
        Session.Truth.OfType<TruthLine.Began>().LastOrDefault(b => b.Act is Act.Pack p && p.Wound == wound && b.Until <= by);

    public TruthLine.Began? Dressed(string wound, double by) =>
        Session.Truth.OfType<TruthLine.Began>().LastOrDefault(b => b.Act is Act.Dress d && d.Wound == wound && b.Until <= by);

    /// <summary>Letting out by the trainee.</summary>
    public IEnumerable<(TruthLine.Began Began, Limb Limb)> LetOut =>
        Deeds.Where(b => b.Act is Act.Slacken).Select(b => (b, Wire.Parse<Limb>(((Act.Slacken)b.Act).Limb!)!.Value));

    private static bool IsOwn(Entry entry, RehearsalSession session) =>
        entry.Recorded == session.Scenario.Start && entry.By == session.Scenario.Party[0].Name;

    private static HashSet<string> Asked(RehearsalSession session) =>
        [.. session.Truth.OfType<TruthLine.ActAsked>().Select(a => ActFields.Word(a.Act.Act)), "release"];
}
