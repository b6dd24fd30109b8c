using NodaTime;

namespace Farhold.WayOut.Reach;

/// <summary>The luck of every trial, drawn once for the whole route, and from it the time along any way from any place.</summary>
/// <remarks>
/// Each way draws from places of its own in the stream, by its position among its kind, so that adding a way leaves the luck of all
/// others as it was. One pace holds for all that a trial covers on foot: it is one party on one day.
/// </remarks>
internal sealed class ReachTrials
{
    private const ulong PerTrial = 4096;
    private const int Shared = 0,
        Pace = 1,
        PackagingAt = 2,
        HandsAt = 3,
        HelicopterAt = 4,
        EndsAt = 8,
        CallAt = 16,
        ExitsAt = 300,
        PickUpsAt = 800;

    private readonly Route route;
    private readonly RouteLine line;
    private readonly DarkClock? dark;
    private readonly Rng rng;
    private readonly Copula copula;
    private readonly Copula weather = new(Plan.UsualWeather);
    private readonly double[] shared,
        setOut,
        pace,
        helicopter;
    private readonly Way[] ways;
    private readonly CarryWork bearers;
    private readonly Dictionary<double, double[]> paces = [];

    public ReachTrials(Route route, RouteLine line, DarkClock? dark, Rng rng, int trials)
    {
        (this.route, this.line, this.dark, this.rng, copula, Trials) = (route, line, dark, rng, new Copula(route.Correlation), trials);
        var people = route.Moving.Bearers ?? LitterTeam.Full;
        bearers = new([], BearerLimits.TireSeconds(people), BearerLimits.LastSeconds(people), 1, null);
        shared = new double[trials];
        for (var t = 0; t < trials; t++)
            shared[t] = NormalScores.Of(Bits(t, Shared));
        pace = Scores(Pace);
        var call = new double[trials];
        for (var c = 0; c < route.Call.Length; c++)
            Add(call, Times(route.Call[c].Time, CallAt + c));
        setOut = new double[trials];
        if (route.Hands is { } hands)
        {
            call.CopyTo(setOut, 0);
            Add(setOut, Times(hands, HandsAt));
        }

        if (route.Moving is { Mode: TravelMode.Carry, Packaging: true })
            Add(setOut, Drawn(TimeLaws.Of(Priors.Packaging), PackagingAt));
        helicopter = Flown(call);
        ways = [.. Ways(call)];
        foreach (var way in ways.Where(w => w.Ready is not null && w.Comes is not null))
            way.Otherwise = BestSure(way.AlongM);
    }

    public int Trials { get; }

    public int WayCount => ways.Length;

    /// <summary>Seconds from the injury to higher care by one way from one place, a helicopter on top if that comes sooner.</summary>
    public void Seconds(int way, double fromM, Span<double> seconds)
    {
        Along(ways[way], fromM, seconds);
        for (var t = 0; t < seconds.Length; t++)
            seconds[t] = Math.Min(seconds[t], helicopter[t]);
    }

    private void Along(Way way, double fromM, Span<double> clocks)
    {
        // Whoever is at the place of a pick-up already need not be moved to it.
        if (way.Ready is not null && Near(way, fromM))
            clocks.Clear();
        else
            setOut.CopyTo(clocks);
        if (way.Otherwise is not { } otherwise)
        {
            Taken(way, fromM, clocks);
            return;
        }

        Reached(way, fromM, clocks);
        var later = new double[clocks.Length];
        for (var t = 0; t < clocks.Length; t++)
            later[t] = Math.Max(clocks[t], setOut[t]);
        Taken(otherwise, way.AlongM, later);
        for (var t = 0; t < clocks.Length; t++)
            clocks[t] = way.Comes![t] ? clocks[t] + way.Onward[t] : later[t];
    }

    /// <summary>By a way that is sure, from wherever the clocks stand to higher care.</summary>
    private void Taken(Way way, double fromM, Span<double> clocks)
    {
        if (way.Ready is not null)
            Reached(way, fromM, clocks);
        else
            Moved(line.Between(fromM, way.AlongM), way.Ground, way.Surface, clocks);
        for (var t = 0; t < clocks.Length; t++)
            clocks[t] += way.Own[t] + way.Onward[t];
    }

    /// <summary>To a pick-up, and until it is there or was due.</summary>
    private void Reached(Way way, double fromM, Span<double> clocks)
    {
        if (!Near(way, fromM))
            Moved(line.Between(fromM, way.AlongM), default, null, clocks);
        for (var t = 0; t < clocks.Length; t++)
            clocks[t] = Math.Max(clocks[t], way.Ready![t]);
    }

    private static bool Near(Way way, double fromM) => Math.Abs(way.AlongM - fromM) < 1;

    /// <summary>Moves every clock over a piece of the route and then the ground of an exit.</summary>
    private void Moved((Stretch Ground, double WalkSeconds) piece, Stretch exit, Surface? surface, Span<double> clocks)
    {
        var moving = route.Moving;
        var other = surface is not null && surface != moving.Surface;
        if (other)
        {
            var first = Median(piece.Ground, piece.WalkSeconds, moving.Surface);
            Advance(first, moving.Surface, clocks, 0);
            Advance(Median(exit, RouteLine.Seconds(moving, exit), surface!), surface!, clocks, first);
            return;
        }

        var all = new Stretch(
            piece.Ground.DistanceKm + exit.DistanceKm,
            piece.Ground.AscentM + exit.AscentM,
            piece.Ground.DescentM + exit.DescentM
        );
        Advance(Median(all, piece.WalkSeconds + RouteLine.Seconds(moving, exit), moving.Surface), moving.Surface, clocks, 0);
    }

    /// <summary>Seconds by day at the middle pace.</summary>
    private double Median(Stretch ground, double walkSeconds, Surface surface)
    {
        var moving = route.Moving;
        if (moving.Mode == TravelMode.Walk)
            return walkSeconds / (surface.SpeedFactor * Snow.SpeedFactor(moving.SnowCm));
        var carry = new LitterCarry(ground, surface, moving.Bearers, SnowCm: moving.SnowCm);
        return carry.EquivalentKm == 0 ? 0 : carry.TimeSeconds().Median;
    }

    private double Sigma(Surface surface) =>
        route.Moving.Mode == TravelMode.Walk
            ? route.Moving.Spread
            : new LitterCarry(default, surface, route.Moving.Bearers, SnowCm: route.Moving.SnowCm).Sigma;

    /// <summary>What the middle pace is to be multiplied by, trial by trial.</summary>
    private double[] Paces(double sigma)
    {
        if (!paces.TryGetValue(sigma, out var made))
            paces[sigma] = made = [.. pace.Select(z => Math.Exp(sigma * z))];
        return made;
    }

    /// <param name="before">The middle of what was carried before on the same way; bearers tire of all of it.</param>
    private void Advance(double median, Surface surface, Span<double> clocks, double before)
    {
        if (median == 0)
            return;
        var factors = Paces(Sigma(surface));
        var carried = route.Moving.Mode == TravelMode.Carry;
        var rate =
            route.Moving.Dark == DarkRule.Stop ? 0
            : carried ? LitterCarry.InTheDark
            : Night.SpeedFactor(surface);
        for (var t = 0; t < clocks.Length; t++)
        {
            var work = carried ? bearers.Tired(before * factors[t], median * factors[t]) : median * factors[t];
            clocks[t] =
                !double.IsFinite(clocks[t] + work) ? double.PositiveInfinity
                : dark is null ? clocks[t] + (work / rate)
                : dark.Advance(clocks[t], work, rate);
        }
    }

    private IEnumerable<Way> Ways(double[] call)
    {
        if (route.End is { } end)
            yield return new(line.LengthM, null, null, null, null, Zeros(), Optional(end.Onward, EndsAt));
        if (route.Back is { } back)
            yield return new(0, null, null, null, null, Zeros(), Optional(back.Onward, EndsAt + 1));
        for (var e = 0; e < route.Exits.Length; e++)
        {
            var exit = route.Exits[e];
            yield return new(
                exit.AlongM,
                exit.Ground ?? default,
                exit.Surface,
                null,
                null,
                Optional(exit.Time, ExitsAt + (2 * e)),
                Optional(exit.Onward, ExitsAt + (2 * e) + 1)
            );
        }

        for (var p = 0; p < route.PickUps.Length; p++)
        {
            var (pickUp, at) = (route.PickUps[p], PickUpsAt + (3 * p));
            var ready = new double[Trials];
            var wait = Times(pickUp.Wait, at);
            for (var t = 0; t < Trials; t++)
                ready[t] = Due(call[t], wait[t], pickUp.Window);
            var comes =
                pickUp.Probability < 1 ? Enumerable.Range(0, Trials).Select(t => Comes(t, at + 2, pickUp.Probability)).ToArray() : null;
            yield return new(pickUp.AlongM, null, null, ready, comes, Zeros(), Optional(pickUp.Onward, at + 1));
        }
    }

    private double[] Flown(double[] call)
    {
        var arrives = new double[Trials];
        Array.Fill(arrives, double.PositiveInfinity);
        if (route.Helicopter is not { } h)
            return arrives;
        var notBefore = h.From is { } from && route.Start is { } start ? Math.Max(0, (from - start).TotalSeconds) : 0;
        var (wait, onward) = (Times(h.Wait, HelicopterAt), Optional(h.Onward, HelicopterAt + 1));
        for (var t = 0; t < Trials; t++)
            if (Comes(t, HelicopterAt + 2, h.Probability))
                arrives[t] = Due(Math.Max(call[t], notBefore), wait[t], h.Window) + onward[t];
        return arrives;
    }

    /// <summary>By daylight only: it sets out in the light and it takes up the casualty in the light.</summary>
    private double Due(double asked, double wait, FlightWindow window) =>
        wait + (window == FlightWindow.Daylight ? dark!.TakeOff(asked, wait) : asked);

    private Way BestSure(double fromM)
    {
        var figures = new double[Trials];
        var (best, least) = (default(Way), double.PositiveInfinity);
        foreach (var way in ways.Where(w => w.Comes is null))
        {
            setOut.CopyTo(figures, 0);
            Taken(way, fromM, figures);
            if (Select.Quantile(figures, 0.9) is var p90 && (best is null || p90 < least))
                (best, least) = (way, p90);
        }

        return best!;
    }

    private double[] Optional(Extent? time, int place) => time is null ? Zeros() : Times(time, place);

    private double[] Zeros() => new double[Trials];

    private double[] Times(Extent time, int place) => Drawn(TimeLaws.Of(time, route.Lambda), place);

    private double[] Drawn(Distribution law, int place)
    {
        var times = law is Constant ? new double[Trials] : Scores(place);
        law.AtScores(times);
        return times;
    }

    private double[] Scores(int place)
    {
        var scores = new double[Trials];
        for (var t = 0; t < Trials; t++)
            scores[t] = copula.Score(shared[t], NormalScores.Of(Bits(t, place)));
        return scores;
    }

    private ulong Bits(int trial, int place) => rng.Bits(((ulong)trial * PerTrial) + (ulong)place);

    /// <summary>One weather decides what comes, and it also slows.</summary>
    private bool Comes(int trial, int place, double probability) =>
        weather.Score(shared[trial], NormalScores.Of(Bits(trial, place))) <= NormalLaw.Quantile(probability);

    private static void Add(double[] to, double[] times)
    {
        for (var t = 0; t < to.Length; t++)
            to[t] += times[t];
    }

    /// <param name="Ready">When a pick-up is there, or was due; null for a way on foot.</param>
    /// <param name="Comes">Whether it comes; null where that is sure.</param>
    /// <param name="Own">Seconds of an exit that is given by time.</param>
    private sealed record Way(double AlongM, Stretch? Exit, Surface? Surface, double[]? Ready, bool[]? Comes, double[] Own, double[] Onward)
    {
        public Stretch Ground => Exit ?? default;

        /// <summary>What the party does at a pick-up that does not come.</summary>
        public Way? Otherwise { get; set; }
    }
}
