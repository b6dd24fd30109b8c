using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>A forecast in plain words: ranges before points, and no more digits than it deserves.</summary>
public static class ArrivalWords
{
    /// <summary>Sentences, the answer first. Times are of the plan's zone, else UTC.</summary>
    public static ImmutableArray<string> Sentences(Outlook outlook)
    {
        var clock = ArrivalClock.Of(outlook.Plan);
        var said = ImmutableArray.CreateBuilder<string>();
        said.AddRange(Arrival(outlook));
        foreach (var chance in outlook.Deadlines)
            said.Add(PlanTexts.BeforeDeadline(chance.Deadline.Id, clock.Exactly(chance.Deadline.At), Chance(chance.Before)));
        if (Leading(outlook) is { } leading)
            said.Add(leading);
        said.AddRange(outlook.Cautions);
        return said.ToImmutable();
    }

    /// <summary>Of these, the answer itself: by case, then as one range; the middle only where trials lie about it.</summary>
    public static ImmutableArray<string> Arrival(Outlook outlook)
    {
        var clock = ArrivalClock.Of(outlook.Plan);
        var said = ImmutableArray.CreateBuilder<string>();
        if (outlook.Cases.Choice is not null || outlook.Cases.None.Hits > 0)
            said.Add(CaseWords.Sentence(outlook.Cases, clock));
        said.AddRange(CaseWords.NotFeasible(outlook.Cases));
        said.Add(PlanTexts.CareReached(Ends(outlook.Quantiles, clock)));
        if (Middle(outlook, clock) is { } middle)
            said.Add(middle);
        return said.ToImmutable();
    }

    /// <summary>What a change does, in a sentence.</summary>
    public static string Sentence(WhatIfAnswer answer, Outlook outlook)
    {
        var (later, error) = answer.LaterSeconds;
        var effect =
            !(Math.Abs(later) > 2 * error) || Math.Abs(later) < 60 ? PlanTexts.SameArrival
            : later > 0 ? PlanTexts.LaterBy(Length(Duration.FromSeconds(later)))
            : PlanTexts.SoonerBy(Length(Duration.FromSeconds(-later)));
        var chances = answer.Deadlines.Select(d => PlanTexts.BeforeChance(d.Chance.Deadline.Id, Chance(d.Chance.Before)));
        var range = Ends(answer.Quantiles, ArrivalClock.Of(outlook.Plan));
        var leads =
            answer.Cases.Choice is not null && answer.Cases.Leader is { } leader && leader.Name != outlook.Cases.Leader?.Name
                ? PlanTexts.ThenLeads(leader.Name)
                : "";
        return PlanTexts.Effect(answer.What, effect, string.Join("; ", chances.Prepend(range)), leads);
    }

    /// <summary>A length as people say it: to 5 minutes under 2 hours, 15 under 6, then half hours, whole hours from a day on.</summary>
    public static string Length(Duration length)
    {
        var step = Step(length);
        var minutes = (long)Math.Round(length.TotalMinutes / step) * step;
        var (hours, rest) = (minutes / 60, minutes % 60);
        return hours == 0 ? PlanTexts.Minutes(Math.Max(rest, 1))
            : rest == 0 ? PlanTexts.Hours(hours)
            : PlanTexts.HoursMinutes(hours, rest);
    }

    /// <summary>A chance as a share of ten or a hundred, never none and never all.</summary>
    public static string Chance(ProbabilityEstimate p) =>
        p.Value switch
        {
            < 0.01 => PlanTexts.FewerThanHundredth,
            > 0.99 => PlanTexts.MoreThanHundredths,
            < 0.1 => PlanTexts.OfHundred(Math.Max(1, Whole(100 * p.Value))),
            > 0.9 => PlanTexts.OfHundred(Math.Min(99, Whole(100 * p.Value))),
            _ when Whole(10 * p.Low) == Whole(10 * p.High) => PlanTexts.OfTen(Whole(10 * p.Value)),
            _ => PlanTexts.BetweenTenths((long)Math.Floor(10 * p.Low), (long)Math.Ceiling(10 * p.High)),
        };

    private static long Whole(double share) => (long)Math.Round(share);

    /// <summary>From when to when eight of ten trials arrive.</summary>
    internal static string Ends(ImmutableArray<ArrivalQuantile> quantiles, ArrivalClock clock)
    {
        var (early, late) = (quantiles.First(q => q.P == 0.1).At, quantiles.First(q => q.P == 0.9).At);
        return early is not { } from ? PlanTexts.NotWithin
            : late is not { } to ? PlanTexts.NotBefore(clock.At(from, -1))
            : clock.Between(from, to);
    }

    /// <summary>Nothing where hardly a trial lies about the middle: between two humps it is a time at which nothing arrives.</summary>
    private static string? Middle(Outlook outlook, ArrivalClock clock) =>
        outlook.At(0.5).At is not { } middle ? PlanTexts.MostlyNothing
        : outlook.MiddleIsVoid ? null
        : PlanTexts.AsLikely(clock.At(middle), Length(middle - outlook.Plan.Start));

    private static string? Leading(Outlook outlook)
    {
        var leading = outlook.Drivers.Where(d => d.Share > 0.1 && d.Share > 3 * d.StandardError).Take(3).ToArray();
        return leading.Length == 0
            ? null
            : PlanTexts.Leading(
                string.Join(
                    "; ",
                    leading.Select(d =>
                        PlanTexts.DriverShare(d.What, Math.Round(100 * d.Share).ToString("0", CultureInfo.InvariantCulture))
                    )
                )
            );
    }

    internal static int Step(Duration length) =>
        length.TotalHours switch
        {
            < 0.25 => 1,
            < 2 => 5,
            < 6 => 15,
            < 24 => 30,
            _ => 60,
        };
}
