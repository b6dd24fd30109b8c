namespace Farhold.Study.Outcomes;

/// <summary>What is counted for one cohort, one policy and one hour of evacuation.</summary>
public enum Count
{
    Deaths,
    BledToDeath,
    DiedAtRelease,
    Limbs,
    Palsies,
    Failed,
    BledAgain,
    FewerDeaths,
    MoreDeaths,
    FewerLimbs,
    MoreLimbs,
    FewerPalsies,
    MorePalsies,
}

/// <summary>Counts and sums over casualties. Better and worse are by pairs: the same casualty under the reference.</summary>
public sealed class Tally
{
    private static readonly int Counts = Enum.GetValues<Count>().Length;

    private readonly (int Policies, int Hours) shape;
    private readonly long[] counts;
    private readonly double[] harm;
    private readonly double[] squares;

    public Tally(StudyPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        shape = (plan.Policies.Length, plan.Evacuation.Length);
        var cells = plan.Cohorts.Length * shape.Policies * shape.Hours;
        (counts, harm, squares) = (new long[cells * Counts], new double[cells], new double[cells]);
    }

    public long Casualties { get; set; }

    public Span<long> AllCounts => counts;

    /// <summary>Sums of differences of harm from the reference, a cell each.</summary>
    public Span<double> Harm => harm;

    public Span<double> HarmSquared => squares;

    public int Cell(int cohort, int policy, int hour) => (((cohort * shape.Policies) + policy) * shape.Hours) + hour;

    public long this[int cell, Count count] => counts[(cell * Counts) + (int)count];

    /// <summary>Adds another's; the order of adding decides the last bits of <see cref="Harm"/>.</summary>
    public void Add(Tally other)
    {
        ArgumentNullException.ThrowIfNull(other);
        Casualties += other.Casualties;
        for (var i = 0; i < counts.Length; i++)
            counts[i] += other.counts[i];
        for (var i = 0; i < harm.Length; i++)
        {
            harm[i] += other.harm[i];
            squares[i] += other.squares[i];
        }
    }

    internal void Add(
        int cell,
        in CareOutcome outcome,
        in CareOutcome reference,
        in PolicyCourse course,
        bool attempted,
        double hour,
        Weights weights
    )
    {
        var at = cell * Counts;
        void Up(Count count, bool when) => counts[at + (int)count] += when ? 1 : 0;
        Up(Count.Deaths, outcome.Died);
        Up(Count.BledToDeath, outcome.BledToDeath);
        Up(Count.DiedAtRelease, outcome.DiedAtRelease);
        Up(Count.Limbs, outcome.LimbLost);
        Up(Count.Palsies, outcome.Palsy);
        Up(Count.Failed, attempted && course.Failed);
        Up(Count.BledAgain, course.TiedAgainAt <= hour);
        Up(Count.FewerDeaths, reference.Died && !outcome.Died);
        Up(Count.MoreDeaths, outcome.Died && !reference.Died);
        Up(Count.FewerLimbs, reference.LimbLost && !outcome.LimbLost);
        Up(Count.MoreLimbs, outcome.LimbLost && !reference.LimbLost);
        Up(Count.FewerPalsies, reference.Palsy && !outcome.Palsy);
        Up(Count.MorePalsies, outcome.Palsy && !reference.Palsy);
        var more = outcome.Harm(weights) - reference.Harm(weights);
        harm[cell] += more;
        squares[cell] += more * more;
    }

    /// <summary>Difference from the reference, a casualty, with its paired standard error.</summary>
    public Paired Deaths(int cell) => Binary(cell, Count.FewerDeaths, Count.MoreDeaths);

    public Paired Limbs(int cell) => Binary(cell, Count.FewerLimbs, Count.MoreLimbs);

    public Paired Palsies(int cell) => Binary(cell, Count.FewerPalsies, Count.MorePalsies);

    public Paired Net(int cell) => Paired.From(harm[cell], squares[cell], Casualties);

    private Paired Binary(int cell, Count fewer, Count more) =>
        Paired.From(this[cell, more] - this[cell, fewer], this[cell, more] + this[cell, fewer], Casualties);
}

/// <summary>A mean of paired differences and its standard error.</summary>
public readonly record struct Paired(double Mean, double Error)
{
    public static Paired From(double sum, double squares, long n)
    {
        var mean = sum / n;
        return new(mean, n < 2 ? double.PositiveInfinity : Math.Sqrt(Math.Max(0, (squares / n) - (mean * mean)) / (n - 1)));
    }
}
