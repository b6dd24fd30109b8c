using System.Diagnostics;
using System.Globalization;
using System.Text;
using Farhold.Xml;
using NodaTime;

// Measures the way out on this machine. The plan is the one of numpy_way.py: six lognormal legs that share half their luck.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

// Arguments: how many legs; "short" leaves growth and reach out.
var legs = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 6;

static CompiledPlan Plan(int legs)
{
    var text = string.Join(",", Enumerable.Range(1, legs).Select(i => $"{{\"mode\":\"wait\",\"p10\":{10 * i},\"p90\":{40 * i}}}"));
    var read = PlanReader.Read(Encoding.UTF8.GetBytes($"{{\"start\":\"2031-05-04T08:00:00Z\",\"legs\":[{text}]}}"), "bench");
    return CompiledPlan.Of(((Read<Plan>.Usable)read).Value, null);
}

// The least of several runs: on a machine that others use too, what is above it is theirs.
static double Best(int runs, bool wall, Action work)
{
    var best = double.PositiveInfinity;
    for (var i = 0; i < runs; i++)
    {
        var (watch, before) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        work();
        best = Math.Min(best, (wall ? watch.Elapsed : Environment.CpuUsage.TotalTime - before).TotalSeconds);
    }

    return best;
}

static double OnOne(CompiledPlan plan, int trials, bool wall = false, int runs = 40) =>
    Best(runs, wall, () => new Simulation(plan, new Rng(1), SamplingLimits.Exactly(trials)).Run());

static string Track(double km)
{
    var text = new StringBuilder("<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>\n");
    for (var i = 0; i <= km * 40; i++)
        text.Append(
            CultureInfo.InvariantCulture,
            $"<trkpt lat=\"{0.00001 * (i % 7):F6}\" lon=\"{i * 0.025 / 111.32:F7}\"><ele>{400 + (350 * Math.Sin(i / 90.0)):F1}</ele>"
                + $"</trkpt>\n"
        );
    return text.Append("</trkseg></trk></gpx>").ToString();
}

static Route Route(double km, double spacingM)
{
    const string time = """{"p10":40,"p50":60,"p90":110}""";
    var exits = string.Join(
        ",",
        Enumerable
            .Range(1, 3)
            .Select(i =>
                FormattableString.Invariant(
                    $"{{\"at\":{{\"lat\":0,\"lon\":{i * km / 4 / 111.32:F5}}},\"distanceKm\":3,\"descentM\":400,\"onward\":{time}}}"
                )
            )
    );
    var json = FormattableString.Invariant(
        $"{{\"track\":\"t.gpx\",\"mode\":\"carry\",\"bearers\":12,\"spacingM\":{spacingM},\"start\":\"2031-05-04T12:00:00Z\",\"call\":[{time}],\"hands\":{time},\"end\":{{\"onward\":{time}}},\"back\":{{\"onward\":{time}}},\"exits\":[{exits}],\"pickUps\":[{{\"at\":{{\"lat\":0,\"lon\":{km / 3 / 111.32:F5}}},\"mode\":\"vehicle\",\"probability\":0.8,\"wait\":{time},\"onward\":{time}}}],\"helicopter\":{{\"probability\":0.6,\"window\":\"daylight\",\"wait\":{time},\"onward\":{time}}}}}"
    );
    var track = Track(km);
    return RouteReader.Read(
        Encoding.UTF8.GetBytes(json),
        "bench",
        XmlTracks.In(_ => new Read<ReadOnlyMemory<byte>>.Usable(Encoding.UTF8.GetBytes(track)))
    ) switch
    {
        Read<Route>.Usable(var route) => route,
        Read<Route>.Refused(var why) => throw new InvalidOperationException(string.Join("\n", why)),
        _ => throw new UnreachableException(),
    };
}

static double Reach(double km, double spacingM, int trials, int runs = 3, bool wall = false)
{
    var route = Route(km, spacingM);
    var nights = ReachProfile.NightsOf(route);
    return Best(
        runs,
        wall,
        () =>
            ReachProfile.Of(
                route,
                nights,
                [new("window-2h", Duration.FromHours(2)), new("limit-6h", Duration.FromHours(6))],
                new Rng(1),
                trials
            )
    );
}

const int Trials = 262_144;
int[] manyTrials = [16_384, 65_536, 262_144, 1_048_576],
    manyLegs = [1, 6, 24, 96],
    reachTrials = [500, 1000, 2000, 4000];
double[] spacings = [800, 400, 200, 100, 50];
var plan = Plan(legs);

// Until the compiler has made its best of the inner loops.
for (var warm = Stopwatch.StartNew(); warm.Elapsed.TotalSeconds < 3; )
    OnOne(plan, 65_536, runs: 1);
Say($"{legs} legs, {Trials} trials, one core, processor time", OnOne(plan, Trials), legs);
Say($"{legs} legs, {Trials} trials, one core, wall", OnOne(plan, Trials, wall: true), legs);
Console.WriteLine($"{legs} legs, 10000 trials, one core, processor time: {OnOne(plan, 10_000, runs: 400) * 1000:0.000} ms");
Console.WriteLine($"{legs} legs, 10000 trials, one core, wall: {OnOne(plan, 10_000, wall: true, runs: 400) * 1000:0.000} ms");
if (args.Contains("short"))
    return;
Console.WriteLine("growth with trials (6 legs, ms of processor): " + Row(manyTrials, n => OnOne(Plan(6), n, runs: 5)));
Console.WriteLine("growth with legs (65536 trials, ms of processor): " + Row(manyLegs, n => OnOne(Plan(n), 65_536, runs: 5)));
Reach(6, 100, 500);
Console.WriteLine(
    $"reach, 60 km at 100 m, 6 ways and a helicopter, 2000 trials: {Reach(60, 100, 2000, 5) * 1000:0} ms of processor, "
        + $"{Reach(60, 100, 2000, 5, wall: true) * 1000:0} ms wall"
);
Console.WriteLine(
    "growth with points (2000 trials, ms of processor): "
        + string.Join(", ", spacings.Select(s => $"{(60_000 / s) + 1:0}: {Reach(60, s, 2000) * 1000:0}"))
);
Console.WriteLine("growth with trials (601 points, ms of processor): " + Row(reachTrials, n => Reach(60, 100, n)));

static string Row(int[] sizes, Func<int, double> seconds) => string.Join(", ", sizes.Select(n => $"{n}: {seconds(n) * 1000:0.0}"));

static void Say(string what, double seconds, int legs) =>
    Console.WriteLine($"{what}: {seconds * 1000:0.0} ms, {legs * (double)Trials / seconds / 1e6:0.0} million leg samples/s");
