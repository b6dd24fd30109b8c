using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Review;

/// <summary>A look back in sentences: what the record shows, without praise or blame.</summary>
public static class ReviewWords
{
    public static string Caution => ReviewTexts.Caution;

    private const int MostUnknown = 4;

    /// <summary>The parts in which a look back is told, with their titles.</summary>
    public static ImmutableArray<(string Title, ImmutableArray<ReviewKind> Kinds)> Parts =>
        [
            (ReviewTexts.PartBleeding, [ReviewKind.FirstTightened, ReviewKind.BleedingSeen, ReviewKind.LoosenedOutsideAttempt]),
            (ReviewTexts.PartLooks, [ReviewKind.FirstFullLook, ReviewKind.NoSigns, ReviewKind.NoLimbCheck, ReviewKind.WrittenLate]),
            (ReviewTexts.PartVerdicts, [ReviewKind.VerdictChanged, ReviewKind.AttemptPossible]),
            (ReviewTexts.PartAttempts, [ReviewKind.AttemptBegun, ReviewKind.AttemptEnded]),
            (ReviewTexts.PartAdvice, [ReviewKind.AdviceTried, ReviewKind.QuestionAsked, ReviewKind.HelpForecast]),
            (ReviewTexts.PartEnd, [ReviewKind.CareEnded, ReviewKind.Outcome]),
        ];

    /// <summary>What was worth looking for and is not in the record.</summary>
    public static IEnumerable<string> NotShown(LookBack look)
    {
        bool None(ReviewKind kind) => look.Points.All(p => p.Kind != kind);
        if (None(ReviewKind.FirstTightened))
            yield return ReviewTexts.NoTourniquet;
        if (None(ReviewKind.FirstFullLook))
            yield return ReviewTexts.NoFullLook;
        if (None(ReviewKind.AttemptPossible))
            yield return ReviewTexts.NoAttemptPossible;
        if (None(ReviewKind.AttemptBegun))
            yield return ReviewTexts.NoAttempt;
        if (None(ReviewKind.AdviceTried) && None(ReviewKind.QuestionAsked))
            yield return ReviewTexts.NoAdviceTried;
        if (None(ReviewKind.CareEnded))
            yield return ReviewTexts.NoEnd;
        if (None(ReviewKind.Outcome))
            yield return ReviewTexts.NoOutcome;
    }

    /// <param name="zone">For times it names; null: UTC.</param>
    public static string Of(ReviewPoint point, DateTimeZone? zone = null) =>
        Plain.Line(
            $"{(point.Limb is { } limb && point.Kind != ReviewKind.Outcome ? Say.Limb(limb) + ": " : "")}{What(point, zone)}{After(point)}"
        );

    private static string What(ReviewPoint p, DateTimeZone? zone) =>
        p.Kind switch
        {
            ReviewKind.FirstTightened => (p.When.IsInstant ? ReviewTexts.FirstTightened : ReviewTexts.FirstTightenedRange)
                + (p.Lasting is { } took ? ReviewTexts.AfterInjury(Say.Elapsed(took)) : ReviewTexts.InjuryUnknown),
            ReviewKind.BleedingSeen => p.Lasting is { } tightened
                ? ReviewTexts.BledThenTightened(Say.Elapsed(tightened))
                : ReviewTexts.BledNotTightened,
            ReviewKind.FirstFullLook => ReviewTexts.FirstFullLook,
            ReviewKind.VerdictChanged => ReviewTexts.VerdictChanged(Wire.Word(p.Verdict!.Value), Why(p)),
            ReviewKind.AttemptPossible => ReviewTexts.AttemptPossible,
            ReviewKind.AttemptBegun => ReviewTexts.AttemptBegun(Word(p.WrittenVerdict), Why(p), Word(p.Verdict))
                + (p.Lasting is { } since ? ReviewTexts.AfterAllowed(Say.Elapsed(since)) : ""),
            ReviewKind.AttemptEnded => ReviewTexts.AttemptEnded(
                p.Text,
                p.Lasting is { } long1 ? ReviewTexts.After(Say.Elapsed(long1)) : ""
            ),
            ReviewKind.LoosenedOutsideAttempt => ReviewTexts.LoosenedAlone(Word(p.Verdict)),
            ReviewKind.NoSigns => Gap(ReviewTexts.LooksAtSigns, p, zone),
            ReviewKind.NoLimbCheck => Gap(ReviewTexts.LooksAtLimb, p, zone),
            ReviewKind.AdviceTried => ReviewTexts.AdviceTried(p.Text, Answer(p)),
            ReviewKind.QuestionAsked => ReviewTexts.Asked(p.Text, Answer(p))
                + p.Fits switch
                {
                    Truth.Met => ReviewTexts.ReadBack,
                    Truth.NotMet => ReviewTexts.NotReadBack,
                    _ => p.Lasting is null ? "" : ReviewTexts.ReadBackUnknown,
                },
            ReviewKind.WrittenLate => ReviewTexts.WrittenLate(
                Say.Duration(p.Asked!.Value),
                Say.Number(p.Entries.Length),
                p.Entries.Length == 1 ? ReviewTexts.Entry : ReviewTexts.Entries,
                Say.Duration(p.Lasting!.Value.Max)
            ),
            ReviewKind.HelpForecast => ReviewTexts.HelpForecast(Off(p.Off!.Value))
                + p.Fits switch
                {
                    Truth.Met => ReviewTexts.WithinRange,
                    Truth.NotMet => ReviewTexts.OutsideRange,
                    _ => ReviewTexts.NoRange,
                }
                + ReviewTexts.Scored(Say.Duration(p.Score!.Value)),
            ReviewKind.CareEnded => ReviewTexts.CareEnded(p.Text!.Replace('-', ' ')),
            ReviewKind.Outcome => p.Text!,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static string Gap(string what, ReviewPoint p, DateTimeZone? zone) =>
        p.Fits == Truth.Met
            ? ReviewTexts.NeverApart(what, Say.Duration(p.Asked!.Value), Say.Time(p.When.Latest, zone))
            : ReviewTexts.Gap(what, Say.Elapsed(p.Lasting!.Value), Say.Time(p.When.Latest, zone), Say.Duration(p.Asked!.Value));

    private static string Answer(ReviewPoint p) =>
        p.Lasting is { } after ? ReviewTexts.AdviceAfter(Say.Elapsed(after)) : ReviewTexts.NoAdvice;

    private static string Why(ReviewPoint p) =>
        p.Unknown.Length > 0
            ? ReviewTexts.NotKnownThen(
                string.Join(", ", p.Unknown.Take(MostUnknown).Select(InputWords.Name)),
                p.Unknown.Length > MostUnknown ? ReviewTexts.AndMore(Say.Number(p.Unknown.Length - MostUnknown)) : ""
            )
        : p.Reasons.Length > 0 ? $" ({string.Join(", ", p.Reasons)})"
        : "";

    private static string Word(Verdict? verdict) => verdict is { } known ? Wire.Word(known) : ReviewTexts.VerdictNone;

    private static string Off(Duration off) =>
        off < Duration.Zero ? ReviewTexts.BeforeLikely(Say.Duration(-off))
        : off > Duration.Zero ? ReviewTexts.AfterLikely(Say.Duration(off))
        : ReviewTexts.AtLikely;

    private static string After(ReviewPoint p) =>
        p.SinceTightened is { } since && p.Kind is not (ReviewKind.FirstTightened or ReviewKind.Outcome)
            ? ReviewTexts.AfterFirstTightening(Say.Elapsed(since))
            : "";
}
