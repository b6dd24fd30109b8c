using System.Collections.Immutable;
using Farhold.WayOut.Chance;

namespace Farhold.Study.Runs;

/// <summary>Which rule ended a run.</summary>
public enum EndedBy
{
    /// <summary>All half-widths were within the margins.</summary>
    Margins,

    /// <summary>All casualties that the file asks for were run.</summary>
    Budget,
}

/// <summary>Looks after each batch whether the paired half-widths are within the margins.</summary>
/// <remarks>
/// The error allowed over all looks, alpha, is spent evenly: each of K looks has alpha / K, two-sided, by the normal law (Bonferroni: it
/// holds whatever the looks have in common). Every policy, cohort and hour that the file names has to be within.
/// </remarks>
public static class StoppingRule
{
    /// <summary>Standard errors of a half-width at each look.</summary>
    public static double Reach(RunSize run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return NormalLaw.Quantile(1 - (run.Alpha / run.Batches / 2));
    }

    /// <summary>The widest half-width for deaths and for limbs, per 1,000, among what the file names.</summary>
    public static (double Deaths, double Limbs) Widest(StudyPlan plan, Tally tally)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(tally);
        var (reach, deaths, limbs) = (Reach(plan.Run), 0.0, 0.0);
        for (var cohort = 0; cohort < plan.Cohorts.Length; cohort++)
        for (var policy = 0; policy < plan.Policies.Length; policy++)
        for (var hour = 0; hour < plan.Evacuation.Length; hour++)
        {
            if (policy == plan.Reference || !plan.Run.StopAt.Contains(plan.Evacuation[hour]))
                continue;
            var cell = tally.Cell(cohort, policy, hour);
            deaths = Math.Max(deaths, 1000 * reach * tally.Deaths(cell).Error);
            limbs = Math.Max(limbs, 1000 * reach * tally.Limbs(cell).Error);
        }

        return (deaths, limbs);
    }

    public static bool IsMet(StudyPlan plan, Tally tally)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (deaths, limbs) = Widest(plan, tally);
        return deaths <= plan.Run.MarginDeaths && limbs <= plan.Run.MarginLimbs;
    }

    /// <summary>Adds batches in their order, up to the look at which the rule is met.</summary>
    public static (Tally Tally, int Batches, EndedBy By) Add(StudyPlan plan, ImmutableArray<Batch> batches)
    {
        var tally = new Tally(plan);
        for (var i = 0; i < batches.Length; i++)
        {
            tally.Add(batches[i].Tally);
            if (i + 1 >= StudyRun.Pool(plan) && IsMet(plan, tally))
                return (tally, i + 1, EndedBy.Margins);
        }

        return (tally, batches.Length, EndedBy.Budget);
    }
}
