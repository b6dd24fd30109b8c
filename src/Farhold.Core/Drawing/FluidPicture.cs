using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Drawing;

/// <summary>How a fluid goes in.</summary>
public enum FluidWay
{
    Drink,
    Drip,
    Blood,
    Other,
}

/// <summary>What went in and came out of a casualty, mL, as bars.</summary>
/// <param name="Since">The first entry of either.</param>
/// <param name="Parts">Of what went in; only ways that were used.</param>
/// <param name="Out">Null where urine was never measured.</param>
public sealed record FluidPicture(Instant Since, ImmutableArray<(FluidWay Way, Between Millilitres)> Parts, Between In, Between? Out)
{
    /// <summary>Null where nothing is on record.</summary>
    public static FluidPicture? At(CareRecord record, Instant now)
    {
        IEnumerable<Dated> Entries(Kind kind) => record.Readings.SelectMany(r => r.Of(kind)).Where(d => d.When.Earliest <= now);
        var all = Entries(Kind.FluidGiven).Concat(Entries(Kind.UrineMeasured)).ToArray();
        if (all.Length == 0)
            return null;
        var sum = FluidBalance.Of(record, now)[^1];
        return new(
            all.Min(d => d.When.Earliest),
            [
                .. Enum.GetValues<FluidWay>()
                    .Select(w => (w, FluidBalance.Given(record, now, f => WayOf(f) == w)))
                    .Where(p => p.Item2.High > 0),
            ],
            sum.InMl,
            Entries(Kind.UrineMeasured).Any() ? sum.OutMl : null
        );
    }

    private static FluidWay WayOf(Fluid fluid) =>
        fluid switch
        {
            Fluid.OralWater or Fluid.OralRehydration => FluidWay.Drink,
            Fluid.Crystalloid => FluidWay.Drip,
            Fluid.WholeBlood or Fluid.Plasma or Fluid.RedCells => FluidWay.Blood,
            _ => FluidWay.Other,
        };
}
