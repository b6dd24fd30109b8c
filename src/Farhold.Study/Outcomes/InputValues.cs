using System.Collections.Immutable;
using Farhold.WayOut.Chance;

namespace Farhold.Study.Outcomes;

/// <summary>One value for every input, with what follows from them for every hour of evacuation and every hour of release.</summary>
internal sealed class InputValues
{
    private readonly double[] values;

    /// <param name="needed">Share of needed tourniquets.</param>
    public InputValues(StudyPlan plan, double needed, double[] values)
    {
        this.values = values;
        Needed = needed;
        (OwnChance, SameWound) = (Math.Sqrt(1 - (this[StudyInput.SameWound] * this[StudyInput.SameWound])), this[StudyInput.SameWound]);
        HoldScores = [Score(this[StudyInput.HoldHaemostatic]), Score(this[StudyInput.HoldPlain]), Score(this[StudyInput.HoldNotNeeded])];
        Field = Math.Max(this[StudyInput.ReleaseField], this[StudyInput.ReleaseHospital]);
        AtCare = [.. plan.Evacuation.Select(h => At(h, this[StudyInput.ReleaseHospital]))];
        ByArtery = [.. plan.Evacuation.Select(Rates.LimbLostToArtery)];
        Released = [.. plan.Policies.Select(p => p.AttemptH is { } h ? (At(h, Field), At(h + Policy.Gap, Field)) : (default, default))];
    }

    /// <summary>Every input at its mean.</summary>
    public static InputValues Central(StudyPlan plan, Cohort cohort) =>
        new(plan, cohort.Needed.Mean, [.. plan.Figures.All.Select(f => f.Mean)]);

    /// <summary>
    /// At a point of the unit cube: first the share of needed ones, then what is drawn, in the order of <see cref="StudyInput"/>.
    /// </summary>
    public static InputValues AtPoint(StudyPlan plan, Cohort cohort, ImmutableArray<StudyInput> drawn, ReadOnlySpan<double> point)
    {
        var all = plan.Figures.All.Select(f => f.Mean).ToArray();
        for (var i = 0; i < drawn.Length; i++)
            all[(int)drawn[i]] = plan.Figures[drawn[i]].Quantile(point[i + 1]);
        return new(plan, cohort.Needed.Quantile(point[0]), all);
    }

    public double this[StudyInput input] => values[(int)input];

    public double Needed { get; }
    public double SameWound { get; }
    public double OwnChance { get; }
    public double Field { get; }

    /// <summary>Haemostatic gauze, plain gauze, wounds that needed no tourniquet.</summary>
    public double[] HoldScores { get; }

    /// <summary>For each hour of evacuation.</summary>
    public TiedFor[] AtCare { get; }
    public double[] ByArtery { get; }

    /// <summary>For each policy's first attempt and its second.</summary>
    public (TiedFor First, TiedFor Second)[] Released { get; }

    private TiedFor At(double hours, double release) =>
        new(
            Rates.LimbLost(hours, this[StudyInput.LimbShape], this[StudyInput.LimbScaleH]),
            Rates.ReleaseDeath(hours, release),
            Rates.Palsy(hours, this[StudyInput.PalsyScale])
        );

    private static double Score(double share) =>
        share <= 0 ? double.NegativeInfinity
        : share >= 1 ? double.PositiveInfinity
        : NormalLaw.Quantile(share);
}

/// <summary>Shares that go with a limb tied for so long.</summary>
internal readonly record struct TiedFor(double LimbLost, double ReleaseDeath, double Palsy);
