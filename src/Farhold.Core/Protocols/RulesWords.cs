using NodaTime;

namespace Farhold.Protocols;

/// <summary>Which rules are in force and who answers for them, in lines.</summary>
public static class RulesWords
{
    /// <summary>Protocol and version; then the local one, who signed it, and every warning.</summary>
    public static IEnumerable<string> Of(Protocol protocol) =>
        [Plain.Line($"Protocol {protocol.Id} {protocol.Version}: {protocol.Title}"), .. Local(protocol), .. Warnings(protocol)];

    /// <summary>What has to stand on every screen and print: rules that nobody has proven, or whose time is over, and every loosening.</summary>
    public static IEnumerable<string> Warnings(Protocol protocol)
    {
        if (protocol.Hash != ShippedProtocol.Protocol.Hash)
            yield return Plain.Line($"{EntryText.NobodyHasProven}: protocol {protocol.Id} {protocol.Version} is not the one that ships with Farhold");
        if (protocol.Local is not { } local)
            yield break;
        if (local.Standing == Standing.Emergency)
            yield return Plain.Line($"{EntryText.NobodyHasProven}: local protocol {local.Id} {local.Version}, unsigned, for this casualty until {Say.Time(local.Until!.Value)}");
        if (local.Standing == Standing.Expired)
            yield return Plain.Line($"LOCAL PROTOCOL EXPIRED: {local.Id} {local.Version}, valid until {Say.Time(local.Until!.Value)}; "
                + (local.Lapsed.IsEmpty ? "it allowed nothing that is missing now" : $"no longer in force: {string.Join("; ", local.Lapsed)}"));
        foreach (var loosened in local.Loosened)
            yield return Plain.Line($"LOOSENED by the local protocol: {loosened}");
    }

    /// <summary>Which rules are in force, as an entry.</summary>
    public static Payload.RulesStated Stated(Protocol protocol, string? reason = null) => new(protocol.Named, protocol.Hash)
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
        foreach (var last in stated.GroupBy(s => s.Id.Device).Select(g => g.Last()).Where(l => !l.As<Payload.RulesStated>().SameRules(here)))
            yield return new(last.Id, $"care went by other rules than these. {EntryText.Of(last.What)}");
    }

    /// <summary>The local protocol and what stands behind it; nothing for the shipped protocol alone.</summary>
    public static IEnumerable<string> Local(Protocol protocol)
    {
        if (protocol.Local is not { } local)
            yield break;
        if (local.Standing == Standing.Unsigned)
        {
            yield return $"Local protocol, unsigned ({FileHash.Short(local.Hash)}): it only tightens numbers: {string.Join("; ", local.Changes)}";
            yield break;
        }

        var signed = local is { Issuer: { } issuer, Signature: { } head }
            ? $"signed by {issuer.Name}, {issuer.Role}, serial {head.Serial}, valid until {Say.Time(head.Expires)}" : "signed by nobody who is trusted here";
        yield return Plain.Line($"Local protocol {local.Id} {local.Version}: {local.Title}; {signed}"
            + (local.Authority is { } by ? $"; authorised by {by.Name}, {by.Role}, {TimeText.Date(by.Date)}" : ""));
    }
}
