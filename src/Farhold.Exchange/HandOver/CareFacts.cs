using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.Exchange.HandOver;

/// <summary>What the next hands need to know, gathered once for every form of hand-over: each form only words it.</summary>
/// <remarks>
/// Amended entries stand as amended, withdrawn ones are left out (the log has both, see <see cref="LogText"/>). Where
/// entries conflict, every reading's value is here, marked <see cref="Stated.Disputed"/>: a form says both. What nobody
/// recorded is an empty list or null, and a form says that it is not known. Entries that happened after
/// <see cref="At"/> for certain are left out.
/// </remarks>
public sealed record CareFacts
{
    private CareFacts() { }

    /// <summary>The instant it is all told as of.</summary>
    public required Instant At { get; init; }

    /// <summary>At least one entry is marked as practice: every form says so first.</summary>
    public required bool Practice { get; init; }

    public required Person Person { get; init; }

    /// <summary>Each <see cref="Payload.InjuryStated"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Injuries { get; init; }

    public required ImmutableArray<WoundFact> Wounds { get; init; }

    /// <summary>Every limb that has or had a tourniquet.</summary>
    public required ImmutableArray<LimbFact> Limbs { get; init; }

    /// <summary>Every kind of sign, taken or not, in the order in which they are told.</summary>
    public required ImmutableArray<SignFact> Signs { get; init; }

    /// <summary>Each <see cref="Payload.SignsTaken"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Looks { get; init; }

    /// <summary>Each <see cref="Payload.DrugGiven"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Drugs { get; init; }

    public required ImmutableArray<DrugSum> DrugSums { get; init; }

    /// <summary>Each <see cref="Payload.FluidGiven"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Fluids { get; init; }

    public required ImmutableArray<FluidSum> FluidSums { get; init; }

    /// <summary>Each <see cref="Payload.UrineMeasured"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Urine { get; init; }

    /// <summary>Millilitres.</summary>
    public required GivenSum UrineSum { get; init; }

    /// <summary>What was last seen of the rest of the casualty, looked at or not.</summary>
    public required ImmutableArray<RestFact> Rest { get; init; }

    /// <summary>Each <see cref="Payload.CasualtyLookedOver"/>, in order of time.</summary>
    public required ImmutableArray<Stated> LookedOver { get; init; }

    /// <summary>The last <see cref="Payload.RegionLooked"/> of each region and limb.</summary>
    public required ImmutableArray<Stated> Regions { get; init; }

    /// <summary>The last <see cref="Payload.StepLooked"/> of each step.</summary>
    public required ImmutableArray<Stated> Steps { get; init; }

    /// <summary>Each <see cref="Payload.CasualtyMoved"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Moves { get; init; }

    /// <summary>The last <see cref="Payload.PositionNoted"/>.</summary>
    public required ImmutableArray<Stated> Positions { get; init; }

    /// <summary>
    /// The last <see cref="Payload.HelpExpected"/> of each kind of help, the greatest first; empty: nothing was said. Several of
    /// one kind: it is not known which came last.
    /// </summary>
    public required ImmutableArray<Stated> Help { get; init; }

    /// <summary>Each <see cref="Payload.ContactTried"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Contacts { get; init; }

    /// <summary>Each <see cref="Payload.QuestionAsked"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Questions { get; init; }

    /// <summary>Each <see cref="Payload.AdviceReceived"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Advice { get; init; }

    /// <summary>Each <see cref="Payload.NoteWritten"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Notes { get; init; }

    /// <summary>The last <see cref="Payload.WatchStated"/>.</summary>
    public required ImmutableArray<Stated> Watch { get; init; }

    /// <summary>The last <see cref="Payload.SuppliesStated"/> of each item.</summary>
    public required ImmutableArray<Stated> Supplies { get; init; }

    /// <summary>Each <see cref="Payload.CareEnded"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Ended { get; init; }

    /// <summary>Each <see cref="Payload.OutcomeReported"/>, in order of time.</summary>
    public required ImmutableArray<Stated> Outcomes { get; init; }

    /// <summary>Entries of kinds this version does not know: kept, counted in nothing.</summary>
    public required ImmutableArray<Stated> OfNewerVersion { get; init; }

    /// <summary>Whoever had written something by then, in the order in which they first did.</summary>
    public required ImmutableArray<Helper> Helpers { get; init; }

    /// <summary>Verdicts, shock, what is due, doubts, and the protocol in force.</summary>
    public required Judgement Judgement { get; init; }

    /// <summary>Every warning rule, met first, then what can't be told.</summary>
    public required ImmutableArray<WarningFinding> Warnings { get; init; }

    /// <summary>
    /// Why the record is to be read with care, a sentence each: doubts, loosened limits, what is odd. Empty: nothing known.
    /// </summary>
    public required ImmutableArray<string> Cautions { get; init; }

    /// <summary>That the record is in doubt, then why, a sentence each; empty where it is not.</summary>
    public ImmutableArray<string> Doubts => Doubting(Judgement);

    /// <param name="rules">Those in force.</param>
    public static CareFacts Of(CareRecord record, Rulebook rules, Instant now, Rhythm? rhythm = null)
    {
        var source = new Source(record, now);
        var judgement = Judge.At(record, rules, now, rhythm);
        var practice = record.Entries.Any(IsPractice);
        return new()
        {
            At = now,
            Practice = practice,
            Person = Person.Of(source),
            Injuries = source.Of(Kind.InjuryStated),
            Wounds = WoundFact.All(source),
            Limbs = LimbFact.All(source, judgement),
            Signs = SignFact.Every(source, rules.Protocol),
            Looks = source.Of(Kind.SignsTaken),
            Drugs = source.Of(Kind.DrugGiven),
            DrugSums = DrugSum.All(record, rules.Formulary, now),
            Fluids = source.Of(Kind.FluidGiven),
            FluidSums = FluidSum.All(record, now),
            Urine = source.Of(Kind.UrineMeasured),
            UrineSum = GivenSum.Of(Kind.UrineMeasured, record, now, p => ((Payload.UrineMeasured)p).Millilitres),
            Rest = RestFact.Every(source),
            LookedOver = source.Of(Kind.CasualtyLookedOver),
            Regions = LookedAt(source),
            Steps = [.. Enum.GetValues<LookStep>().SelectMany(s => source.Last(Kind.StepLooked, p => ((Payload.StepLooked)p).Step == s))],
            Moves = source.Of(Kind.CasualtyMoved),
            Positions = source.Last(Kind.PositionNoted, _ => true),
            Help = [.. Cares.SelectMany(care => source.Last(Kind.HelpExpected, p => ((Payload.HelpExpected)p).Care == care))],
            Contacts = source.Of(Kind.ContactTried),
            Questions = source.Of(Kind.QuestionAsked),
            Advice = source.Of(Kind.AdviceReceived),
            Notes = source.Of(Kind.Note),
            Watch = source.Last(Kind.WatchStated, _ => true),
            Supplies =
            [
                .. source
                    .Of(Kind.SuppliesStated)
                    .Select(s => s.As<Payload.SuppliesStated>().Item)
                    .Distinct()
                    .SelectMany(item => source.Last(Kind.SuppliesStated, p => ((Payload.SuppliesStated)p).Item == item)),
            ],
            Ended = source.Of(Kind.CareEnded),
            Outcomes = source.Of(Kind.OutcomeReported),
            OfNewerVersion = source.Of(Kind.OfNewerVersion),
            Helpers = Helper.All(record, now),
            Judgement = judgement,
            Warnings = WarningSigns.Of(record, rules, now),
            Cautions = Cautioning(judgement),
        };
    }

    /// <summary>Kinds of help, the greatest first; last, where it was not said what comes.</summary>
    private static readonly ImmutableArray<HelpCare?> Cares = [HelpCare.Surgery, HelpCare.Clinic, HelpCare.Hands, null];

    private static ImmutableArray<Stated> LookedAt(Source source)
    {
        static (Limb?, BodyRegion?) Place(Payload p) => p is Payload.RegionLooked looked ? (looked.Limb, looked.Region) : default;
        return
        [
            .. source
                .Of(Kind.RegionLooked)
                .Select(s => Place(s.What))
                .Distinct()
                .SelectMany(place => source.Last(Kind.RegionLooked, p => Place(p) == place)),
        ];
    }

    /// <summary>Design: doubts that are named in a form; the log has all.</summary>
    private const int MostDoubts = 20;

    private static ImmutableArray<string> Doubting(Judgement judgement) =>
        judgement.Doubts.IsEmpty
            ? []
            :
            [
                HandOverTexts.InDoubt,
                .. judgement.Doubts.Take(MostDoubts).Select(d => Plain.Line(d.Text)),
                .. judgement.Doubts.Length <= MostDoubts
                    ? []
                    : (string[])[HandOverTexts.MoreDoubts(Say.Number(judgement.Doubts.Length - MostDoubts))],
            ];

    private static ImmutableArray<string> Cautioning(Judgement judgement) =>
        [
            .. Doubting(judgement),
            .. RulesWords.Warnings(judgement.Rules),
            .. judgement.Remarks.Select(r => Plain.Line(r.About is { } about ? HandOverTexts.OddEntry(about.ToString(), r.Text) : r.Text)),
        ];

    /// <summary>Whether an entry is of a practice casualty.</summary>
    public static bool IsPractice(Entry entry)
    {
        if (entry.Json.Utf8.Span.IndexOf("\"practice\""u8) < 0)
            return false;
        using var json = JsonDocument.Parse(entry.Json.Utf8);
        return json.RootElement.TryGetProperty("practice", out var practice) && practice.ValueKind == JsonValueKind.True;
    }
}
