using System.Collections.Immutable;

namespace Farhold.Protocols;

/// <summary>What the holder of an office may allow, in a service that says so.</summary>
/// <param name="Role">The office, as advice names it: <c>duty physician</c>.</param>
/// <param name="Acts">Words of <see cref="AllowedActs"/>, or ids of criteria that advice lifts.</param>
/// <param name="Drugs">Ids of drugs to ask this office about. A yes to a drug lifts nothing: doses rest on orders.</param>
public sealed record Allowance(string Role, ImmutableArray<string> Acts, ImmutableArray<string> Drugs);

/// <summary>Who may allow what. An empty list: whoever gives advice, as the shipped rules have it.</summary>
public static class AllowedActs
{
    /// <summary>All that the rules underneath let advice lift.</summary>
    public const string Attempt = "attempt";

    /// <summary>An attempt after the first window.</summary>
    public const string Late = "late";

    /// <summary>An attempt after one that bled.</summary>
    public const string Further = "further";

    /// <summary>To count the time without flow where the limb was loose for hours.</summary>
    public const string TimeWithoutFlow = "time-without-flow";

    /// <summary>Those of the acts that are no criterion.</summary>
    public static readonly ImmutableArray<string> Parts = [Late, Further, TimeWithoutFlow];

    /// <summary>Whether advice lifts a criterion at all, so that a service may say whose advice.</summary>
    public static bool Lifts(Criterion criterion) => criterion.AdviceLifts || criterion.Role == Role.Soft;

    /// <summary>Whether a yes from an office counts for an act.</summary>
    /// <param name="office">Null where it was not said: once there is a list, that yes does not count.</param>
    public static bool Permit(this ImmutableArray<Allowance> allowances, string? office, string act) =>
        allowances.IsEmpty || allowances.Any(a => Same(a.Role, office) && (a.Acts.Contains(Attempt) || a.Acts.Contains(act)));

    /// <summary>The offices whose yes counts for an act, in the order of the list.</summary>
    public static ImmutableArray<string> Offices(this ImmutableArray<Allowance> allowances, string act) =>
        [.. allowances.Where(a => allowances.Permit(a.Role, act)).Select(a => a.Role).Distinct()];

    /// <summary>One office, whatever the case of letters and the spaces between words.</summary>
    public static bool Same(string role, string? office) =>
        office is not null && string.Equals(Spaced(role), Spaced(office), StringComparison.OrdinalIgnoreCase);

    private static string Spaced(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
