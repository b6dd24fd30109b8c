using System.Collections.Immutable;

namespace Farhold.Tests;

/// <summary>A casualty of whom everything is known and well, and what a test changes of it.</summary>
/// <remarks>
/// Judged at <see cref="Now"/>. One wound <c>w1</c> on the left leg, tourniquet <c>t1</c>, tightened 40 minutes ago; signs (twice, twelve
/// minutes
/// apart), wound, the rest of the casualty, watch and stock were looked at lately; surgery is ten hours away. Immutable.
/// </remarks>
public sealed class Case
{
    public static readonly Instant Now = Some.At("12:00");

    public static readonly Case Well = new([]);

    private readonly ImmutableArray<(string Name, Happened When, Payload What)> said;

    private Case(ImmutableArray<(string, Happened, Payload)> said) => this.said = said;

    public CareRecord Record
    {
        get
        {
            var entries = All()
                .Select((s, i) => EntryWriting.Write(new("a", i + 1), s.When, Instant.Max(Now, s.When.Latest), "Ane", s.What));
            return new(entries, []);
        }
    }

    public Judgement Judgement => Judge.At(Record, ShippedRules.Book, Now);

    /// <summary>The verdict of the left leg.</summary>
    public LimbVerdict Limb => Judgement.Limbs.Single(l => l.Limb == Farhold.Values.Limb.LeftLeg);

    public Verdict Verdict => Limb.Verdict;

    /// <summary>The left leg, with nothing said until then.</summary>
    public LimbVerdict Later(string time) =>
        Judge.At(Record, ShippedRules.Book, In(time)).Limbs.Single(l => l.Limb == Farhold.Values.Limb.LeftLeg);

    /// <param name="time"><c>hh:mm</c>, or <c>hh:mm:ss</c>.</param>
    public static Instant Ago(string time)
    {
        var parts = time.Split(':').Select(int.Parse).ToArray();
        return Now - Duration.FromHours(parts[0]) - Duration.FromMinutes(parts[1]) - Duration.FromSeconds(parts.Length > 2 ? parts[2] : 0);
    }

    public static Instant In(string time) => Now + (Now - Ago(time));

    /// <summary>With a part of the scene said otherwise, or nothing more of it (null); parts are those named in the scene.</summary>
    public Case With(string part, Payload? what, string ago = "00:05") =>
        new(said.RemoveAll(s => s.Name == part).Add((part, Happened.At(Ago(ago)), what!)));

    /// <summary>With something said beside the scene.</summary>
    public Case And(string ago, params Payload[] what) => new(said.AddRange(what.Select(w => ("", Happened.At(Ago(ago)), w))));

    public Case And(Happened when, Payload what) => new(said.Add(("", when, what)));

    public Case TightFor(string time) => With("tourniquet", Tightened, time);

    /// <summary>Surgery, at the latest by then.</summary>
    public Case HelpIn(string time) => With("help", new Payload.HelpExpected(Now, null, In(time), Care: HelpCare.Surgery));

    /// <summary>Both looks at the signs, changed.</summary>
    public Case Signs(Func<Payload.SignsTaken, Payload.SignsTaken> change) =>
        With("earlier", change(Some.GoodSigns), "00:17").With("signs", change(Some.GoodSigns));

    /// <summary>The newer look only.</summary>
    public Case NewSigns(Func<Payload.SignsTaken, Payload.SignsTaken> change) => With("signs", change(Some.GoodSigns));

    public Case LookedOver(Func<Payload.CasualtyLookedOver, Payload.CasualtyLookedOver> change) => With("over", change(Some.NothingElse));

    /// <summary>Looks at the signs in place of the scene's two, at those times ago.</summary>
    public Case Looks(params (string Ago, Payload.SignsTaken Signs)[] looks) =>
        looks.Aggregate(With("earlier", null).With("signs", null), (c, l) => c.And(l.Ago, l.Signs));

    /// <summary>Clear looks at those times ago.</summary>
    public Case ClearLooks(params string[] ago) => Looks([.. ago.Select(a => (a, Some.GoodSigns))]);

    /// <summary>Someone of that age, and nothing else known of them.</summary>
    public Case Aged(double years) => With("person", new Payload.CasualtyOpened("Runa", AgeYears: years), "00:39");

    public Case Taking(params string[] medicines) =>
        With("person", new Payload.CasualtyOpened("Runa", AgeYears: 34, Medicines: [.. medicines]), "00:39");

    /// <summary>Advice was tried for, and nobody answered.</summary>
    public Case Unreached(string ago = "00:04") => And(ago, new Payload.ContactTried(false));

    public Case Advised(string ago = "00:05") => And(ago, new Payload.AdviceReceived("duty doctor", "go ahead", ["attempt"]));

    /// <summary>Advice that expressly allows nothing.</summary>
    public Case Refused(string ago = "00:05", Instant? until = null) =>
        And(ago, new Payload.AdviceReceived("duty doctor", "leave it on", [], Until: until));

    /// <summary>A right leg tied as well, its wound looked at with the other one.</summary>
    public Case AndRightLeg(string tightFor, WoundNature nature = WoundNature.Bleeding) =>
        this.And(
                tightFor,
                new Payload.WoundFound("w2", Farhold.Values.Limb.RightLeg, null, nature),
                new Payload.TourniquetTightened("t2", Farhold.Values.Limb.RightLeg, Wound: "w2")
            )
            .And("00:06", new Payload.BleedingChecked("w2", Bleeding.None));

    /// <summary>An attempt begun and ended; <paramref name="end"/> ago it turned out so.</summary>
    public Case Tried(string start, string end, AttemptOutcome outcome) =>
        And(start, new Payload.AttemptStarted("w1", "t1")).And(end, new Payload.AttemptEnded("w1", "t1", outcome));

    public Truth State(string criterion) => Finding(criterion).State;

    public Finding Finding(string criterion) => Limb.Findings.Single(f => f.Criterion.Id == criterion);

    public Verdict VerdictOf(Limb limb) => Judgement.Limbs.Single(l => l.Limb == limb).Verdict;

    private static readonly Payload.TourniquetTightened Tightened = new("t1", Farhold.Values.Limb.LeftLeg, Wound: "w1");

    private static readonly ImmutableArray<(string, Happened, Payload)> Scene =
    [
        ("person", Happened.At(Ago("00:39")), new Payload.CasualtyOpened("Runa", AgeYears: 34)),
        ("wound", Happened.At(Ago("00:39")), new Payload.WoundFound("w1", Farhold.Values.Limb.LeftLeg, null, WoundNature.Bleeding)),
        ("tourniquet", Happened.At(Ago("00:40")), Tightened),
        ("earlier", Happened.At(Ago("00:17")), Some.GoodSigns),
        ("signs", Happened.At(Ago("00:05")), Some.GoodSigns),
        ("over", Happened.At(Ago("00:06")), Some.NothingElse),
        ("bleeding", Happened.At(Ago("00:06")), new Payload.BleedingChecked("w1", Bleeding.None)),
        ("watch", Happened.At(Ago("00:07")), new Payload.WatchStated(true)),
        ("gauze", Happened.At(Ago("00:08")), new Payload.SuppliesStated("plain-gauze", 3)),
        ("dressing", Happened.At(Ago("00:08")), new Payload.SuppliesStated("pressure-dressing", 3)),
        (
            "help",
            Happened.At(Ago("00:09")),
            new Payload.HelpExpected(Now + Duration.FromHours(9), null, Now + Duration.FromHours(10), Care: HelpCare.Surgery)
        ),
    ];

    private IEnumerable<(Happened When, Payload What)> All() =>
        Scene.Where(s => said.All(o => o.Name != s.Item1)).Concat(said).Where(s => s.Item3 is not null).Select(s => (s.Item2, s.Item3));
}
