using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>Fluid that went in and urine that came out over some time up to now.</summary>
/// <param name="Over">How far back; null for everything on record.</param>
/// <param name="InMl">Millilitres; a range where it is not sure whether something fell into this time.</param>
/// <param name="OutMl">Measured urine only: sweat, breath, stool and blood are not in it.</param>
public sealed record FluidSpan(Duration? Over, Between InMl, Between OutMl);

/// <summary>What went in and out, from the record.</summary>
public static class FluidBalance
{
    /// <summary>The last hour, six hours, a day, and everything.</summary>
    public static ImmutableArray<FluidSpan> Of(State state, Instant now) => Of([state], now);

    /// <summary>The same from the least to the most of all ways to read the record.</summary>
    public static ImmutableArray<FluidSpan> Of(CareRecord record, Instant now) => Of(record.Readings, now);

    /// <summary>All that was given of some fluids, mL, in all ways to read the record.</summary>
    public static Between Given(CareRecord record, Instant now, Predicate<Fluid> which) =>
        record
            .Readings.Select(s =>
                Sum(
                    s.Of(Kind.FluidGiven).Where(d => which(d.As<Payload.FluidGiven>().Fluid)),
                    Instant.MinValue,
                    now,
                    d => d.As<Payload.FluidGiven>().Millilitres
                )
            )
            .Aggregate(Between.Hull);

    private static ImmutableArray<FluidSpan> Of(ImmutableArray<State> readings, Instant now) =>
        [
            Over(Duration.FromHours(1), readings, now),
            Over(Duration.FromHours(6), readings, now),
            Over(Duration.FromHours(24), readings, now),
            Over(null, readings, now),
        ];

    private static FluidSpan Over(Duration? over, ImmutableArray<State> readings, Instant now)
    {
        var from = over is { } span ? now - span : Instant.MinValue;
        return new(
            over,
            readings
                .Select(s => Sum(s.Of(Kind.FluidGiven), from, now, d => d.As<Payload.FluidGiven>().Millilitres))
                .Aggregate(Between.Hull),
            readings
                .Select(s => Sum(s.Of(Kind.UrineMeasured), from, now, d => d.As<Payload.UrineMeasured>().Millilitres))
                .Aggregate(Between.Hull)
        );
    }

    /// <summary>Surely within the time counts in both ends, possibly within it in the upper one.</summary>
    private static Between Sum(IEnumerable<Dated> entries, Instant from, Instant now, Func<Dated, double> millilitres)
    {
        var (low, high) = (0.0, 0.0);
        foreach (var entry in entries)
        {
            if (entry.When.Latest < from || entry.When.Earliest > now)
                continue;
            high += millilitres(entry);
            if (entry.When.Earliest >= from && entry.When.Latest <= now)
                low += millilitres(entry);
        }

        return new(low, high);
    }
}
