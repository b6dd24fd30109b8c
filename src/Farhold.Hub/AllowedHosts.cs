using System.Collections.Frozen;

namespace Farhold.Hub;

/// <summary>The names under which the hub was started.</summary>
/// <remarks>
/// A page elsewhere can point a name of its own at this machine (DNS rebinding) and would then be of one origin with whatever
/// answers here; so a name nobody gave is refused.
/// </remarks>
internal sealed class AllowedHosts
{
    private static readonly string[] OfThisMachine = ["localhost", "127.0.0.1", "[::1]"];

    private readonly FrozenSet<string> names;

    public AllowedHosts(HubOptions options) =>
        names = OfThisMachine
            .Concat(options.Hosts.IsDefault ? [] : options.Hosts)
            .Concat(options.Listen.Split(';').Select(a => BindingAddress.Parse(a.Trim()).Host).Where(IsName))
            .ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    public bool Allow(HostString host) => host.HasValue && names.Contains(host.Host);

    /// <summary>The page that asks is one of this hub: its origin has the very host and port that were asked.</summary>
    /// <remarks>Behind a certificate the scheme differs from the one seen here, so either is taken; "null" and lists are not.</remarks>
    public static bool IsOwn(string origin, HostString host) =>
        host.HasValue && (Same(origin, "http://" + host.Value) || Same(origin, "https://" + host.Value));

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    private static bool IsName(string host) => host is not ("" or "*" or "+" or "0.0.0.0" or "[::]");
}
