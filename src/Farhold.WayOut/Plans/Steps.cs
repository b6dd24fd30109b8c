using System.Collections.Immutable;

namespace Farhold.WayOut.Plans;

/// <summary>Some trials in a row, worked leg by leg: arrays as long as the slice, reused from slice to slice.</summary>
internal sealed class Slice(Rng rng, int size, Learned? learned = null)
{
    /// <summary>Random numbers set aside for each trial.</summary>
    public const ulong PerTrial = 512 * PerLeg;

    /// <summary>Random numbers set aside for each leg.</summary>
    public const ulong PerLeg = 64;

    private readonly ulong[] bits = new ulong[size];
    private readonly Stack<double[]> clocks = new();
    private readonly Stack<int[]> lists = new();

    public int First { get; private set; }

    /// <summary>Where in the stream of random numbers the slice begins: trials tried, kept or not.</summary>
    private int attempt;

    public double[] Shared { get; } = new double[size];

    public double[] Scores { get; } = new double[size];

    /// <summary>Trials that contradict what is known.</summary>
    public bool[] Rejected { get; } = new bool[size];

    public void Reject(int i) => Rejected[i] = true;

    public double[][] Arrivals { get; private set; } = [];

    public ulong Bits(int i, int slot, int part) => rng.Bits(((ulong)(attempt + i) * PerTrial) + ((ulong)slot * PerLeg) + (ulong)part);

    public static double At(Rng rng, int trial, int slot, int part) =>
        rng.Uniform(((ulong)trial * PerTrial) + ((ulong)slot * PerLeg) + (ulong)part);

    /// <summary>A score for each trial named, part shared, part its own.</summary>
    public void Draw(ReadOnlySpan<int> who, int slot, int place, double shared, double own, Span<double> scores)
    {
        unchecked
        {
            if (InARow(who))
            {
                DrawOwn(who, slot, place, scores);
                Columns.Mix(scores, own, Shared.AsSpan(who[0], who.Length), shared);
                return;
            }

            var at = At(slot, place);
            for (var k = 0; k < who.Length; k++)
                scores[k] = NormalScores.Of(at.Bits((ulong)who[k] * PerTrial));
            learned?.Pace(slot, place, who, Shared, scores);
            for (var k = 0; k < who.Length; k++)
                scores[k] = (shared * Shared[who[k]]) + (own * scores[k]);
        }
    }

    /// <summary>The score of its own for each of some trials in a row.</summary>
    public void DrawOwn(ReadOnlySpan<int> who, int slot, int place, Span<double> scores)
    {
        NormalScores.Fill(At(slot, place).Skip(unchecked((ulong)who[0] * PerTrial)), PerTrial, bits.AsSpan(0, who.Length), scores);
        learned?.Pace(slot, place, who, Shared, scores);
    }

    private Rng At(int slot, int place) => rng.Skip(unchecked(((ulong)attempt * PerTrial) + ((ulong)slot * PerLeg) + (ulong)place));

    /// <summary>The weather of one event for one trial: part of it all share, part its own; high is bad.</summary>
    public double Weather(int i, int slot, int place, Copula weather) => weather.Score(Shared[i], NormalScores.Of(Bits(i, slot, place)));

    /// <summary>Whether trials, in rising order as ever, follow one another without a gap.</summary>
    public static bool InARow(ReadOnlySpan<int> who) => who.Length > 0 && who[^1] - who[0] == who.Length - 1;

    /// <param name="first">Place in the arrivals.</param>
    /// <param name="tried">Place among the trials tried.</param>
    public void Run(ImmutableArray<Step> steps, int first, int tried, int count, double[][] arrivals)
    {
        (First, attempt, Arrivals) = (first, tried, arrivals);
        var (clock, who) = (RentClock(), RentList());
        // Without a choice every trial comes by every leg.
        if (arrivals.Length > steps.Length)
            foreach (var place in arrivals)
                place.AsSpan(first, count).Fill(double.NaN);
        NormalScores.Fill(rng.Skip((ulong)tried * PerTrial), PerTrial, bits.AsSpan(0, count), Shared.AsSpan(0, count));
        if (learned is not null)
            for (var i = 0; i < count; i++)
                Shared[i] = learned.Shared(Shared[i]);
        Array.Clear(Rejected);
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
/// <param name="Slot">Of the leg whose random number it is; the pace of a party is that of its first leg by the same means.</param>
internal sealed record Part(string Name, Distribution Law, double DarkRate, int Slot, int Place)
{
    /// <summary>Set where people carry.</summary>
    public CarryWork? Work { get; init; }
}

/// <summary>What carrying does to the people who carry.</summary>
/// <param name="Before">Laws of what the same party carried before, at the same pace.</param>
/// <param name="TireSeconds">On the move, after which it slows.</param>
/// <param name="LastSeconds">On the move, beyond which it is not counted on.</param>
/// <param name="Halting">Time with halts against time on the move.</param>
internal sealed record CarryWork(
    ImmutableArray<LogNormal> Before,
    double TireSeconds,
    double LastSeconds,
    double Halting,
    JoiningHands? Joining
)
{
    /// <summary>Seconds for work of so many at the fresh pace, done after so much; infinite where the party does not last.</summary>
    public double Tired(double before, double work) =>
        before + work > LastSeconds ? double.PositiveInfinity : Halting * (Slowed(before + work) - Slowed(before));

    private double Slowed(double work) => work <= TireSeconds ? work : TireSeconds + ((work - TireSeconds) / BearerLimits.TiredPace);
}

/// <summary>What is known of a leg, in seconds after the plan's start.</summary>
/// <param name="Cut">Score of the time a leg under way has taken; null where pace decides, or nothing is under way.</param>
/// <param name="NotBefore">Whether whoever takes it is seen, so that what has not happened by now happens later.</param>
/// <param name="Unseen">Whether it would have been seen to end.</param>
internal sealed record Marked(double Now, double? Begun, double? Done, bool Failed, double? Cut, bool NotBefore, bool Unseen);

/// <param name="Time">Seconds from the plan's start until they are there.</param>
/// <param name="Faster">Speed with them against speed without.</param>
internal sealed record JoiningHands(Distribution Time, double Faster, int Slot, int Place);

internal sealed class TravelStep(
    int index,
    int slot,
    double holdProbability,
    Distribution? hold,
    bool daylightOnly,
    ImmutableArray<Part> parts,
    Copula copula,
    Copula weather,
    DarkClock? dark,
    Marked? marked
) : Step
{
    /// <summary>Places of a leg's random numbers: whether it is held, how long, then one for each part but pace.</summary>
    public const int Held = 0,
        HeldFor = 1,
        FirstPart = 2;

    /// <summary>From here on the paces of parties, by way and means, in the slot of the choice whose way they take.</summary>
    public const int FirstPace = 10;

    private readonly double heldFrom = NormalLaw.Quantile(1 - holdProbability);

    private readonly double shared = copula.Shared,
        own = copula.Own;

    public override void Run(Slice slice, ReadOnlySpan<int> who, double[] clock)
    {
        if (marked is null)
            Under(slice, who, clock, begun: false);
        else
            Known(slice, who, clock, marked);
        var arrivals = slice.Arrivals[index];
        if (Slice.InARow(who))
            clock.AsSpan(who[0], who.Length).CopyTo(arrivals.AsSpan(slice.First + who[0]));
        else
            foreach (var i in who)
                arrivals[slice.First + i] = clock[i];
    }

    private void Known(Slice slice, ReadOnlySpan<int> who, double[] clock, Marked marked)
    {
        if (marked.Done is { } at)
        {
            foreach (var i in who)
                clock[i] = at;
            return;
        }

        foreach (var i in who)
            clock[i] = marked.Begun ?? (marked.NotBefore ? Math.Max(clock[i], marked.Now) : clock[i]);
        if (marked.Cut is { } cut)
            Rest(slice, who, clock, cut);
        else
            Under(slice, who, clock, marked.Begun is not null);
        if (marked.NotBefore)
            foreach (var i in who)
                clock[i] = Math.Max(clock[i], marked.Now);
        // Nobody has seen it come, so the trials in which it has are none of ours.
        if (marked.Unseen)
            foreach (var i in who)
                if (clock[i] <= marked.Now)
                    slice.Reject(i);
        if (marked.Failed)
            foreach (var i in who)
                clock[i] = double.PositiveInfinity;
    }

    /// <summary>A leg under way with a time of its own: longer than it has taken already.</summary>
    private void Rest(Slice slice, ReadOnlySpan<int> who, double[] clock, double cut)
    {
        var part = parts[^1];
        foreach (var i in who)
        {
            var raw = NormalScores.Of(slice.Bits(i, part.Slot, part.Place));
            var (all, rest) = (shared * slice.Shared[i], Math.Max(1e-9, own));
            // What is left of the own luck beyond the cut, in the upper tail, where digits are.
            var luck = -NormalLaw.Quantile(NormalLaw.Cdf(-(cut - all) / rest) * NormalLaw.Cdf(-raw));
            var time = part.Law.AtScore(double.IsFinite(luck) ? all + (rest * luck) : Math.Max(cut, all));
            clock[i] = Advance(clock[i], time, part.DarkRate);
        }
    }

    private void Under(Slice slice, ReadOnlySpan<int> who, double[] clock, bool begun)
    {
        if (!begun && hold is not null && holdProbability > 0)
            foreach (var i in who)
                if (slice.Weather(i, slot, Held, weather) > heldFrom)
                    clock[i] += hold.AtScore(Score(slice, i, slot, HeldFor));
        if (daylightOnly && !begun)
            Fly(slice, who, clock);
        else
            foreach (var part in parts)
                Take(slice, who, clock, part);
    }

    private void Fly(Slice slice, ReadOnlySpan<int> who, double[] clock)
    {
        var flight = slice.RentClock();
        foreach (var i in who)
            flight[i] = 0;
        foreach (var part in parts)
        {
            var times = Times(slice, who, part);
            for (var k = 0; k < who.Length; k++)
                flight[who[k]] += times[k];
        }

        foreach (var i in who)
            clock[i] = flight[i] + dark!.TakeOff(clock[i], flight[i]);
        slice.Return(flight);
    }

    private Span<double> Times(Slice slice, ReadOnlySpan<int> who, Part part)
    {
        var times = slice.Scores.AsSpan(0, who.Length);
        if (part.Law is not Constant)
            slice.Draw(who, part.Slot, part.Place, shared, own, times);
        if (part.Work is { } work)
        {
            Carried(slice, who, part, work, times);
            return times;
        }

        part.Law.AtScores(times);
        return times;
    }

    /// <summary>From scores to seconds: the party tires by what it has carried before and now.</summary>
    private static void Carried(Slice slice, ReadOnlySpan<int> who, Part part, CarryWork work, Span<double> times)
    {
        var before = slice.RentClock();
        var one = slice.RentClock();
        var sum = before.AsSpan(0, who.Length);
        sum.Clear();
        foreach (var law in work.Before)
        {
            var once = one.AsSpan(0, who.Length);
            times.CopyTo(once);
            law.AtScores(once);
            Columns.Add(sum, once);
        }

        part.Law.AtScores(times);
        for (var k = 0; k < times.Length; k++)
            times[k] = work.Tired(sum[k], times[k]);
        slice.Return(before);
        slice.Return(one);
    }

    private void Take(Slice slice, ReadOnlySpan<int> who, double[] clock, Part part)
    {
        if (part is { Law: LogNormal law, Work: null, DarkRate: 1 } && Slice.InARow(who))
        {
            var scores = slice.Scores.AsSpan(0, who.Length);
            slice.DrawOwn(who, part.Slot, part.Place, scores);
            law.AddTo(clock.AsSpan(who[0], who.Length), scores, own, slice.Shared.AsSpan(who[0], who.Length), shared);
            return;
        }

        var times = Times(slice, who, part);
        if (part.Work is { Joining: { } joining })
            Join(slice, who, clock, part, joining, times);
        else if (part.DarkRate == 1 && Slice.InARow(who))
            Columns.Add(clock.AsSpan(who[0], who.Length), times);
        else
            for (var k = 0; k < who.Length; k++)
                clock[who[k]] = Advance(clock[who[k]], times[k], part.DarkRate);
    }

    /// <summary>Alone until the others are there, then faster.</summary>
    private void Join(Slice slice, ReadOnlySpan<int> who, double[] clock, Part part, JoiningHands joining, ReadOnlySpan<double> times)
    {
        for (var k = 0; k < who.Length; k++)
        {
            var (i, all) = (who[k], times[k]);
            var at = joining.Time.AtScore(Score(slice, i, joining.Slot, joining.Place));
            var alone = at <= clock[i] ? 0 : Math.Min(all, Work(clock[i], at, part.DarkRate));
            clock[i] = Advance(clock[i], alone + ((all - alone) / joining.Faster), part.DarkRate);
        }
    }

    private double Work(double from, double to, double rate) => dark is null ? (to - from) * rate : dark.Work(from, to, rate);

    private double Advance(double at, double work, double rate) =>
        !double.IsFinite(at + work) ? double.PositiveInfinity
        : rate == 1 ? at + work
        : dark is null ? at + (work / rate)
        : dark.Advance(at, work, rate);

    private double Score(Slice slice, int i, int of, int place) =>
        (shared * slice.Shared[i]) + (own * NormalScores.Of(slice.Bits(i, of, place)));
}

/// <param name="Weather">Whether weather has a say in it.</param>
internal sealed record WaySteps(double Probability, bool Weather, ImmutableArray<Step> Steps);

/// <param name="taken">Branches from good weather to bad.</param>
/// <param name="until">Seconds from the start until when the first way is waited for, where that is the choice.</param>
/// <param name="known">Of each way, whether it is known to come (1) or not (0); null where nobody knows.</param>
internal sealed class ChoiceStep(
    int index,
    int slot,
    ChoiceKind kind,
    ImmutableArray<WaySteps> ways,
    ImmutableArray<int> taken,
    Copula weather,
    double until,
    ImmutableArray<double?> known
) : Step
{
    /// <summary>Places of its random numbers: which way, then whether each way comes.</summary>
    public const int Which = 0,
        FirstWay = 1;

    private static readonly Copula NoWeather = new(0);

    private readonly Copula which = ways.Any(way => way.Weather) ? weather : NoWeather;

    /// <summary>The last way that can be taken takes what rounding leaves.</summary>
    private readonly int last = taken.LastOrDefault(w => ways[w].Probability > 0);

    /// <summary>The branch known to have been taken; −1 where none is.</summary>
    private readonly int sure = known.IndexOf(1);

    public override void Run(Slice slice, ReadOnlySpan<int> who, double[] clock)
    {
        if (kind == ChoiceKind.Branches)
            Pick(slice, who, clock);
        else if (kind == ChoiceKind.Until)
            Wait(slice, who, clock);
        else
            Race(slice, who, clock);
        var arrivals = slice.Arrivals[index];
        foreach (var i in who)
            arrivals[slice.First + i] = clock[i];
    }

    private void Pick(Slice slice, ReadOnlySpan<int> who, double[] clock)
    {
        if (sure >= 0)
        {
            foreach (var step in ways[sure].Steps)
                step.Run(slice, who, clock);
            return;
        }

        var (list, luck) = (slice.RentList(), slice.RentClock());
        foreach (var i in who)
            luck[i] = slice.Weather(i, slot, Which, which);
        var (share, from) = (0.0, double.NegativeInfinity);
        foreach (var w in taken)
        {
            if (ways[w].Probability <= 0)
                continue;
            share += ways[w].Probability;
            var to = w == last ? double.PositiveInfinity : NormalLaw.Quantile(Math.Min(share, 1));
            var count = 0;
            foreach (var i in who)
                if (luck[i] > from && luck[i] <= to)
                    list[count++] = i;
            foreach (var step in ways[w].Steps)
                step.Run(slice, list.AsSpan(0, count), clock);
            from = to;
        }

        slice.Return(list);
        slice.Return(luck);
    }

    /// <summary>Lists the trials in which a way comes at all.</summary>
    private int Coming(Slice slice, ReadOnlySpan<int> who, int w, int[] list)
    {
        var (count, way) = (0, ways[w]);
        var chance = known[w] ?? way.Probability;
        var comes = NormalLaw.Quantile(chance);
        foreach (var i in who)
            if (chance >= 1 || slice.Weather(i, slot, FirstWay + w, way.Weather ? weather : NoWeather) <= comes)
                list[count++] = i;
        return count;
    }

    /// <summary>What is waited for is there in time and goes on from there, or the other way sets out.</summary>
    private void Wait(Slice slice, ReadOnlySpan<int> who, double[] clock)
    {
        var (list, kept, here) = (slice.RentList(), slice.RentList(), slice.RentClock());
        foreach (var i in who)
            here[i] = double.PositiveInfinity;
        var coming = list.AsSpan(0, Coming(slice, who, 0, list));
        foreach (var i in coming)
            here[i] = clock[i];
        foreach (var step in ways[0].Steps)
            step.Run(slice, coming, here);
        var count = 0;
        foreach (var i in who)
            if (here[i] > Math.Max(clock[i], until))
                list[count++] = i;
        var others = list.AsSpan(0, count);
        foreach (var i in others)
            clock[i] = Math.Max(clock[i], until);
        foreach (var step in ways[2].Steps)
            step.Run(slice, others, clock);
        (count, var late) = (0, 0);
        foreach (var i in who)
            if (late < others.Length && others[late] == i)
                late++;
            else
                kept[count++] = i;
        var met = kept.AsSpan(0, count);
        foreach (var i in met)
            clock[i] = here[i];
        foreach (var step in ways[1].Steps)
            step.Run(slice, met, clock);
        slice.Return(list);
        slice.Return(kept);
        slice.Return(here);
    }

    private void Race(Slice slice, ReadOnlySpan<int> who, double[] clock)
    {
        var (list, mine, best) = (slice.RentList(), slice.RentClock(), slice.RentClock());
        foreach (var i in who)
            best[i] = kind == ChoiceKind.First ? double.PositiveInfinity : clock[i];
        for (var w = 0; w < ways.Length; w++)
        {
            var way = ways[w];
            var coming = list.AsSpan(0, Coming(slice, who, w, list));
            foreach (var i in coming)
                mine[i] = clock[i];
            foreach (var step in way.Steps)
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
