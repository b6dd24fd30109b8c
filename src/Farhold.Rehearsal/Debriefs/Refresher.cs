using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>When to practise again.</summary>
/// <remarks>
/// Design, after spaced practice of resuscitation (monthly 58 % excellent after a year, quarterly 26, half-yearly 21, yearly 15: Anderson
/// 2019, Resuscitation 135:153) and a tourniquet skill that falls from 88 to 55 % in three to nine months (Goralnick 2018).
/// </remarks>
public static class Refresher
{
    /// <summary>Days after the first time.</summary>
    private static readonly ImmutableArray<int> First = [0, 2, 9, 30];

    private const int Monthly = 30;
    private const int Then = 60;
    private const int Later = 90;

    /// <summary>For a calendar.</summary>
    public static string Summary => DebriefTexts.Refresher;

    public static string Why => DebriefTexts.RefresherWhy;

    /// <summary>The day of the next one.</summary>
    /// <param name="done">Days on which somebody practised, and whether it was all right; at least one.</param>
    /// <exception cref="ArgumentException">Nobody has practised yet.</exception>
    public static LocalDate Next(ImmutableArray<(LocalDate Day, bool Mastered)> done)
    {
        if (done.IsEmpty)
            throw new ArgumentException("There is no first time yet.", nameof(done));
        var ordered = done.OrderBy(d => d.Day).ToArray();
        if (ordered.Length < First.Length)
            return LocalDate.Max(ordered[0].Day.PlusDays(First[ordered.Length]), ordered[^1].Day.PlusDays(1));
        // Of those after the first month: how many in a row, up to the last, were all right.
        var row = ordered.Skip(First.Length - 1).Reverse().TakeWhile(d => d.Mastered).Count();
        return ordered[^1]
            .Day.PlusDays(
                row switch
                {
                    0 => Monthly,
                    1 => Then,
                    _ => Later,
                }
            );
    }

    /// <summary>What stands ahead of somebody who practised on a day for the first time.</summary>
    public static ImmutableArray<LocalDate> Ahead(LocalDate first) => [.. First.Skip(1).Select(d => first.PlusDays(d))];

    /// <summary>How much of a skill is left after some days, 0 to 1.</summary>
    /// <param name="level">At the last practice, 0 to 1.</param>
    /// <remarks>Design: falls towards 0.45 with a time constant of 120 days, which gives what was measured at half a year.</remarks>
    public static double Left(double level, double days)
    {
        const double floor = 0.45;
        return floor + ((level - floor) * Math.Exp(-days / 120));
    }
}
