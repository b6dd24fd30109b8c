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
        yield return new CardPart.Heading("Read with care");
        foreach (var caution in facts.Cautions)
            yield return new CardPart.Said("", caution, Strong: true);
    }

    public static IEnumerable<CardPart> Person(Person person)
    {
        yield return new CardPart.Heading("Known before");
        yield return new CardPart.Said("Allergies", Listed(person.Allergies));
        yield return new CardPart.Said("Medicines", Listed(person.Medicines));
        yield return new CardPart.Said("History", person.Histories.IsEmpty ? "not recorded" : CardSheet.Either(person.Histories));
    }

    public static IEnumerable<CardPart> Wounds(CareFacts facts, CardTimes times)
    {
        yield return new CardPart.Heading("Wounds");
        if (facts.Wounds.IsEmpty)
            yield return new CardPart.Said("", "none recorded");
        foreach (var wound in facts.Wounds)
        {
            if (wound.Found.IsEmpty)
                yield return new CardPart.Said(Plain.Line($"Wound {wound.Name}"), "named in the record, described by nobody");
            foreach (var part in wound.Found.Select(f => One(f, times)).Concat(Newest(wound.Care, "treatments", times)))
                yield return part;
            yield return wound.LastLook.IsEmpty
                ? new CardPart.Said("Last look", Plain.Line($"nobody has looked whether wound {wound.Name} bleeds"), Strong: true)
                : new CardPart.Said("Last look", string.Join("; or ", wound.LastLook.Select(l => Told(l, times))), Strong: true);
        }
    }

    /// <summary>What was seen of the rest of the casualty, and what nobody looked at.</summary>
    public static IEnumerable<CardPart> Rest(CareFacts facts, CardTimes times)
    {
        yield return new CardPart.Heading("Rest of the casualty");
        foreach (var rest in facts.Rest.Where(r => !r.Latest.IsEmpty))
        {
            var seen = string.Join("; or ", rest.Latest.Select(l => $"{rest.Said(l)}, {times.Of(l.When)}, {l.By}{Mark(l)}"));
            yield return new CardPart.Said(Labelled(rest.Kind.Name), Plain.Line(seen), Strong: rest.Latest.Any(l => rest.Said(l) == "yes"));
        }

        var missing = facts.Rest.Where(r => r.Latest.IsEmpty).Select(r => r.Kind.Name).ToArray();
        if (missing.Length > 0)
            yield return new CardPart.Said("Not looked at", string.Join(", ", missing), Strong: true);
        foreach (var look in facts.Regions)
            yield return One(look, times);
    }

    /// <summary>Where the casualty was, and how it was moved.</summary>
    public static IEnumerable<CardPart> Places(CareFacts facts, CardTimes times)
    {
        if (facts.Moves.IsEmpty && facts.Positions.IsEmpty)
            yield break;
        yield return new CardPart.Heading("Moves and place");
        if (!facts.Positions.IsEmpty)
            yield return new CardPart.Said("Last place", string.Join("; or ", facts.Positions.Select(p => Told(p, times))), Strong: true);
        foreach (var move in Newest(facts.Moves, "moves", times))
            yield return move;
    }

    public static IEnumerable<CardPart> Given(CareFacts facts, CardTimes times)
    {
        yield return new CardPart.Heading("Drugs and fluids");
        if (facts.Drugs.IsEmpty && facts.Fluids.IsEmpty)
            yield return new CardPart.Said("", "none recorded as given");
        foreach (var sum in facts.DrugSums)
            yield return new CardPart.Said("In all", Plain.Line($"{sum.Drug} {Amount(sum.Amount)} {sum.Unit}{Often(sum.Amount)}"), Strong: true);
        foreach (var sum in facts.FluidSums)
            yield return new CardPart.Said(
                "In all", $"{Wire.Word(sum.Fluid).Replace('-', ' ')} {Amount(sum.Millilitres)} mL{Often(sum.Millilitres)}", Strong: true);
        foreach (var part in Newest(facts.Drugs, "drugs", times).Concat(Newest(facts.Fluids, "fluids", times)))
            yield return part;
        yield return new CardPart.Said("Urine", facts.Urine.IsEmpty ? "not measured"
            : $"{Amount(facts.UrineSum)} mL in all{Often(facts.UrineSum)}, last {times.Of(facts.Urine[^1].When)}");
    }

    /// <summary>What comes: help, advice, what is due, and how care ended.</summary>
    public static IEnumerable<CardPart> Ahead(CareFacts facts, CardTimes times)
    {
        foreach (var end in facts.Ended)
            yield return new CardPart.Said("Ended", Told(end, times), Strong: true);
        foreach (var outcome in facts.Outcomes)
            yield return new CardPart.Said("Outcome", Told(outcome, times), Strong: true);
        yield return new CardPart.Heading("Due");
        foreach (var withheld in facts.Judgement.Withheld)
            yield return new CardPart.Said("NOT NOW", Plain.Line($"{OnLimb(withheld.Limb)}{withheld.Text}{Seen(withheld)}"), Strong: true);
        if (facts.Judgement.Due.IsEmpty)
            yield return new CardPart.Said("", "nothing");
        foreach (var due in facts.Judgement.Due)
        {
            var when = due switch
            {
                { AtOnce: true } => "AT ONCE",
                _ when VerdictWords.IsLate(due, facts.At) => $"OVERDUE since {times.Of(due.At)}",
                _ => times.Of(due.At),
            };
            yield return new CardPart.Said(when, Plain.Line($"{OnLimb(due.Limb)}{due.Text}{(due.Waits ? " (with the change of watch)" : "")}"), due.AtOnce || due.Overdue);
        }

        yield return new CardPart.Heading("Help and advice");
        if (facts.Help.IsEmpty)
            yield return new CardPart.Said("Help", "nothing recorded");
        foreach (var help in facts.Help.GroupBy(h => h.As<Payload.HelpExpected>().Care))
            yield return new CardPart.Said(HelpName(help.Key), string.Join("; or ", help.Select(h => Help(h, times))));
        var asked = facts.Contacts.Concat(facts.Questions).Concat(facts.Advice)
            .OrderBy(s => s.When.Latest).ThenBy(s => s.When.Earliest).ThenBy(s => s.Id).ToImmutableArray();
        foreach (var advice in Newest(asked, "tries, questions and advice", times))
            yield return advice;
        yield return new CardPart.Said("Watch", facts.Watch.IsEmpty ? "nobody has said whether someone can watch the wound"
            : string.Join("; or ", facts.Watch.Select(w => Told(w, times))));
        if (!facts.Supplies.IsEmpty)
            yield return new CardPart.Said("Supplies", string.Join("; ", facts.Supplies.Select(s => $"{Told(s, times)}")));
    }

    public static IEnumerable<CardPart> People(CareFacts facts, CardTimes times)
    {
        yield return new CardPart.Heading("Who, and by what rules");
        foreach (var helper in facts.Helpers)
            yield return new CardPart.Said(Plain.Line(helper.Name), Plain.Line(
                $"{Say.Number(helper.Entries)} entries, {times.Of(helper.First)} to {times.Of(helper.Last)}, on {string.Join(", ", helper.Devices)}"));
        var warnings = RulesWords.Warnings(facts.Judgement.Protocol).ToArray();
        foreach (var line in RulesWords.Of(facts.Judgement.Protocol))
            yield return new CardPart.Said("", line, Strong: warnings.Contains(line));
    }

    private static IEnumerable<CardPart> Newest(ImmutableArray<Stated> all, string what, CardTimes times)
    {
        if (all.Length > Shown)
            yield return new CardPart.Said("Earlier", $"{Say.Number(all.Length - Shown)} more ({what}): see the log");
        foreach (var stated in all.TakeLast(Shown))
            yield return One(stated, times);
    }

    private static CardPart.Said One(Stated stated, CardTimes times) =>
        new(times.Of(stated.When), Plain.Line($"{stated.Text}, {stated.By}{Mark(stated)}"));

    /// <summary>What it says, when, and who did or saw it.</summary>
    public static string Told(Stated stated, CardTimes times) =>
        Plain.Line($"{stated.Text}, {times.Of(stated.When)}, {stated.By}{Mark(stated)}");

    public static string Mark(Stated stated) =>
        $"{(stated.Corrected ? " [CORRECTED]" : "")}{(stated.Disputed ? " [TWO ENTRIES DISAGREE]" : "")}";

    private static string HelpName(HelpCare? care) => care switch
    {
        HelpCare.Hands => "More helpers",
        HelpCare.Clinic => "Clinic",
        HelpCare.Surgery => "Surgery",
        _ => "Help",
    };

    private static string Labelled(string name) => char.ToUpperInvariant(name[0]) + name[1..];

    private static string Help(Stated stated, CardTimes times)
    {
        var help = stated.As<Payload.HelpExpected>();
        var early = help.Earliest is { } e ? $", earliest {times.Of(e)}" : "";
        var late = help.Latest is { } l ? $", latest {times.Of(l)}" : ", latest not known";
        var basis = help.Basis is { } b ? $" ({b})" : "";
        return Plain.Line($"likely {times.Of(help.Likely)}{early}{late}{basis}; said {times.Of(stated.When)}, {stated.By}{Mark(stated)}");
    }

    private static string OnLimb(Limb? limb) => limb is { } on ? $"{Say.Limb(on)}: " : "";

    /// <summary>What of the record withholds it.</summary>
    private static string Seen(WithheldTask withheld) =>
        withheld.Used.IsEmpty ? "" : $" By the record: {string.Join("; ", withheld.Used.Select(u => u.Said))}.";

    private static string Amount(GivenSum sum) => sum.Amount.IsExact ? Say.Number(sum.Amount.High) : $"{Say.Number(sum.Amount.Low)} to {Say.Number(sum.Amount.High)}";

    private static string Often(GivenSum sum) => sum.Times == 1 ? " (once)" : $" ({Say.Number(sum.Times)} times)";

    private static string Listed(ImmutableArray<string>? items) => items switch
    {
        null => "not recorded",
        { IsEmpty: true } => "none known",
        { } some => Plain.Line(string.Join(", ", some)),
    };
}
