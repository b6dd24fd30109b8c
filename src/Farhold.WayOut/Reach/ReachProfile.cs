using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Reach;

/// <summary>Time to higher care from one place of the route, by the best way from there.</summary>
/// <param name="Way">Index among the ways: the one of least P90.</param>
/// <param name="Median">Since the injury; null where not even half arrive within 60 days.</param>
/// <param name="P90">Beaten in nine of ten trials; null where fewer arrive within 60 days.</param>
public sealed record ReachPoint(double AlongM, GeoPoint Place, double? ElevationM, int Way, Duration? Median, Duration? P90);

public enum ReachMeasure
{
    Median,
    P90,
}

/// <summary>Where, along the route, a time is over a limit; reaching out to the nearest points that are within it.</summary>
public sealed record ReachStretch(ReachMeasure Measure, LimitAfter Limit, double FromM, double ToM, int First, int Last)
{
    public double LengthM => ToM - FromM;
}

/// <summary>How far from higher care a planned route leads.</summary>
/// <param name="Cautions">Sentences to be shown with any of it.</param>
public sealed record ReachProfile(
    Route Route,
    ImmutableArray<ReachWay> Ways,
    ImmutableArray<ReachPoint> Points,
    ImmutableArray<LimitAfter> Limits,
    ImmutableArray<ReachStretch> Stretches,
    ImmutableArray<Basis> Rests,
    ImmutableArray<string> Cautions,
    Rng Rng,
    int Trials
)
{
    /// <summary>Trials where nobody asks for more; P90 then has a 95 % interval of about 5 % of the time (design).</summary>
    public const int UsualTrials = 2000;

    private const int PointsPerPiece = 16;

    /// <summary>
    /// Hours to higher care from the worst place of the route, P90, rounded up. Null where from any place fewer than nine in ten
    /// arrive within 60 days: the worst place is then not known.
    /// </summary>
    public double? HoursToHelp => Points.All(p => p.P90 is not null) ? Math.Ceiling(Points.Max(p => p.P90!.Value).TotalHours) : null;

    /// <param name="limits">Since tightening, as <see cref="LimbDeadlines.Of(ClockLimits)"/> gives them.</param>
    /// <param name="darkness">Along the route; null where the route has no start.</param>
    /// <exception cref="ArgumentException">Something waits for light and no darkness is given.</exception>
    public static ReachProfile Of(
        Route route,
        Darkness? darkness,
        IEnumerable<LimitAfter> limits,
        Rng rng,
        int trials = UsualTrials,
        CancellationToken cancellation = default
    )
    {
        ReachProfile? profile = null;
        foreach (var piece in Pieces(route, darkness, limits, rng, trials))
        {
            cancellation.ThrowIfCancellationRequested();
            profile = piece;
        }

        return profile!;
    }

    /// <summary>The nights at the start of the route; null where it does not say when that is.</summary>
    public static Darkness? NightsOf(Route route) => route.Start is { } start ? Nightfall.At(route.Track.Start, start) : null;

    /// <summary>The same in small pieces of work: nothing after each but the last, so that a screen can breathe between them.</summary>
    public static IEnumerable<ReachProfile?> Pieces(
        Route route,
        Darkness? darkness,
        IEnumerable<LimitAfter> limits,
        Rng rng,
        int trials = UsualTrials
    )
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        if (route.NeedsLight && (darkness is null || route.Start is null))
            throw new ArgumentException(
                "Something of this route waits for light: give its start and the darkness along it.",
                nameof(darkness)
            );
        var line = RouteLine.Of(route.Track.Track, route.SpacingM, route.Moving);
        var luck = new ReachTrials(route, line, route.Start is { } start ? darkness?.Against(start) : null, rng, trials);
        yield return null;
        var points = ImmutableArray.CreateBuilder<ReachPoint>(line.Points.Length);
        var scratch = new double[2][] { new double[trials], new double[trials] };
        for (var i = 0; i < line.Points.Length; i++)
        {
            points.Add(Best(luck, line, i, scratch));
            if (i % PointsPerPiece == 0)
                yield return null;
        }

        ImmutableArray<LimitAfter> asked = [.. limits];
        var ways = WaysOf(route, line);
        yield return new(
            route,
            ways,
            points.ToImmutable(),
            asked,
            ReachStretches.Of(points, asked),
            ReachBasis.Rests(route),
            ReachBasis.Cautions(route, darkness),
            rng,
            trials
        );
    }

    /// <summary>One way is taken for all trials: whoever sets out does not know their luck.</summary>
    private static ReachPoint Best(ReachTrials luck, RouteLine line, int point, double[][] scratch)
    {
        var (seconds, kept) = (scratch[0], scratch[1]);
        var (way, p90, from) = (-1, double.PositiveInfinity, line.AlongM(point));
        for (var w = 0; w < luck.WayCount; w++)
        {
            luck.Seconds(w, from, seconds);
            var late = Select.Quantile(seconds, 0.9);
            if (way >= 0 && late >= p90)
                continue;
            (way, p90, seconds, kept) = (w, late, kept, seconds);
        }

        var median = Select.Quantile(kept, 0.5);
        var place = line.Points[point];
        return new(from, place.Place, place.ElevationM, way, Known(median), Known(p90));
    }

    private static Duration? Known(double seconds) => double.IsFinite(seconds) ? Duration.FromSeconds(seconds) : null;

    private static ImmutableArray<ReachWay> WaysOf(Route route, RouteLine line)
    {
        var ways = ImmutableArray.CreateBuilder<ReachWay>();
        if (route.End is { } end)
            Add(end.Name, ReachWayKind.End, line.Points[^1].Place, line.LengthM);
        if (route.Back is { } back)
            Add(back.Name, ReachWayKind.Back, line.Points[0].Place, 0);
        foreach (var exit in route.Exits)
            Add(exit.Name, ReachWayKind.Exit, exit.Place, exit.AlongM);
        foreach (var pickUp in route.PickUps)
            Add(pickUp.Name, ReachWayKind.PickUp, pickUp.Place, pickUp.AlongM);
        return ways.ToImmutable();

        void Add(string name, ReachWayKind kind, GeoPoint place, double along) =>
            ways.Add(new(Letter(ways.Count), name, kind, place, along));
    }

    private static string Letter(int index) => (index < 26 ? "" : Letter((index / 26) - 1)) + (char)('A' + (index % 26));
}
