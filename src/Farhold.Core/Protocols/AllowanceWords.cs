using System.Collections.Immutable;

namespace Farhold.Protocols;

/// <summary>Whose yes counts for what, in words.</summary>
public static class AllowanceWords
{
    /// <summary>All that advice lifts by a protocol, in the order of what is asked most.</summary>
    public static IEnumerable<string> Acts(Protocol protocol) =>
        AllowedActs.Parts.Concat(protocol.Criteria.Where(AllowedActs.Lifts).Select(c => c.Id));

    /// <summary>A yes that does not count for everything: for what it does.</summary>
    public static string InPart(string from, string? office, Protocol protocol)
    {
        var list = protocol.Advice.Allowances;
        string[] counts = [.. Acts(protocol).Where(act => list.Permit(office, act)).Select(act => Act(act, protocol))];
        var said = office is null ? ProtocolTexts.OfficeNotSaid : office;
        var who = Plain.Line(ProtocolTexts.SaidBy(from, said));
        return counts.Length == 0
            ? ProtocolTexts.YesDoesNotCount(who, Either(list.Offices(AllowedActs.Attempt)))
            : ProtocolTexts.YesCountsAlone(who, string.Join("; ", counts), Either(list.Offices(AllowedActs.Attempt)));
    }

    /// <summary>An act in words; a criterion by its sentence.</summary>
    public static string Act(string act, Protocol protocol) =>
        act switch
        {
            AllowedActs.Attempt => ProtocolTexts.AllowsAll,
            AllowedActs.Late => ProtocolTexts.AllowsAttemptAfter(Say.Duration(protocol.Clock.Window)),
            AllowedActs.Further => ProtocolTexts.AllowsFurther,
            AllowedActs.TimeWithoutFlow => ProtocolTexts.AllowsWithoutFlow,
            _ => protocol.Criteria.FirstOrDefault(c => c.Id == act) is { } criterion ? ProtocolTexts.AllowsAlthough(criterion.Text) : act,
        };

    /// <summary><c>the duty physician or the medical lead</c>.</summary>
    public static string Either(ImmutableArray<string> offices) =>
        offices.IsEmpty ? ProtocolTexts.Nobody : string.Join(ProtocolTexts.Or, offices.Select(o => ProtocolTexts.TheRole(o)));
}
