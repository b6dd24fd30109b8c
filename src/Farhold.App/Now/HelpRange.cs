using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Now;

/// <summary>When help comes at the earliest and most likely, in whole hours from the tap; null: not said.</summary>
public sealed record HelpRange(int? Earliest, int? Likely)
{
    public static ImmutableArray<int> Hours { get; } = [1, 2, 4, 6, 8, 12, 24, 48];

    /// <summary>Whether help can be here in so many hours at the latest.</summary>
    public bool Holds(int latest) => !(latest < Earliest) && !(latest < Likely);

    /// <summary>Where nothing more was said, the latest is the likely time too.</summary>
    public Payload.HelpExpected Of(HelpCare care, int latest, Instant now)
    {
        Instant In(int hours) => now + Duration.FromHours(hours);
        return new(In(Likely ?? latest), Earliest is { } earliest ? In(earliest) : null, In(latest), Care: care);
    }
}
