using NodaTime;

namespace Farhold.Rules;

/// <summary>Which rules are in force and who answers for them, in lines.</summary>
public static class RulesWords
{
    /// <summary>Protocol and version; then the local one, who signed it, and every warning.</summary>
    public static IEnumerable<string> Of(Rulebook rules)
    {
        var protocol = rules.Protocol;
        return [Plain.Line(RulesTexts.ProtocolLine(protocol.Id, protocol.Version, protocol.Title)), .. Local(protocol), .. Warnings(rules)];
    }

    /// <summary>
    /// What has to stand on every screen and print: rules that nobody has proven, or whose time is over, and every loosening.
    /// </summary>
    public static IEnumerable<string> Warnings(Rulebook rules)
    {
        var protocol = rules.Protocol;
        if (!rules.IsShipped)
            yield return Plain.Line(RulesTexts.NotShipped(EntryText.NobodyHasProven, protocol.Id, protocol.Version));
        if (protocol.Local is not { } local)
            yield break;
        if (local.Standing == Standing.Emergency)
            yield return Plain.Line(
                RulesTexts.LocalUnsigned(EntryText.NobodyHasProven, local.Id, local.Version, Say.Time(local.Until!.Value))
            );
        if (local.Standing == Standing.Expired)
            yield return Plain.Line(
                RulesTexts.LocalExpired(local.Id, local.Version, Say.Time(local.Until!.Value))
                    + (local.Lapsed.IsEmpty ? RulesTexts.AllowedNothing : RulesTexts.NoLongerInForce(string.Join("; ", local.Lapsed)))
            );
        foreach (var loosened in local.Loosened)
            yield return Plain.Line(RulesTexts.Loosened(loosened));
    }

    /// <summary>Which rules are in force, as an entry.</summary>
    public static Payload.RulesStated Stated(Protocol protocol, string? reason = null) =>
        new(protocol.Named, protocol.Hash)
        {
            Local = protocol.Local is { Standing: not Standing.Unsigned } local ? $"{local.Id} {local.Version}" : null,
            LocalHash = protocol.Local?.Hash,
            Standing = protocol.Local?.Standing,
            Issuer = protocol.Local?.Issuer is { } issuer ? $"{issuer.Name}, {issuer.Digits}" : null,
            Reason = reason,
            Until = reason is null ? null : protocol.Local?.Until,
            Loosened = protocol.Local is { Loosened.IsEmpty: false } loose ? loose.Loosened : default,
        };

    /// <summary>Devices that judged by other rules than these when they last said so.</summary>
    public static IEnumerable<Remark> Elsewhere(State state, Protocol protocol)
    {
        var stated = state.Of(Kind.RulesStated);
        if (stated.IsEmpty)
            yield break;
        var here = Stated(protocol);
        foreach (
            var last in stated.GroupBy(s => s.Id.Device).Select(g => g.Last()).Where(l => !l.As<Payload.RulesStated>().SameRules(here))
        )
            yield return new(last.Id, RulesTexts.OtherRules(EntryText.Of(last.What)));
    }

    /// <summary>The local protocol and what stands behind it; nothing for the shipped protocol alone.</summary>
    public static IEnumerable<string> Local(Protocol protocol)
    {
        if (protocol.Local is not { } local)
            yield break;
        if (local.Standing == Standing.Unsigned)
        {
            yield return RulesTexts.LocalTightens(FileHash.Short(local.Hash), string.Join("; ", local.Changes));
            yield break;
        }

        var signed = local is { Issuer: { } issuer, Signature: { } head }
            ? RulesTexts.SignedUntil(issuer.Name, issuer.Role, head.Serial, Say.Time(head.Expires))
            : RulesTexts.SignedByNobody;
        yield return Plain.Line(
            RulesTexts.LocalLine(local.Id, local.Version, local.Title, signed)
                + (local.Authority is { } by ? RulesTexts.AuthorisedBy(by.Name, by.Role, TimeText.Date(by.Date)) : "")
        );
    }
}
