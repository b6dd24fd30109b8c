using Farhold.Exchange.HandOver;
using NodaTime;

namespace Farhold.Exchange.Card;

/// <summary>Each limb that has or had a tourniquet: since when, until when, what was tried, and its line.</summary>
internal static class CardLimbs
{
    public static IEnumerable<CardPart> Top(CareFacts facts, CareRecord record, Protocol protocol, DateTimeZone zone, CardTimes times)
    {
        if (facts.Limbs.IsEmpty)
            yield return new CardPart.Heading(CardTexts.NoTourniquet);
        foreach (var limb in facts.Limbs)
        {
            yield return new CardPart.Heading(CardTexts.TourniquetOn(Say.Limb(limb.Limb)));
            yield return new CardPart.Large(
                CardTexts.FirstTightened,
                CardTexts.TimeAgo(times.Of(limb.FirstTightened), Say.Elapsed(limb.SinceFirstTightened))
            );
            yield return limb.Tight switch
            {
                Truth.Met => new CardPart.Large(
                    CardTexts.TightNow,
                    Plain.Line(CardTexts.Tourniquet(string.Join(", ", limb.Clock.Tourniquets)))
                ),
                Truth.Unknown => new CardPart.Large(CardTexts.PerhapsTight, CardTexts.NotKnown),
                _ => new CardPart.Large(
                    CardTexts.LooseNow,
                    limb.Loosened is { } loosened
                        ? CardTexts.SinceAgo(times.Of(loosened), Say.Elapsed(loosened.Until(facts.At)))
                        : CardTexts.SinceNotKnown
                ),
            };
            yield return new CardPart.Large(
                CardTexts.Limit,
                $"{times.Of(limb.LimitAt)}{(limb.LimitAt <= facts.At ? CardTexts.Passed : "")}"
            );
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

        yield return new CardPart.Said(
            CardTexts.Shock,
            VerdictWords.Of(facts.Judgement.Shock),
            facts.Judgement.Shock.State != Truth.NotMet
        );
    }

    private static IEnumerable<CardPart> One(LimbFact limb, CardTimes times)
    {
        if (limb.Verdict is { } verdict)
            yield return new CardPart.Said(CardTexts.Now, Sentence(VerdictWords.Of(verdict.Verdict)), Strong: true);
        if (limb.Observed is { } watched)
            yield return new CardPart.Said(
                CardTexts.Now,
                watched.Bleeding == Truth.Met
                    ? CardTexts.BleedingAgain(times.Of(watched.BledAgain!.Value))
                    : Sentence(VerdictWords.Of(watched)),
                Strong: true
            );
        yield return new CardPart.Said(
            CardTexts.WithoutFlow,
            CardTexts.InAllWindowEnds(Say.Elapsed(limb.Occluded), times.Of(limb.WindowAt))
        );
        foreach (var done in limb.Events)
            yield return new CardPart.Said(times.Of(done.When), Plain.Line($"{done.Text}, {done.By}{CardCare.Mark(done)}"));
        foreach (var attempt in limb.Attempts)
            yield return new CardPart.Said(
                CardTexts.Attempt,
                Plain.Line(CardTexts.AttemptBegun(times.Of(attempt.Started), attempt.Wound, attempt.Tourniquet, Result(attempt, times))),
                Strong: true
            );
        yield return new CardPart.Said(
            CardTexts.PulseBelow,
            limb.DistalPulse.IsEmpty
                ? CardTexts.NotChecked
                : (limb.BeyondIsOfBefore ? CardTexts.NotCheckedSince : "")
                    + string.Join(CardTexts.OrElse, limb.DistalPulse.Select(p => Beyond(p, limb.Limb, times)))
        );
    }

    private static string Result(Attempt attempt, CardTimes times) =>
        attempt.Result switch
        {
            AttemptResult.UnderWay => CardTexts.UnderWay,
            var ended => $"{Say.Word(ended)}{(attempt.Ended is { } end ? $" {times.Of(end)}" : "")}",
        };

    private static string Beyond(Stated stated, Limb limb, CardTimes times) =>
        Plain.Line(
            $"{Say.Word(stated.As<Payload.SignsTaken>().DistalPulse![limb])}, {times.Of(stated.When)}, {stated.By}{CardCare.Mark(stated)}"
        );

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
