using System.Collections.Immutable;
using Farhold.Exchange.HandOver;

namespace Farhold.Exchange.Card;

/// <summary>The card's sections beside limbs, signs and log.</summary>
internal static class CardCare
{
    /// <summary>The last of a kind that are told one by one; the log has all (design).</summary>
    private const int Shown = 8;

    public static IEnumerable<CardPart> Cautions(CareFacts facts)
    {
        if (facts.Cautions.IsEmpty)
            yield break;
        yield return new CardPart.Heading(CardTexts.ReadWithCare);
        foreach (var caution in facts.Cautions)
            yield return new CardPart.Said("", caution, Strong: true);
    }

    public static IEnumerable<CardPart> Person(Person person)
    {
        yield return new CardPart.Heading(CardTexts.KnownBefore);
        yield return new CardPart.Said(CardTexts.Allergies, Listed(person.Allergies));
        yield return new CardPart.Said(CardTexts.Medicines, Listed(person.Medicines));
        yield return new CardPart.Said(
            CardTexts.History,
            person.Histories.IsEmpty ? CardTexts.NotRecorded : CardSheet.Either(person.Histories)
        );
    }

    public static IEnumerable<CardPart> Wounds(CareFacts facts, CardTimes times)
    {
        yield return new CardPart.Heading(CardTexts.Wounds);
        if (facts.Wounds.IsEmpty)
            yield return new CardPart.Said("", CardTexts.NoneRecorded);
        foreach (var wound in facts.Wounds)
        {
            if (wound.Found.IsEmpty)
                yield return new CardPart.Said(Plain.Line(CardTexts.Wound(wound.Name)), CardTexts.WoundNamedOnly);
            foreach (var part in wound.Found.Select(f => One(f, times)).Concat(Newest(wound.Care, CardTexts.Treatments, times)))
                yield return part;
            yield return wound.LastLook.IsEmpty
                ? new CardPart.Said(CardTexts.LastLook, Plain.Line(CardTexts.NobodyLooked(wound.Name)), Strong: true)
                : new CardPart.Said(
                    CardTexts.LastLook,
                    string.Join(CardTexts.OrElse, wound.LastLook.Select(l => Told(l, times))),
                    Strong: true
                );
        }
    }

    /// <summary>What was seen of the rest of the casualty, and what nobody looked at.</summary>
    public static IEnumerable<CardPart> Rest(CareFacts facts, CardTimes times)
    {
        yield return new CardPart.Heading(CardTexts.RestHead);
        foreach (var rest in facts.Rest.Where(r => !r.Latest.IsEmpty))
        {
            var seen = string.Join(CardTexts.OrElse, rest.Latest.Select(l => $"{rest.Said(l)}, {times.Of(l.When)}, {l.By}{Mark(l)}"));
            yield return new CardPart.Said(Labelled(rest.Kind.Name), Plain.Line(seen), Strong: rest.Latest.Any(l => rest.Said(l) == "yes"));
        }

        var missing = facts.Rest.Where(r => r.Latest.IsEmpty).Select(r => r.Kind.Name).ToArray();
        if (missing.Length > 0)
            yield return new CardPart.Said(CardTexts.NotLookedAt, string.Join(", ", missing), Strong: true);
        foreach (var look in CardNeeds.Looks(facts, times))
            yield return look;
    }

    /// <summary>Where the casualty was, and how it was moved.</summary>
    public static IEnumerable<CardPart> Places(CareFacts facts, CardTimes times)
    {
        if (facts.Moves.IsEmpty && facts.Positions.IsEmpty)
            yield break;
        yield return new CardPart.Heading(CardTexts.MovesHead);
        if (!facts.Positions.IsEmpty)
            yield return new CardPart.Said(
                CardTexts.LastPlace,
                string.Join(CardTexts.OrElse, facts.Positions.Select(p => Told(p, times))),
                Strong: true
            );
        foreach (var move in Newest(facts.Moves, CardTexts.Moves, times))
            yield return move;
    }

    public static IEnumerable<CardPart> Given(CareFacts facts, CardTimes times)
    {
        yield return new CardPart.Heading(CardTexts.GivenHead);
        if (facts.Drugs.IsEmpty && facts.Fluids.IsEmpty)
            yield return new CardPart.Said("", CardTexts.NoneGiven);
        foreach (var sum in facts.DrugSums)
            yield return new CardPart.Said(
                CardTexts.InAll,
                Plain.Line($"{sum.Drug} {Amount(sum.Amount)} {sum.Unit}{Often(sum.Amount)}"),
                Strong: true
            );
        foreach (var sum in facts.FluidSums)
            yield return new CardPart.Said(
                CardTexts.InAll,
                CardTexts.FluidInAll(Say.Word(sum.Fluid), Amount(sum.Millilitres), Often(sum.Millilitres)),
                Strong: true
            );
        foreach (var part in Newest(facts.Drugs, CardTexts.Drugs, times).Concat(Newest(facts.Fluids, CardTexts.Fluids, times)))
            yield return part;
        yield return new CardPart.Said(
            CardTexts.Urine,
            facts.Urine.IsEmpty
                ? CardTexts.NotMeasured
                : CardTexts.UrineInAll(Amount(facts.UrineSum), Often(facts.UrineSum), times.Of(facts.Urine[^1].When))
        );
    }

    /// <summary>What comes: help, advice, what is due, and how care ended.</summary>
    public static IEnumerable<CardPart> Ahead(CareFacts facts, CardTimes times)
    {
        foreach (var end in facts.Ended)
            yield return new CardPart.Said(CardTexts.Ended, Told(end, times), Strong: true);
        foreach (var outcome in facts.Outcomes)
            yield return new CardPart.Said(CardTexts.Outcome, Told(outcome, times), Strong: true);
        yield return new CardPart.Heading(CardTexts.DueHead);
        foreach (var withheld in facts.Judgement.Withheld)
            yield return new CardPart.Said(
                CardTexts.NotNow,
                Plain.Line($"{OnLimb(withheld.Limb)}{withheld.Text}{Seen(withheld)}"),
                Strong: true
            );
        if (facts.Judgement.Due.IsEmpty)
            yield return new CardPart.Said("", CardTexts.Nothing);
        foreach (var due in facts.Judgement.Due)
        {
            var when = due switch
            {
                { AtOnce: true } => CardTexts.AtOnce,
                _ when VerdictWords.IsLate(due, facts.At) => CardTexts.OverdueSince(times.Of(due.At)),
                _ when VerdictWords.IsFirst(due, facts.At) => CardTexts.FirstCheckDue(times.Of(due.At)),
                _ => times.Of(due.At),
            };
            yield return new CardPart.Said(
                when,
                Plain.Line($"{OnLimb(due.Limb)}{due.Text}{(due.Waits ? CardTexts.WithChangeOfWatch : "")}"),
                due.AtOnce || due.Overdue
            );
        }

        yield return new CardPart.Heading(CardTexts.HelpHead);
        if (facts.Help.IsEmpty)
            yield return new CardPart.Said(CardTexts.Help, CardTexts.NothingRecorded);
        foreach (var help in facts.Help.GroupBy(h => h.As<Payload.HelpExpected>().Care))
            yield return new CardPart.Said(HelpName(help.Key), string.Join(CardTexts.OrElse, help.Select(h => Help(h, times))));
        var asked = facts
            .Contacts.Concat(facts.Questions)
            .Concat(facts.Advice)
            .OrderBy(s => s.When.Latest)
            .ThenBy(s => s.When.Earliest)
            .ThenBy(s => s.Id)
            .ToImmutableArray();
        foreach (var advice in Newest(asked, CardTexts.TriesAndAdvice, times))
            yield return advice;
        yield return new CardPart.Said(
            CardTexts.Watch,
            facts.Watch.IsEmpty ? CardTexts.NobodySaidWatch : string.Join(CardTexts.OrElse, facts.Watch.Select(w => Told(w, times)))
        );
        if (!facts.Supplies.IsEmpty)
            yield return new CardPart.Said(CardTexts.Supplies, string.Join("; ", facts.Supplies.Select(s => $"{Told(s, times)}")));
    }

    public static IEnumerable<CardPart> People(CareFacts facts, CardTimes times)
    {
        yield return new CardPart.Heading(CardTexts.WhoHead);
        foreach (var helper in facts.Helpers)
            yield return new CardPart.Said(
                Plain.Line(helper.Name),
                Plain.Line(
                    CardTexts.EntriesFromTo(
                        Say.Number(helper.Entries),
                        times.Of(helper.First),
                        times.Of(helper.Last),
                        string.Join(", ", helper.Devices)
                    )
                )
            );
        var warnings = RulesWords.Warnings(facts.Judgement.Rules).ToArray();
        foreach (var line in RulesWords.Of(facts.Judgement.Rules))
            yield return new CardPart.Said("", line, Strong: warnings.Contains(line));
    }

    private static IEnumerable<CardPart> Newest(ImmutableArray<Stated> all, string what, CardTimes times)
    {
        if (all.Length > Shown)
            yield return new CardPart.Said(CardTexts.Earlier, CardTexts.MoreInLog(Say.Number(all.Length - Shown), what));
        foreach (var stated in all.TakeLast(Shown))
            yield return One(stated, times);
    }

    private static CardPart.Said One(Stated stated, CardTimes times) =>
        new(times.Of(stated.When), Plain.Line($"{stated.Text}, {stated.By}{Mark(stated)}"));

    /// <summary>What it says, when, and who did or saw it.</summary>
    public static string Told(Stated stated, CardTimes times) =>
        Plain.Line($"{stated.Text}, {times.Of(stated.When)}, {stated.By}{Mark(stated)}");

    public static string Mark(Stated stated) =>
        $"{(stated.Corrected ? CardTexts.MarkCorrected : "")}{(stated.Disputed ? CardTexts.MarkDisagree : "")}";

    private static string HelpName(HelpCare? care) =>
        care switch
        {
            HelpCare.Hands => CardTexts.MoreHelpers,
            HelpCare.Clinic => CardTexts.Clinic,
            HelpCare.Surgery => CardTexts.Surgery,
            _ => CardTexts.Help,
        };

    private static string Labelled(string name) => char.ToUpperInvariant(name[0]) + name[1..];

    private static string Help(Stated stated, CardTimes times)
    {
        var help = stated.As<Payload.HelpExpected>();
        var early = help.Earliest is { } e ? CardTexts.Earliest(times.Of(e)) : "";
        var late = help.Latest is { } l ? CardTexts.Latest(times.Of(l)) : CardTexts.LatestNotKnown;
        var basis = help.Basis is { } b ? $" ({b})" : "";
        return Plain.Line(CardTexts.HelpLikely(times.Of(help.Likely), early, late, basis, times.Of(stated.When), stated.By, Mark(stated)));
    }

    private static string OnLimb(Limb? limb) => limb is { } on ? $"{Say.Limb(on)}: " : "";

    /// <summary>What of the record withholds it.</summary>
    private static string Seen(WithheldTask withheld) =>
        withheld.Used.IsEmpty ? "" : CardTexts.ByTheRecord(string.Join("; ", withheld.Used.Select(u => u.Said)));

    private static string Amount(GivenSum sum) =>
        sum.Amount.IsExact ? Say.Number(sum.Amount.High) : CardTexts.Range(Say.Number(sum.Amount.Low), Say.Number(sum.Amount.High));

    private static string Often(GivenSum sum) => sum.Times == 1 ? CardTexts.Once : CardTexts.Times(Say.Number(sum.Times));

    private static string Listed(ImmutableArray<string>? items) =>
        items switch
        {
            null => CardTexts.NotRecorded,
            { IsEmpty: true } => CardTexts.NoneKnown,
            { } some => Plain.Line(string.Join(", ", some)),
        };
}
