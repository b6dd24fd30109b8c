using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Reach;

/// <summary>A reach profile in plain words and as a table.</summary>
public static class ReachWords
{
    private const int EvenRows = 12;

    /// <summary>The worst place first, then each limit, then the cautions.</summary>
    public static ImmutableArray<string> Sentences(ReachProfile profile)
    {
        var said = ImmutableArray.CreateBuilder<string>();
        var last = profile.Points[^1].AlongM;
        said.Add(Range(profile));
        foreach (var limit in profile.Limits)
        foreach (var measure in Enum.GetValues<ReachMeasure>())
        {
            var stretches = profile.Stretches.Where(s => s.Limit == limit && s.Measure == measure).ToArray();
            var what = measure == ReachMeasure.Median ? "more likely than not" : "in more than one of ten cases";
            said.Add(
                stretches.Length == 0
                    ? $"Nowhere would a tourniquet pass {ArrivalWords.Length(limit.After)} {what}."
                    : $"A tourniquet would pass {ArrivalWords.Length(limit.After)} {what} on {Km(stretches.Sum(s => s.LengthM))} of "
                        + $"{Km(last)} km: "
                        + string.Join(", ", stretches.Select(s => $"km {Km(s.FromM)} to {Km(s.ToM)}"))
                        + "."
            );
        }

        said.AddRange(profile.Cautions);
        return said.ToImmutable();
    }

    /// <summary>What the route comes to for a trip, which holds no more than <see cref="TripPlan.MostHours"/>.</summary>
    public static string Hours(ReachProfile profile) =>
        profile.HoursToHelp switch
        {
            null =>
                "From some place of this route fewer than nine in ten reach higher care within 60 days: how long help takes is not known.",
            > TripPlan.MostHours and var hours =>
                $"By this route help takes more than {TripPlan.MostHours} h from the worst place: {Say.Number(hours)} h. "
                    + $"The kit list counts {TripPlan.MostHours} h at most, which is then too little.",
            { } hours => $"By this route help takes up to {Say.Number(hours)} h from the worst place.",
        };

    /// <summary>
    /// Some lines at even distances, and one wherever the best way changes, a limit is crossed, or the furthest place lies.
    /// </summary>
    public static IEnumerable<string> Table(ReachProfile profile)
    {
        yield return "   km  higher care within           best way from there";
        foreach (var i in Rows(profile))
        {
            var (point, way) = (profile.Points[i], profile.Ways[profile.Points[i].Way]);
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{point.AlongM / 1000, 5:0.0}  {Time(point.Median), -10} (9 in 10: {Time(point.P90) + ")", -12} {way.Letter}: {way.Name}"
            );
        }
    }

    public static string Kind(ReachWayKind kind) =>
        kind switch
        {
            ReachWayKind.End => "end",
            ReachWayKind.Back => "back",
            ReachWayKind.Exit => "exit",
            _ => "pick-up",
        };

    internal static string Measure(ReachMeasure measure) => measure == ReachMeasure.Median ? "median" : "p90";

    private static IEnumerable<int> Rows(ReachProfile profile)
    {
        var points = profile.Points;
        var furthest = points.IndexOf(points.MaxBy(p => p.P90 ?? Duration.MaxValue)!);
        var even = Math.Max(1, points[^1].AlongM / EvenRows);
        for (var i = 0; i < points.Length; i++)
            if (
                i == 0
                || (int)(points[i].AlongM / even) != (int)(points[i - 1].AlongM / even)
                || i == points.Length - 1
                || i == furthest
                || points[i].Way != points[i - 1].Way
                || profile.Limits.Any(limit =>
                    Enum.GetValues<ReachMeasure>()
                        .Any(m => ReachStretches.Over(points[i], m, limit) != ReachStretches.Over(points[i - 1], m, limit))
                )
            )
                yield return i;
    }

    private static string Range(ReachProfile profile)
    {
        var far = profile.Points.MaxBy(p => p.P90 ?? Duration.MaxValue)!;
        var near = profile.Points.MinBy(p => p.P90 ?? Duration.MaxValue)!;
        return $"Higher care is furthest at km {Km(far.AlongM)}: {Time(far.Median)} in the middle of cases, {Time(far.P90)} in nine "
            + $"of ten; "
            + $"nearest at km {Km(near.AlongM)}: {Time(near.Median)} and {Time(near.P90)}.";
    }

    private static string Time(Duration? time) => time is { } known ? ArrivalWords.Length(known) : "not at all";

    private static string Km(double metres) => (metres / 1000).ToString("0.0", CultureInfo.InvariantCulture);
}
