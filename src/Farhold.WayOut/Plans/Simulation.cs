using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>When enough is enough.</summary>
/// <param name="FirstTrials">Trials of the first round; each further round doubles them.</param>
/// <param name="MostTrials">The limit, precise or not.</param>
/// <param name="Relative">Half the 95 % interval of the median and of P90, against the time taken.</param>
/// <param name="Probability">Standard error of each probability asked for.</param>
public sealed record SamplingLimits(int FirstTrials = 4096, int MostTrials = 16_384, double Relative = 0.03, double Probability = 0.005)
{
    /// <summary>So many trials, whatever their precision.</summary>
    public static SamplingLimits Exactly(int trials) => new(trials, trials);
}

/// <param name="Done">Trials run.</param>
/// <param name="Planned">Trials of this round and those before.</param>
public readonly record struct SimulationProgress(int Done, int Planned, bool Finished);

/// <summary>A forecast under way, in steps as large as the caller likes; the digits are the same.</summary>
/// <remarks>Each trial draws from its own part of the generator's stream, so nothing depends on who ran before it.</remarks>
public sealed class Simulation
{
    private const int BlockTrials = 1024;

    private readonly ImmutableArray<Instant> deadlines;
    private readonly double[][] arrivals;
    private readonly List<int> attempts = [];
    private Slice? slice;

    /// <summary>
    /// Where hardly a trial agrees with what is known, after so many times the trials wanted the rest are taken as they are.
    /// </summary>
    private const int MostTried = 32;

    /// <param name="deadlines">Moments whose probabilities must reach the precision asked for.</param>
    public Simulation(CompiledPlan plan, Rng rng, SamplingLimits? limits = null, IEnumerable<Instant>? deadlines = null)
    {
        (Plan, Rng, Limits) = (plan, rng, limits ?? new());
        ArgumentOutOfRangeException.ThrowIfLessThan(Limits.FirstTrials, 1, nameof(limits));
        ArgumentOutOfRangeException.ThrowIfLessThan(Limits.MostTrials, Limits.FirstTrials, nameof(limits));
        this.deadlines = [.. deadlines ?? []];
        arrivals = new double[plan.Places.Length][];
        for (var i = 0; i < arrivals.Length; i++)
            arrivals[i] = [];
        Grow(Limits.FirstTrials);
    }

    public CompiledPlan Plan { get; }

    public Rng Rng { get; }

    public SamplingLimits Limits { get; }

    public int Done { get; private set; }

    /// <summary>Trials run, those that contradict what is known included.</summary>
    public int Tried { get; private set; }

    public bool Finished { get; private set; }

    public SimulationProgress Progress => new(Done, Planned, Finished);

    private int Planned => arrivals[0].Length;

    /// <summary>Runs at most so many trials and returns; the caller decides whether to go on.</summary>
    public SimulationProgress Step(int maxTrials)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(maxTrials, 1);
        slice ??= new(Rng, BlockTrials, Plan.Learned);
        for (var left = maxTrials; left > 0 && !Finished; )
        {
            var count = Math.Min(Math.Min(left, BlockTrials), Planned - Done);
            slice.Run(Plan.Steps, Done, Tried, count, arrivals);
            var kept = Plan.MayReject ? Keep(count, all: Tried > (long)MostTried * Limits.MostTrials) : count;
            (Done, Tried, left) = (Done + kept, Tried + count, left - count);
            if (Done == Planned)
                Settle();
        }

        return Progress;
    }

    /// <summary>Runs to the end on this thread.</summary>
    public Simulation Run(CancellationToken cancellation = default)
    {
        while (!Step(BlockTrials).Finished)
            cancellation.ThrowIfCancellationRequested();
        return this;
    }

    /// <summary>Seconds from the plan's start to the end of a leg, by trial; not a number where the trial went another way.</summary>
    public ReadOnlySpan<double> SecondsTo(int place) => arrivals[place].AsSpan(0, Done);

    /// <summary>Seconds from the plan's start to higher care; infinite where nothing comes.</summary>
    public ReadOnlySpan<double> SecondsToCare => SecondsTo(Plan.Last);

    /// <summary>The chance of reaching higher care before an instant, by the trials run so far.</summary>
    public ProbabilityEstimate ChanceBefore(Instant at)
    {
        var (limit, hits) = ((at - Plan.Plan.Start).TotalSeconds, 0);
        foreach (var seconds in SecondsToCare)
            hits += seconds < limit ? 1 : 0;
        return new(hits, Done);
    }

    /// <summary>Which of the trials tried a trial is: its place in the stream of random numbers.</summary>
    internal int Attempt(int trial) => attempts.Count == 0 ? trial : attempts[trial];

    /// <summary>Drops the trials of the newest slice that contradict what is known.</summary>
    private int Keep(int count, bool all)
    {
        var kept = 0;
        for (var i = 0; i < count; i++)
        {
            if (slice!.Rejected[i] && !all)
                continue;
            foreach (var place in arrivals)
                place[Done + kept] = place[Done + i];
            attempts.Add(Tried + i);
            kept++;
        }

        return kept;
    }

    private void Settle()
    {
        Finished = Planned >= Limits.MostTrials || Precise();
        if (!Finished)
            Grow((int)Math.Min(2L * Planned, Limits.MostTrials));
    }

    private bool Precise()
    {
        var sorted = SecondsToCare.ToArray();
        Array.Sort(sorted);
        foreach (var p in (ReadOnlySpan<double>)[0.5, 0.9])
        {
            var at = QuantileEstimate.Of(sorted, p);
            if (double.IsFinite(at.High) && at.High - at.Low > 2 * Limits.Relative * at.Value)
                return false;
        }

        foreach (var deadline in deadlines)
            if (Before(sorted, (deadline - Plan.Plan.Start).TotalSeconds).StandardError > Limits.Probability)
                return false;
        return true;
    }

    internal static ProbabilityEstimate Before(ReadOnlySpan<double> sorted, double seconds)
    {
        int low = 0,
            high = sorted.Length;
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            (low, high) = sorted[middle] < seconds ? (middle + 1, high) : (low, middle);
        }

        return new(low, sorted.Length);
    }

    private void Grow(int trials)
    {
        for (var i = 0; i < arrivals.Length; i++)
        {
            // A slice fills in its own part; nothing beyond what is done is ever read.
            var grown = GC.AllocateUninitializedArray<double>(trials);
            arrivals[i].CopyTo(grown, 0);
            arrivals[i] = grown;
        }
    }
}
