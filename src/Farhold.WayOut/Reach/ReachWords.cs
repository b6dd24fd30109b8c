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
            var what = measure == ReachMeasure.Median ? ReachTexts.LikelierThanNot : ReachTexts.InOneOfTen;
            said.Add(
                stretches.Length == 0
                    ? ReachTexts.Nowhere(ArrivalWords.Length(limit.After), what)
                    : ReachTexts.PassesOn(
                        ArrivalWords.Length(limit.After),
                        what,
                        Km(stretches.Sum(s => s.LengthM)),
                        Km(last),
                        string.Join(", ", stretches.Select(s => ReachTexts.FromKmToKm(Km(s.FromM), Km(s.ToM))))
                    )
            );
        }

        said.AddRange(profile.Cautions);
        return said.ToImmutable();
    }

    /// <summary>What the route comes to for a trip, which holds no more than <see cref="TripPlan.MostHours"/>.</summary>
    public static string Hours(ReachProfile profile) =>
        profile.HoursToHelp switch
        {
            null => ReachTexts.HoursUnknown,
            > TripPlan.MostHours and var hours => ReachTexts.HoursTooMany(TripPlan.MostHours, Say.Number(hours)),
            { } hours => ReachTexts.HoursUpTo(Say.Number(hours)),
        };

    /// <summary>
    /// Some lines at even distances, and one wherever the best way changes, a limit is crossed, or the furthest place lies.
    /// </summary>
    public static IEnumerable<string> Table(ReachProfile profile)
    {
        yield return ReachTexts.TableHead;
        foreach (var i in Rows(profile))
        {
            var (point, way) = (profile.Points[i], profile.Ways[profile.Points[i].Way]);
            yield return ReachTexts.TableRow(
                Km(point.AlongM).PadLeft(5),
                Time(point.Median).PadRight(10),
                (Time(point.P90) + ")").PadRight(12),
                way.Letter,
                way.Name
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
        return ReachTexts.Furthest(Km(far.AlongM), Time(far.Median), Time(far.P90), Km(near.AlongM), Time(near.Median), Time(near.P90));
    }

    private static string Time(Duration? time) => time is { } known ? ArrivalWords.Length(known) : ReachTexts.NotAtAll;

    private static string Km(double metres) => (metres / 1000).ToString("0.0", CultureInfo.InvariantCulture);
}
