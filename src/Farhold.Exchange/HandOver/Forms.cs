using System.Collections.Immutable;
using System.Diagnostics;
using NodaTime;

namespace Farhold.Exchange.HandOver;

/// <summary>Words the facts in the trade's own spoken structures.</summary>
/// <remarks>
/// Letters of MIST, ATMIST and SBAR: common practice. Lines of the evacuation request: US Army task 081-831-0101 and
/// training copies (seen second-hand); codes are spelled out as words, because copies disagree about the letters.
/// </remarks>
public static class Forms
{
    internal static string NeedsName => HandOverTexts.NeedsHead;
    internal static string RecommendationName => HandOverTexts.RecommendationHead;
    internal static string NotSaidName => HandOverTexts.NotSaidHead;

    private static string ByVoice => HandOverTexts.ByVoice;

    public static SpokenForm Of(FormKind kind, CareFacts facts, DateTimeZone zone, PickUp? pickUp = null)
    {
        var words = new FactWords(facts, zone);
        return kind switch
        {
            FormKind.Mist => new("MIST", Heads(words), [.. Mist(words, [words.Injured]), .. Ahead(words), .. Rest(kind, words)]),
            FormKind.Atmist => new(
                "ATMIST",
                Heads(words),
                [Person(words), Time(words), .. Mist(words, []), .. Ahead(words), .. Rest(kind, words)]
            ),
            FormKind.Sbar => new("SBAR", Heads(words), [.. Sbar(words), .. Rest(kind, words)]),
            FormKind.NineLine => new(
                HandOverTexts.NineLine,
                Heads(words),
                [.. NineLine(words, pickUp ?? new()), .. Ahead(words), .. Rest(kind, words)]
            ),
            FormKind.Radio => RadioScript.Of(words),
            _ => throw new UnreachableException(),
        };
    }

    private static ImmutableArray<string> Heads(FactWords words) =>
        [.. words.Cautions, HandOverTexts.AsOf(words.Times.AsOf()), VerdictWords.Caution];

    private static ImmutableArray<FormPart> Ahead(FactWords words) =>
        [new("", NeedsName, words.NeedLines), new("", RecommendationName, words.Recommendations)];

    private static ImmutableArray<FormPart> Rest(FormKind kind, FactWords words) =>
        NotSaid.In(kind, words.Facts) is { IsEmpty: false } left ? [new("", NotSaidName, left)] : [];

    private static FormPart Person(FactWords words) =>
        new("A", HandOverTexts.AgeAndPerson, [words.Who, words.Allergies, words.Medicines, words.History]);

    private static FormPart Time(FactWords words) =>
        new(
            "T",
            HandOverTexts.Time,
            [words.Injured, .. words.Facts.Limbs.IsEmpty ? [HandOverTexts.NoTourniquet] : words.Facts.Limbs.Select(words.Tourniquet)]
        );

    private static ImmutableArray<FormPart> Mist(FactWords words, ImmutableArray<string> time) =>
        [
            new("M", HandOverTexts.MechanismHead, [.. words.Mechanism, .. time]),
            new("I", HandOverTexts.InjuriesHead, [.. words.Wounds, .. words.Rest]),
            new("S", HandOverTexts.SignsHead, [words.Shock, .. words.Signs, .. words.Facts.Limbs.Select(words.Beyond)]),
            new(
                "T",
                HandOverTexts.TreatmentHead,
                [.. Tourniquets(words), .. words.Facts.Limbs.SelectMany(l => words.Attempts(l)), .. words.Care, .. words.Ended]
            ),
        ];

    private static ImmutableArray<FormPart> Sbar(FactWords words) =>
        [
            new("S", HandOverTexts.SituationHead, [words.Who, .. Tourniquets(words), words.Shock, .. words.Help, words.Position]),
            new(
                "B",
                HandOverTexts.BackgroundHead,
                [
                    .. words.Wounds,
                    .. words.Rest,
                    .. words.Mechanism,
                    words.Injured,
                    words.Allergies,
                    words.Medicines,
                    words.History,
                    .. words.Facts.Limbs.SelectMany(l => words.Attempts(l)),
                    .. words.Care,
                    .. words.Advice,
                    .. words.Ended,
                ]
            ),
            new(
                "A",
                HandOverTexts.AssessmentHead,
                [.. words.Signs, .. words.Facts.Limbs.Select(words.Beyond), words.Watch, .. words.Facts.Limbs.Select(FactWords.Verdict)]
            ),
            new(
                "R",
                HandOverTexts.RecommendationShort,
                [
                    .. words.Recommendations,
                    .. words.NeedLines,
                    .. words.Facts.Limbs.Select(words.Limit),
                    .. words.Due.Select(d => HandOverTexts.ByPlanOfCare(d)),
                    words.Protocol,
                    words.Helpers,
                ]
            ),
        ];

    private static ImmutableArray<FormPart> NineLine(FactWords words, PickUp pickUp) =>
        [
            new(
                "1",
                HandOverTexts.PickUp,
                pickUp.Place is { } place ? [place]
                    : words.Facts.Positions.IsEmpty ? [ByVoice]
                    : [ByVoice, words.Position]
            ),
            new("2", HandOverTexts.Frequency, [pickUp.Call ?? ByVoice]),
            new(
                "3",
                HandOverTexts.Precedence,
                [
                    HandOverTexts.OnePatient(pickUp.Precedence ?? HandOverTexts.CallerDecides),
                    .. words.Facts.Limbs.Select(words.Tourniquet),
                    words.Shock,
                ]
            ),
            new("4", HandOverTexts.Equipment, [pickUp.Equipment ?? ByVoice]),
            new("5", HandOverTexts.ByType, [HandOverTexts.OneOfType(pickUp.Carried ?? HandOverTexts.LyingOrWalking + ByVoice)]),
            new("6", HandOverTexts.WoundsNumber, [HandOverTexts.NumberRecorded(Say.Number(words.Facts.Wounds.Length)), .. words.Wounds]),
            new("7", HandOverTexts.Marking, [pickUp.Marking ?? ByVoice]),
            new("8", HandOverTexts.Nationality, [pickUp.Nationality ?? ByVoice]),
            new("9", HandOverTexts.Terrain, [pickUp.Terrain ?? ByVoice]),
        ];

    private static ImmutableArray<string> Tourniquets(FactWords words) =>
        words.Facts.Limbs.IsEmpty
            ? [HandOverTexts.NoTourniquet]
            : [.. words.Facts.Limbs.SelectMany(l => (string[])[words.Tourniquet(l), FactWords.Flow(l), words.Limit(l)])];
}
