using System.Collections.Immutable;
using Farhold.Exchange.HandOver;

namespace Farhold.Exchange.Advice;

/// <summary>A contact of the service, as it stands when advice is asked for.</summary>
/// <param name="Line">Name, office, ways, whether it can be reached now, and whether its yes counts for the question.</param>
public sealed record Callee(Contact Contact, ContactState State, string Line)
{
    /// <summary>Those that can be reached now first, and of those the ones whose yes counts.</summary>
    internal static ImmutableArray<Callee> For(AdviceCall call, TimeWords times)
    {
        var now = call.Facts.At;
        return
        [
            .. Service(call)
                .Contacts.Select(c => (Contact: c, State: c.Hours?.At(now) ?? new(true, null), Counts: Counts(c.Role, call)))
                .OrderByDescending(c => c.State.Open)
                .ThenByDescending(c => c.Counts)
                .Select(c => new Callee(
                    c.Contact,
                    c.State,
                    Plain.Line(
                        $"{ContactWords.Who(c.Contact)}: {string.Join("; ", c.Contact.Ways.Select(ContactWords.Way))}; "
                            + ContactWords.Now(c.Contact, now, times.At)
                            + Said(c.Counts)
                    )
                )),
        ];
    }

    /// <summary>What stands beside the contacts: emergency numbers, whose yes counts, the service's words, and what to doubt.</summary>
    internal static IEnumerable<string> Beside(AdviceCall call)
    {
        var (service, protocol) = (Service(call), call.Facts.Judgement.Protocol);
        foreach (var number in service.Emergency)
            yield return Plain.Line(AdviceTexts.Emergency(number.Name, number.Number));
        if (call.Asked is { IsEmpty: false } asked && !protocol.Advice.Allowances.IsEmpty)
            foreach (var act in asked)
                yield return Plain.Line(
                    AdviceTexts.OnlyYesFrom(AllowanceWords.Either(protocol.Advice.Allowances.Offices(act)))
                        + AllowanceWords.Act(act, protocol)
                );
        if (Drug(call) is { } drug && Asked(drug, call) is { IsEmpty: false } offices)
            yield return Plain.Line(AdviceTexts.WhomToAsk(drug, AllowanceWords.Either(offices)));
        if (!service.Words.IsEmpty)
            yield return Plain.Line(AdviceTexts.TheySay(string.Join("; ", service.Words.Select(w => TermWords.Beside(w.Key, w.Value)))));
        if (protocol.Local?.Standing == Standing.Expired && !service.Contacts.IsEmpty)
            yield return AdviceTexts.LocalExpired;
    }

    private static LocalService Service(AdviceCall call) => call.Facts.Judgement.Protocol.Local?.Service ?? LocalService.None;

    /// <summary>Null where no list says, or nothing is asked that a yes lifts.</summary>
    private static Truth? Counts(string role, AdviceCall call)
    {
        var list = call.Facts.Judgement.Protocol.Advice.Allowances;
        if (list.IsEmpty)
            return null;
        if (Drug(call) is { } drug)
            return Asked(drug, call) is { IsEmpty: false } offices ? Kleene.Of(offices.Any(o => AllowedActs.Same(o, role))) : null;
        var asked = call.Asked;
        return asked.IsEmpty ? null
            : asked.All(act => list.Permit(role, act)) ? Truth.Met
            : asked.Any(act => list.Permit(role, act)) ? Truth.Unknown
            : Truth.NotMet;
    }

    private static string Said(Truth? counts) =>
        counts switch
        {
            Truth.Met => AdviceTexts.YesCounts,
            Truth.Unknown => AdviceTexts.YesCountsInPart,
            Truth.NotMet => AdviceTexts.YesDoesNotCount,
            _ => "",
        };

    /// <summary>The drug asked about, by its id; null where it is another question, or a drug that nothing here knows.</summary>
    private static string? Drug(AdviceCall call) =>
        call.Question.For == AskFor.Drug
            ? call.Facts.Judgement.Rules.Formulary.Drugs.FirstOrDefault(d => Names(d).Any(n => Mentions(call.Question.Text, n)))?.Id
            : null;

    private static IEnumerable<string> Names(Drug drug) =>
        [drug.Id, drug.Id.Replace('-', ' '), .. drug.Names, .. drug.StockName is { } box ? [box] : (string[])[]];

    private static bool Mentions(string text, string name) => text.Contains(name, StringComparison.OrdinalIgnoreCase);

    private static ImmutableArray<string> Asked(string drug, AdviceCall call) =>
        [.. call.Facts.Judgement.Protocol.Advice.Allowances.Where(a => a.Drugs.Contains(drug)).Select(a => a.Role)];
}
