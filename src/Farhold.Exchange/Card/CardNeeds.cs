using Farhold.Exchange.HandOver;

namespace Farhold.Exchange.Card;

/// <summary>What the casualty needs and what is recommended, before all that it rests on.</summary>
internal static class CardNeeds
{
    public static IEnumerable<CardPart> Of(CareFacts facts, CardTimes times)
    {
        yield return new CardPart.Heading(CardTexts.NeedsHead);
        foreach (var need in Needs.Of(facts).OrderByDescending(n => n.State))
            yield return new CardPart.Said(
                need.State switch
                {
                    Truth.Met => CardTexts.Needed,
                    Truth.Unknown => CardTexts.NeedNotKnown,
                    _ => CardTexts.NoNeedSeen,
                },
                Plain.Line($"{need.What}: {need.Because}{Until(need, times)}"),
                Strong: need.State == Truth.Met
            );
        yield return new CardPart.Heading(CardTexts.RecommendationHead);
        if (facts.Limbs.IsEmpty)
            yield return new CardPart.Said("", CardTexts.NothingToRecommend);
        foreach (var said in Recommendation.All(facts))
            yield return new CardPart.Said("", said.Text, Strong: said.Act != Advised.Watch);
        if (Recommendation.Open(facts) is { IsEmpty: false } open)
            yield return new CardPart.Said(CardTexts.NeedNotKnown, Plain.Line(CardTexts.WarningSigns(string.Join(", ", open))));
    }

    /// <summary>How the casualty came to harm and when.</summary>
    public static IEnumerable<CardPart> Injury(CareFacts facts, CardTimes times)
    {
        yield return new CardPart.Heading(CardTexts.InjuryHead);
        if (facts.Injuries.IsEmpty)
            yield return new CardPart.Said("", CardTexts.InjuryNotRecorded);
        foreach (var injury in facts.Injuries)
            yield return new CardPart.Said(CardTexts.Mechanism, CardCare.Told(injury, times));
    }

    /// <summary>What the first look and looks at single parts came to.</summary>
    public static IEnumerable<CardPart> Looks(CareFacts facts, CardTimes times)
    {
        var looks = LookFact.All(facts).ToLookup(l => l.Came);
        var clear = looks[LookCame.Clear].ToLookup(l => l.Against is null);
        if (clear[true].Any())
            yield return new CardPart.Said(CardTexts.FoundClear, Joined(clear[true].Select(l => $"{l.Where} ({When(l)})")));
        foreach (var doubted in clear[false])
            yield return new CardPart.Said(
                CardTexts.CalledClear,
                Plain.Line(CardTexts.ButOtherwise(doubted.Where, When(doubted), doubted.Against ?? "")),
                Strong: true
            );
        foreach (var found in looks[LookCame.Found].SelectMany(l => l.Last))
            yield return new CardPart.Said(CardTexts.Found, CardCare.Told(found, times), Strong: true);
        if (looks[LookCame.CouldNot].Any())
            yield return new CardPart.Said(CardTexts.CouldNotLook, Joined(looks[LookCame.CouldNot].Select(l => l.Where)), Strong: true);
        if (looks[LookCame.NotLooked].Where(l => l.Against is null).ToArray() is { Length: > 0 } never)
            yield return new CardPart.Said(CardTexts.NoLook, Joined(never.Select(l => l.Where)));

        string When(LookFact look) => string.Join(CardTexts.Or, look.Last.Select(s => times.Of(s.When)).Distinct());

        static string Joined(IEnumerable<string> parts) => Plain.Line(string.Join(", ", parts));
    }

    private static string Until(Need need, CardTimes times) =>
        need.Until is { } until ? CardTexts.WindowAndLimit(times.Of(until.Window), times.Of(until.Limit)) : "";
}
