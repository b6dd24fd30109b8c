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
    private const string ByVoice = "not in the record: say it";

    public static SpokenForm Of(FormKind kind, CareFacts facts, DateTimeZone zone, PickUp? pickUp = null)
    {
        var words = new FactWords(facts, zone);
        return kind switch
        {
            FormKind.Mist => new("MIST", Heads(words), Mist(words)),
            FormKind.Atmist => new("ATMIST", Heads(words), [Person(words), Time(words), .. Mist(words)]),
            FormKind.Sbar => new("SBAR", Heads(words), Sbar(words)),
            FormKind.NineLine => new("Nine-line evacuation request", Heads(words), NineLine(words, pickUp ?? new())),
            FormKind.Radio => RadioScript.Of(words),
            _ => throw new UnreachableException(),
        };
    }

    private static ImmutableArray<string> Heads(FactWords words) =>
        [.. words.Cautions, $"as of {words.Times.AsOf()}", VerdictWords.Caution];

    private static FormPart Person(FactWords words) => new("A", "Age and person", [words.Who, words.Allergies, words.Medicines, words.History]);

    private static FormPart Time(FactWords words) => new("T", "Time",
        words.Facts.Limbs.IsEmpty ? ["time of injury not recorded; no tourniquet recorded"] : [.. words.Facts.Limbs.Select(words.Tourniquet)]);

    private static ImmutableArray<FormPart> Mist(FactWords words) =>
    [
        new("M", "Mechanism", Mechanism(words)),
        new("I", "Injuries", [.. words.Wounds, .. words.Rest]),
        new("S", "Signs", [words.Shock, .. words.Signs, .. words.Facts.Limbs.Select(words.Beyond)]),
        new("T", "Treatment", [.. Tourniquets(words), .. words.Facts.Limbs.SelectMany(l => words.Attempts(l)), .. words.Care, .. words.Ended]),
    ];

    private static ImmutableArray<FormPart> Sbar(FactWords words) =>
    [
        new("S", "Situation", [words.Who, .. Tourniquets(words), words.Shock, .. words.Help, words.Position]),
        new("B", "Background",
        [
            .. words.Wounds, .. words.Rest, .. Mechanism(words), words.Allergies, words.Medicines, words.History,
            .. words.Facts.Limbs.SelectMany(l => words.Attempts(l)), .. words.Care, .. words.Advice, .. words.Ended,
        ]),
        new("A", "Assessment", [.. words.Signs, .. words.Facts.Limbs.Select(words.Beyond), words.Watch, .. words.Facts.Limbs.Select(FactWords.Verdict)]),
        new("R", "Recommendation", [.. words.Due, .. words.Facts.Limbs.Select(words.Limit), words.Protocol, words.Helpers]),
    ];

    private static ImmutableArray<FormPart> NineLine(FactWords words, PickUp pickUp) =>
    [
        new("1", "Place of pick-up", pickUp.Place is { } place ? [place] : words.Facts.Positions.IsEmpty ? [ByVoice] : [ByVoice, words.Position]),
        new("2", "Frequency and call sign", [pickUp.Call ?? ByVoice]),
        new("3", "Patients by precedence",
            [$"one patient; precedence {pickUp.Precedence ?? "for the caller to decide"}", .. words.Facts.Limbs.Select(words.Tourniquet), words.Shock]),
        new("4", "Special equipment", [pickUp.Equipment ?? ByVoice]),
        new("5", "Patients by type", [$"one, {pickUp.Carried ?? "lying or walking: " + ByVoice}"]),
        new("6", "Wounds, number and kind", [$"{Say.Number(words.Facts.Wounds.Length)} recorded", .. words.Wounds]),
        new("7", "Marking of the place", [pickUp.Marking ?? ByVoice]),
        new("8", "Nationality and status", [pickUp.Nationality ?? ByVoice]),
        new("9", "Terrain", [pickUp.Terrain ?? ByVoice]),
    ];

    /// <summary>The record has no field for it: what notes of the wounds say is repeated as it stands.</summary>
    private static ImmutableArray<string> Mechanism(FactWords words)
    {
        var notes = words.Facts.Wounds.SelectMany(w => w.Found).Select(f => f.As<Payload.WoundFound>().Note).OfType<string>().Distinct().ToArray();
        return notes.Length == 0
            ? ["mechanism not recorded"]
            : [.. notes.Select(n => Plain.Line($"mechanism not recorded by itself; the wound's note says: {n}"))];
    }

    private static ImmutableArray<string> Tourniquets(FactWords words) => words.Facts.Limbs.IsEmpty
        ? ["no tourniquet recorded"]
        : [.. words.Facts.Limbs.SelectMany(l => (string[])[words.Tourniquet(l), FactWords.Flow(l), words.Limit(l)])];
}
