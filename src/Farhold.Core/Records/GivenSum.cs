using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Records;

/// <summary>
/// All that was given or measured of one thing up to now; a range where entries conflict, so that it is not known which count.
/// </summary>
/// <param name="Times">How often, at most.</param>
public readonly record struct GivenSum(Between Amount, int Times)
{
    /// <param name="amount">What an entry adds; null for one that is of something else.</param>
    public static GivenSum Of(Kind kind, CareRecord record, Instant now, Func<Payload, double?> amount)
    {
        var sums = record
            .Readings.Select(r => r.Of(kind).Where(d => d.When.Earliest <= now).Select(d => amount(d.What)).OfType<double>().ToArray())
            .ToArray();
        return new(new(sums.Min(s => s.Sum()), sums.Max(s => s.Sum())), sums.Max(s => s.Length));
    }
}

/// <summary>All of one fluid, mL.</summary>
public sealed record FluidSum(Fluid Fluid, GivenSum Millilitres)
{
    /// <summary>Every fluid that was given, in the order of their kinds.</summary>
    public static ImmutableArray<FluidSum> All(CareRecord record, Instant now) =>
        [
            .. record
                .Readings.SelectMany(r => r.Of(Kind.FluidGiven))
                .Where(d => d.When.Earliest <= now)
                .Select(d => d.As<Payload.FluidGiven>().Fluid)
                .Distinct()
                .Order()
                .Select(f => new FluidSum(
                    f,
                    GivenSum.Of(
                        Kind.FluidGiven,
                        record,
                        now,
                        p => p is Payload.FluidGiven given && given.Fluid == f ? given.Millilitres : null
                    )
                )),
        ];
}
