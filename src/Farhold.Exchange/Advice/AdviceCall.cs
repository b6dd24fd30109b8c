using System.Collections.Immutable;
using Farhold.Exchange.HandOver;
using NodaTime;

namespace Farhold.Exchange.Advice;

/// <summary>Who calls, and from where; null is said to be missing.</summary>
/// <param name="Place">A grid reference or a name of a place, besides the position in the record.</param>
public sealed record Caller(string? Name = null, string? Place = null);

/// <summary>A call for advice, worded from record and verdict: one question, and the picture that matters to it.</summary>
/// <remarks>
/// All that stands against an attempt is said, and all that nobody knows, whatever is asked. Situation before picture before plan, and
/// reading back: common practice.
/// </remarks>
public sealed class AdviceCall
{
    private readonly FactWords words;
    private readonly Caller caller;

    public AdviceCall(CareFacts facts, AdviceQuestion question, DateTimeZone zone, Caller? caller = null)
    {
        (words, Question) = (new FactWords(facts, zone), question);
        this.caller = caller ?? new();
        Limb = facts.Limbs.FirstOrDefault(l => l.Limb == question.Limb);
        Zone = zone;
    }

    public AdviceQuestion Question { get; }

    /// <summary>The limb it is about; null where it is about the casualty as a whole.</summary>
    internal LimbFact? Limb { get; }

    internal CareFacts Facts => words.Facts;

    private DateTimeZone Zone { get; }

    private IEnumerable<LimbFact> Limbs => Limb is null ? Facts.Limbs : [Limb];

    /// <summary>The service's contacts, those that can be reached now first; empty where no local protocol names any.</summary>
    public ImmutableArray<Callee> Callees => Callee.For(this, words.Times);

    /// <summary>Whom to call, and whose yes counts, in lines; empty where no local protocol says.</summary>
    public ImmutableArray<string> Whom => [.. Callees.Select(c => c.Line), .. Callee.Beside(this)];

    /// <summary>As text to be read out or handed on.</summary>
    public SpokenForm Form =>
        new(
            AdviceTexts.Title,
            [.. words.Cautions, AdviceTexts.AsOf(words.Times.AsOf()), VerdictWords.Caution],
            [
                new("1", AdviceTexts.WhoHead, Opening),
                new("2", AdviceTexts.QuestionHead, [Question.Text, AdviceTexts.AnswerAsked]),
                new("3", AdviceTexts.RulesHead, Against),
                new("4", AdviceTexts.PictureHead, Picture),
                new("5", AdviceTexts.TriedHead, Tried),
                new("6", AdviceTexts.AtHandHead, AtHand),
                new("7", "Help", words.Help),
                new("8", AdviceTexts.NobodyHead, Plan),
            ]
        );

    /// <summary>The same for a bad radio: every number digit by digit.</summary>
    public SpokenForm Spoken =>
        Form with
        {
            Title = AdviceTexts.ReadAloud,
            Parts =
            [
                .. Facts.Practice ? [new FormPart("", "Begin", [AdviceTexts.Exercise])] : (FormPart[])[],
                .. Form.Parts.Select(p => new FormPart("", p.Name, [.. p.Lines.Select(SpokenText.Of)])),
                .. words.Cautions.IsEmpty ? (FormPart[])[] : [new FormPart("", "Cautions", [.. words.Cautions.Select(SpokenText.Of)])],
            ],
        };

    /// <summary>At most one short message.</summary>
    public string Short => ShortCall.Of(this);

    /// <summary>What stands against an attempt, or may; those that no yes lifts are said to be so.</summary>
    internal IEnumerable<Finding> Blocking => Limbs.SelectMany(Blocks).DistinctBy(f => f.Criterion.Id);

    /// <summary>What a yes would have to lift: acts and criteria, as a list of who may allow what names them.</summary>
    internal ImmutableArray<string> Asked =>
        Question.For is AskFor.Guide or AskFor.Drug or AskFor.Other ? [] : [.. Blocking.SelectMany(Acts).Distinct()];

    private static IEnumerable<string> Acts(Finding finding)
    {
        if (finding.Criterion.Condition.Inputs.Contains(Input.Oversight))
            yield return AllowedActs.Late;
        if (finding.Criterion.Condition.Inputs.Contains(Input.FurtherAttemptAllowed))
            yield return AllowedActs.Further;
        if (AllowedActs.Lifts(finding.Criterion))
            yield return finding.Criterion.Id;
    }

    private ImmutableArray<string> Opening =>
        [
            Plain.Line(caller.Name is { Length: > 0 } name ? AdviceTexts.ThisIs(name) : AdviceTexts.SayYourName),
            words.Who,
            .. caller.Place is { Length: > 0 } place ? [Plain.Line(AdviceTexts.WeAreAt(place))] : (string[])[],
            Facts.Positions.IsEmpty ? AdviceTexts.NoPosition : words.Position,
        ];

    private ImmutableArray<string> Against =>
        [
            .. Limbs.Select(FactWords.Verdict),
            .. Limbs.SelectMany(l => Blocks(l).Concat(Lifted(l)).Select(f => On(l) + Said(f))).Distinct(),
            .. Blocking.Any(IsFast) ? [AdviceTexts.NoYesLifts] : (string[])[],
            .. Facts.Limbs.IsEmpty ? [AdviceTexts.NoTourniquet] : (string[])[],
        ];

    private ImmutableArray<string> Picture =>
        [
            .. Limbs.SelectMany(l => (string[])[words.Tourniquet(l), FactWords.Flow(l), words.Limit(l), words.Beyond(l)]),
            .. Facts.Limbs.Except(Limbs).Select(words.Tourniquet),
            .. words.Wounds,
            words.Shock,
            .. words.Signs,
            .. words.Rest,
            words.Allergies,
            words.Medicines,
            .. Question.For is AskFor.Drug or AskFor.Other ? [words.History] : (string[])[],
        ];

    private ImmutableArray<string> Tried =>
        [.. Limbs.SelectMany(l => words.Attempts(l)), .. words.Care, .. words.Advice.IsEmpty ? [AdviceTexts.NotTried] : words.Advice];

    private ImmutableArray<string> AtHand =>
        [
            .. Facts.Supplies.Select(s => words.Timed(s) + OnBox(s.As<Payload.SuppliesStated>().Item)),
            .. NotCounted is { Length: > 0 } missing ? [AdviceTexts.NotCounted(string.Join(", ", missing))] : (string[])[],
            words.Watch,
        ];

    private string OnBox(string item) =>
        Facts.Judgement.Protocol.Local?.Service.StockNames.GetValueOrDefault(item) is { } box ? AdviceTexts.OnBox(box) : "";

    private string[] NotCounted =>
        [.. Supplies.Asked.Except(Facts.Supplies.Select(s => s.As<Payload.SuppliesStated>().Item)).Select(i => i.Replace('-', ' '))];

    private ImmutableArray<string> Plan =>
        [
            AdviceTexts.WithoutAnswer(words.Times.At(Facts.At + Facts.Judgement.Protocol.Advice.Unanswered)),
            .. Limbs
                .Where(l => l.Verdict is not null)
                .Select(l => Plain.Line(AdviceTexts.UntilWeHear(Say.Limb(l.Limb), l.Verdict!.Act.Said(Zone)))),
            .. Blocking
                .Where(f => f is { State: Truth.Met, Criterion.GivesWay: not null })
                .Select(f => AdviceTexts.GivesWay(Say.Duration(f.Criterion.GivesWay!.Value)) + f.Criterion.Text),
            .. Blocking.Any(f => f.Criterion.Condition.Inputs.Contains(Input.NobodyReached)) ? [AdviceTexts.HoursGiveWay] : (string[])[],
        ];

    /// <summary>The limb that a line is about, where it may be about several.</summary>
    private string On(LimbFact limb) => Limb is null && Facts.Limbs.Length > 1 ? $"{Say.Limb(limb.Limb)}: " : "";

    private static IEnumerable<Finding> Blocks(LimbFact limb) =>
        limb.Verdict?.Findings.Where(f => f.Against != Truth.NotMet || (f.Criterion.Role == Role.Soft && f.State != Truth.NotMet)) ?? [];

    private static IEnumerable<Finding> Lifted(LimbFact limb) => limb.Verdict?.Findings.Where(f => f.Lifted != Lift.None) ?? [];

    /// <summary>No advice lifts it (only a local protocol with its authority may).</summary>
    internal static bool IsFast(Finding finding) => finding.Criterion.Hard && finding.Against == Truth.Met;

    private static string Said(Finding finding) =>
        Plain.Line(
            VerdictWords.Of(finding)
                + (VerdictWords.Telling(finding) is { Length: > 0 } values ? $" ({values})" : "")
                + (IsFast(finding) ? AdviceTexts.MarkNoYes : "")
        );
}
