using System.Collections.Immutable;

namespace Farhold.WayOut.Plans;

/// <summary>What is tried, beyond its chance.</summary>
/// <param name="Closes">Seconds from the start; null where it never does. Bad weather closes early.</param>
/// <param name="Back">Whether whoever does not get through has to come back.</param>
/// <param name="Open">Until when it is known to have been open; null where nobody knows.</param>
/// <param name="GivenUp">When it was given up; null where it was not.</param>
/// <param name="Succeeds">Whether it is known to succeed (1) or not (0); null where nobody knows.</param>
internal sealed record TryTerms(Distribution? Closes, bool Back, double? Open, double? GivenUp, double? Succeeds);

/// <summary>It succeeds and is through before it closes, or another way sets out from where it was tried.</summary>
/// <param name="inside">How many places what is tried holds, after that of the choice.</param>
/// <param name="otherwise">Null where there is no other way: then nothing arrives.</param>
internal sealed class TryStep(
    int index,
    int slot,
    int inside,
    WaySteps tried,
    ImmutableArray<Step> onward,
    ImmutableArray<Step>? otherwise,
    TryTerms terms,
    Copula weather
) : Step
{
    /// <summary>Place of the closing time among the random numbers of the choice, after those of its ways.</summary>
    public const int Closing = 8;

    private readonly Copula chance = tried.Weather ? weather : new(0);
    private readonly double probability = terms.Succeeds ?? tried.Probability;
    private readonly double succeeds = NormalLaw.Quantile(terms.Succeeds ?? tried.Probability);

    public override void Run(Slice slice, ReadOnlySpan<int> who, double[] clock)
    {
        var (list, end, closing) = (slice.RentList(), slice.RentClock(), slice.RentClock());
        var count = 0;
        foreach (var i in who)
        {
            (end[i], closing[i]) = (clock[i], ClosesAt(slice, i));
            if (closing[i] <= terms.Open)
                slice.Reject(i);
            if (clock[i] < closing[i])
                list[count++] = i;
        }

        var setOut = list.AsSpan(0, count);
        foreach (var step in tried.Steps)
            step.Run(slice, setOut, end);
        Part(slice, who, setOut, clock, end, closing);
        slice.Return(list);
        slice.Return(end);
        slice.Return(closing);
        var arrivals = slice.Arrivals[index];
        foreach (var i in who)
            arrivals[slice.First + i] = clock[i];
    }

    /// <summary>Those who are through go on, the others turn back.</summary>
    private void Part(Slice slice, ReadOnlySpan<int> who, ReadOnlySpan<int> setOut, double[] clock, double[] end, double[] closing)
    {
        var (through, others) = (slice.RentList(), slice.RentList());
        var (good, bad, next) = (0, 0, 0);
        foreach (var i in who)
        {
            if (next < setOut.Length && setOut[next] == i)
            {
                next++;
                if (end[i] <= closing[i] && Succeeds(slice, i))
                {
                    (clock[i], through[good++]) = (end[i], i);
                    continue;
                }

                if (end[i] > closing[i])
                    for (var place = index + 1; place <= index + inside; place++)
                        slice.Arrivals[place][slice.First + i] = double.NaN;
                var turned = terms.GivenUp ?? Math.Min(end[i], closing[i]);
                clock[i] = terms.Back ? turned + Math.Max(0, turned - clock[i]) : turned;
            }

            others[bad++] = i;
        }

        foreach (var step in onward)
            step.Run(slice, through.AsSpan(0, good), clock);
        if (otherwise is { } other)
            foreach (var step in other)
                step.Run(slice, others.AsSpan(0, bad), clock);
        else
            for (var k = 0; k < bad; k++)
                clock[others[k]] = double.PositiveInfinity;
        slice.Return(through);
        slice.Return(others);
    }

    private double ClosesAt(Slice slice, int i) =>
        terms.Closes is null || terms.Succeeds == 1
            ? double.PositiveInfinity
            : terms.Closes.AtScore(-slice.Weather(i, slot, Closing, weather));

    private bool Succeeds(Slice slice, int i) => probability >= 1 || slice.Weather(i, slot, ChoiceStep.FirstWay, chance) <= succeeds;
}
