using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Care;

/// <summary>What kind of help comes, and when at the earliest and at the latest, in whole hours from the tap; null: not said.</summary>
public sealed record HelpRange(int? Earliest, int? Latest, HelpCare? Care = null)
{
    public static ImmutableArray<int> Hours { get; } = [1, 2, 4, 6, 8, 12, 24, 48];

    /// <summary>Whether help can most likely come in so many hours.</summary>
    public bool Holds(int likely) => !(likely < Earliest) && !(likely > Latest);

    public Payload.HelpExpected Of(int likely, Instant now)
    {
        Instant? In(int? hours) => hours is { } h ? now + Duration.FromHours(h) : null;
        return new(now + Duration.FromHours(likely), In(Earliest), In(Latest), Care: Care);
    }
}
