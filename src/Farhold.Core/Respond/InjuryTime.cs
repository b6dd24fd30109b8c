using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Respond;

/// <summary>How long ago the casualty came to harm, as a carer can say it with one tap.</summary>
/// <param name="Text">From fewest to most.</param>
public sealed record InjuryTime(string Text, Duration Least, Duration Most)
{
    /// <summary>Design. Nobody knows: anywhere within a day, so that whatever has a limit counts as possibly past it.</summary>
    public static ImmutableArray<InjuryTime> Choices =>
        [
            new(RespondTexts.Within10Minutes, Duration.Zero, Duration.FromMinutes(10)),
            new(RespondTexts.MinutesAgo10To30, Duration.FromMinutes(10), Duration.FromMinutes(30)),
            new(RespondTexts.MinutesAgo30To60, Duration.FromMinutes(30), Duration.FromHours(1)),
            new(RespondTexts.HoursAgo1To2, Duration.FromHours(1), Duration.FromHours(2)),
            new(RespondTexts.HoursAgo2To4, Duration.FromHours(2), Duration.FromHours(4)),
            new(RespondTexts.HoursAgo4To12, Duration.FromHours(4), Duration.FromHours(12)),
            new(RespondTexts.NobodyKnows, Duration.Zero, Duration.FromHours(24)),
        ];

    public Happened Before(Instant now) => new(now - Most, now - Least);
}
