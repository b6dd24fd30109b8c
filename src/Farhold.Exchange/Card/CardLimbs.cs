using Farhold.Exchange.HandOver;
using NodaTime;

namespace Farhold.Exchange.Card;

/// <summary>Each limb that has or had a tourniquet: since when, until when, what was tried, and its line.</summary>
internal static class CardLimbs
{
    public static IEnumerable<CardPart> Top(CareFacts facts, CareRecord record, Protocol protocol, DateTimeZone zone, CardTimes times)
    {
        if (facts.Limbs.IsEmpty)
            yield return new CardPart.Heading("No tourniquet recorded");
        foreach (var limb in facts.Limbs)
        {
            yield return new CardPart.Heading($"Tourniquet, {Say.Limb(limb.Limb)}");
            yield return new CardPart.Large(
                "First tightened", $"{times.Of(limb.FirstTightened)}, {Say.Elapsed(limb.SinceFirstTightened)} ago");
            yield return limb.Tight switch
            {
                Truth.Met => new CardPart.Large("Tight now", Plain.Line($"tourniquet {string.Join(", ", limb.Clock.Tourniquets)}")),
                Truth.Unknown => new CardPart.Large("Perhaps tight", "it is not known"),
                _ => new CardPart.Large("Loose now", limb.Loosened is { } loosened
                    ? $"since {times.Of(loosened)}, {Say.Elapsed(loosened.Until(facts.At))} ago" : "since when is not known"),
            };
            yield return new CardPart.Large("Limit", $"{times.Of(limb.LimitAt)}{(limb.LimitAt <= facts.At ? " (PASSED)" : "")}");
            yield return new CardPart.Picture(LimbPicture.Of(limb.Clock, record.Readings[0], protocol, facts.At, zone));
        }
    }

    public static IEnumerable<CardPart> Told(CareFacts facts, CardTimes times)
    {
        foreach (var limb in facts.Limbs)
        {
            yield return new CardPart.Heading(Sentence(Say.Limb(limb.Limb)));
            foreach (var part in One(limb, times))
                yield return part;
        }

        yield return new CardPart.Said("Shock", VerdictWords.Of(facts.Judgement.Shock), facts.Judgement.Shock.State != Truth.NotMet);
    }

    private static IEnumerable<CardPart> One(LimbFact limb, CardTimes times)
    {
        if (limb.Verdict is { } verdict)
            yield return new CardPart.Said("Now", Sentence(VerdictWords.Of(verdict.Verdict)), Strong: true);
        if (limb.Observed is { } watched)
            yield return new CardPart.Said("Now", watched.Bleeding == Truth.Met
                ? $"BLEEDING AGAIN, seen {times.Of(watched.BledAgain!.Value)}: tighten at once" : Sentence(VerdictWords.Of(watched)), Strong: true);
        yield return new CardPart.Said("Without flow", $"{Say.Elapsed(limb.Occluded)} in all; first window ends {times.Of(limb.WindowAt)}");
        foreach (var done in limb.Events)
            yield return new CardPart.Said(times.Of(done.When), Plain.Line($"{done.Text}, {done.By}{CardCare.Mark(done)}"));
        foreach (var attempt in limb.Attempts)
            yield return new CardPart.Said("Attempt", Plain.Line(
                $"begun {times.Of(attempt.Started)} (wound {attempt.Wound}, tourniquet {attempt.Tourniquet}): {Result(attempt, times)}"), Strong: true);
        yield return new CardPart.Said("Pulse beyond", limb.DistalPulse.IsEmpty ? "NOT CHECKED"
            : (limb.BeyondIsOfBefore ? "NOT CHECKED since it was loosened; before that " : "") + string.Join("; or ", limb.DistalPulse.Select(p => Beyond(p, limb.Limb, times))));
    }

    private static string Result(Attempt attempt, CardTimes times) => attempt.Result switch
    {
        AttemptResult.UnderWay => "under way",
        var ended => $"{Wire.Word(ended)}{(attempt.Ended is { } end ? $" {times.Of(end)}" : "")}",
    };

    private static string Beyond(Stated stated, Limb limb, CardTimes times) => Plain.Line(
        $"{Wire.Word(stated.As<Payload.SignsTaken>().DistalPulse![limb])}, {times.Of(stated.When)}, {stated.By}{CardCare.Mark(stated)}");

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
