using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>A sum over a record; a range where entries conflict, so that it is not known which of them count.</summary>
/// <param name="Times">How often, at most.</param>
public readonly record struct Sum(double Min, double Max, int Times)
{
    public bool IsExact => Min == Max;

    internal static Sum Of(Source source, Kind kind, Func<Payload, double?> amount)
    {
        var sums = source.Readings.Select(r => r.Of(kind).Where(d => d.When.Earliest <= source.Now)
            .Select(d => amount(d.What)).OfType<double>().ToArray()).ToArray();
        return new(sums.Min(s => s.Sum()), sums.Max(s => s.Sum()), sums.Max(s => s.Length));
    }
}

/// <summary>All of one drug in one unit, names compared without regard to case. Different units are never added.</summary>
public sealed record DrugSum(string Drug, string Unit, Sum Amount)
{
    internal static ImmutableArray<DrugSum> All(Source source) =>
    [
        .. source.Of(Kind.DrugGiven).Select(s => s.As<Payload.DrugGiven>())
            .DistinctBy(Key)
            .Select(d => new DrugSum(d.Drug, d.Unit, Sum.Of(source, Kind.DrugGiven,
                p => p is Payload.DrugGiven given && Key(given) == Key(d) ? given.Amount : null))),
    ];

    private static (string, string) Key(Payload.DrugGiven d) => (d.Drug.Trim().ToUpperInvariant(), d.Unit.Trim());
}

/// <summary>All of one fluid.</summary>
public sealed record FluidSum(Fluid Fluid, Sum Millilitres)
{
    internal static ImmutableArray<FluidSum> All(Source source) =>
    [
        .. source.Of(Kind.FluidGiven).Select(s => s.As<Payload.FluidGiven>().Fluid).Distinct().Order()
            .Select(f => new FluidSum(f, Sum.Of(source, Kind.FluidGiven,
                p => p is Payload.FluidGiven given && given.Fluid == f ? given.Millilitres : null))),
    ];
}
