using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Exchange.Calendar;

/// <summary>Something to be done at a time, for another app's calendar.</summary>
/// <param name="Uid">The same for every later version of it, and for nothing else.</param>
/// <param name="Sequence">Not less than that of any earlier version; 0 or more.</param>
/// <param name="Alarms">How long before; each at least zero.</param>
public sealed record CalendarItem(
    string Uid,
    int Sequence,
    Instant At,
    string Summary,
    string Description,
    ImmutableArray<Duration> Alarms
);
