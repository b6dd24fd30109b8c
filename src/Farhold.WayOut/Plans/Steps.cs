using System.Collections.Immutable;

namespace Farhold.WayOut.Plans;

/// <summary>Some trials in a row, worked leg by leg: arrays as long as the slice, reused from slice to slice.</summary>
internal sealed class Slice(Rng rng, int size)
{
    /// <summary>Random numbers set aside for each trial.</summary>
    public const ulong PerTrial = 4096;

    /// <summary>Random numbers set aside for each leg.</summary>
    public const ulong PerLeg = 8;

    private readonly ulong[] bits = new ulong[size];
    private readonly Stack<double[]> clocks = new();
    private readonly Stack<int[]> lists = new();

    public int First { get; private set; }

    public double[] Shared { get; } = new double[size];

    public double[] Scores { get; } = new double[size];

    public double[][] Arrivals { get; private set; } = [];

    public double Uniform(int i, int slot, int part) => At(rng, First + i, slot, part);

    public ulong Bits(int i, int slot, int part) =>
        rng.Bits(((ulong)(First + i) * PerTrial) + ((ulong)slot * PerLeg) + (ulong)part);

    public static double At(Rng rng, int trial, int slot, int part) =>
        rng.Uniform(((ulong)trial * PerTrial) + ((ulong)slot * PerLeg) + (ulong)part);

    /// <summary>A score for each trial named, part shared, part its own.</summary>
    public void Draw(ReadOnlySpan<int> who, int slot, int place, double shared, double own, Span<double> scores)
    {
        unchecked
        {
            var at = rng.Skip(((ulong)First * PerTrial) + ((ulong)slot * PerLeg) + (ulong)place);
            if (InARow(who))
            {
                NormalScores.Fill(at.Skip((ulong)who[0] * PerTrial), PerTrial, bits.AsSpan(0, who.Length), scores);
                Columns.Mix(scores, own, Shared.AsSpan(who[0], who.Length), shared);
                return;
            }

            for (var k = 0; k < who.Length; k++)
                scores[k] = (shared * Shared[who[k]]) + (own * NormalScores.Of(at.Bits((ulong)who[k] * PerTrial)));
        }
    }

    /// <summary>Whether trials, in rising order as ever, follow one another without a gap.</summary>
    public static bool InARow(ReadOnlySpan<int> who) => who.Length > 0 && who[^1] - who[0] == who.Length - 1;

    public void Run(ImmutableArray<Step> steps, int first, int count, double[][] arrivals)
    {
        (First, Arrivals) = (first, arrivals);
        var (clock, who) = (RentClock(), RentList());
        // Without a choice every trial comes by every leg.
        if (arrivals.Length > steps.Length)
            foreach (var place in arrivals)
                place.AsSpan(first, count).Fill(double.NaN);
        NormalScores.Fill(rng.Skip((ulong)first * PerTrial), PerTrial, bits.AsSpan(0, count), Shared.AsSpan(0, count));
        for (var i = 0; i < count; i++)
            (clock[i], who[i]) = (0, i);

        foreach (var step in steps)
            step.Run(this, who.AsSpan(0, count), clock);
        clocks.Push(clock);
        lists.Push(who);
    }

    public double[] RentClock() => clocks.TryPop(out var free) ? free : new double[size];

    public int[] RentList() => lists.TryPop(out var free) ? free : new int[size];

    public void Return(double[] clock) => clocks.Push(clock);

    public void Return(int[] list) => lists.Push(list);
}

/// <summary>One leg made ready: moves the clock of the trials named, in seconds after the plan's start.</summary>
internal abstract class Step
{
    public abstract void Run(Slice slice, ReadOnlySpan<int> who, double[] clock);
}

/// <summary>Something of a leg that takes time.</summary>
/// <param name="Law">Seconds by day.</param>
/// <param name="DarkRate">How much of it a second in the dark gets done: 1 where dark makes no odds, 0 where it halts.</param>
internal sealed record Part(string Name, Distribution Law, double DarkRate);

internal sealed class TravelStep(
    int index, int slot, double holdProbability, Distribution? hold, bool daylightOnly, ImmutableArray<Part> parts, Copula copula, DarkClock? dark)
    : Step
{
    /// <summary>Places of a leg's random numbers: whether it is held, how long, then one for each part.</summary>
    public const int Held = 0, HeldFor = 1, FirstPart = 2;

    public override void Run(Slice slice, ReadOnlySpan<int> who, double[] clock)
    {
        if (hold is not null)
            foreach (var i in who)
                if (slice.Uniform(i, slot, Held) < holdProbability)
                    clock[i] += hold.AtScore(Score(slice, i, HeldFor));
        if (daylightOnly)
            foreach (var i in who)
                clock[i] = dark!.NextLight(clock[i]);
        for (var p = 0; p < parts.Length; p++)
            Take(slice, who, clock, parts[p], FirstPart + p);
        var arrivals = slice.Arrivals[index];
        if (Slice.InARow(who))
            clock.AsSpan(who[0], who.Length).CopyTo(arrivals.AsSpan(slice.First + who[0]));
        else
            foreach (var i in who)
                arrivals[slice.First + i] = clock[i];
    }

    private void Take(Slice slice, ReadOnlySpan<int> who, double[] clock, Part part, int place)
    {
        var times = slice.Scores.AsSpan(0, who.Length);
        if (part.Law is not Constant)
            slice.Draw(who, slot, place, shared, own, times);
        part.Law.AtScores(times);
        if (part.DarkRate == 1 && Slice.InARow(who))
            Columns.Add(clock.AsSpan(who[0], who.Length), times);
        else if (part.DarkRate == 1)
            for (var k = 0; k < who.Length; k++)
                clock[who[k]] += times[k];
        else if (dark is null)
            for (var k = 0; k < who.Length; k++)
                clock[who[k]] += times[k] / part.DarkRate;
        else
            for (var k = 0; k < who.Length; k++)
                clock[who[k]] = dark.Advance(clock[who[k]], times[k], part.DarkRate);
    }

    private double Score(Slice slice, int i, int place) =>
        (shared * slice.Shared[i]) + (own * NormalScores.Of(slice.Bits(i, slot, place)));

    private readonly double shared = copula.Shared, own = copula.Own;
}

internal sealed class ChoiceStep(int index, int slot, ChoiceKind kind, ImmutableArray<(double Probability, ImmutableArray<Step> Steps)> ways) : Step
{
    /// <summary>Places of its random numbers: which way, then whether each way comes.</summary>
    public const int Which = 0, FirstWay = 1;

    private readonly int last = Math.Max(0, ways.Select(way => way.Probability > 0).ToList().LastIndexOf(true));

    public override void Run(Slice slice, ReadOnlySpan<int> who, double[] clock)
    {
        if (kind == ChoiceKind.Branches)
            Pick(slice, who, clock);
        else
            Race(slice, who, clock);
        var arrivals = slice.Arrivals[index];
        foreach (var i in who)
            arrivals[slice.First + i] = clock[i];
    }

    private void Pick(Slice slice, ReadOnlySpan<int> who, double[] clock)
    {
        var list = slice.RentList();
        var from = 0.0;
        for (var w = 0; w < ways.Length; w++)
        {
            // The last way that can be taken takes what rounding leaves.
            var to = w == last ? 1 : from + ways[w].Probability;
            var count = 0;
            foreach (var i in who)
                if (slice.Uniform(i, slot, Which) is var u && u >= from && u < to && ways[w].Probability > 0)
                    list[count++] = i;
            foreach (var step in ways[w].Steps)
                step.Run(slice, list.AsSpan(0, count), clock);
            from = to;
        }

        slice.Return(list);
    }

    private void Race(Slice slice, ReadOnlySpan<int> who, double[] clock)
    {
        var (list, mine, best) = (slice.RentList(), slice.RentClock(), slice.RentClock());
        foreach (var i in who)
            best[i] = kind == ChoiceKind.First ? double.PositiveInfinity : clock[i];
        for (var w = 0; w < ways.Length; w++)
        {
            var count = 0;
            foreach (var i in who)
                if (ways[w].Probability >= 1 || slice.Uniform(i, slot, FirstWay + w) < ways[w].Probability)
                    list[count++] = i;
            var coming = list.AsSpan(0, count);
            foreach (var i in coming)
                mine[i] = clock[i];
            foreach (var step in ways[w].Steps)
                step.Run(slice, coming, mine);
            foreach (var i in coming)
                best[i] = kind == ChoiceKind.First ? Math.Min(best[i], mine[i]) : Math.Max(best[i], mine[i]);
        }

        foreach (var i in who)
            clock[i] = best[i];
        slice.Return(list);
        slice.Return(mine);
        slice.Return(best);
    }
}
