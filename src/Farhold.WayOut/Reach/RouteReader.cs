using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace Farhold.WayOut.Reach;

/// <summary>Reads a route and its track, wholly or not at all. Its form is plans/route.schema.json.</summary>
public static class RouteReader
{
    /// <summary>More exits or pick-ups are refused (design).</summary>
    public const int MostWays = 200;

    /// <summary>More points along the route are refused (design).</summary>
    public const int MostPoints = 10_000;

    /// <param name="read">The track the route names, or why there is none.</param>
    public static Read<Route> Read(ReadOnlyMemory<byte> utf8, string file, Func<string, Read<TrackFile>> read)
    {
        var against = ImmutableArray<Refusal>.Empty;
        var route = PlanReader
            .Json(utf8, file)
            .Whole(
                "a route",
                (json, root) =>
                {
                    var fields = new LocatedObject(json, root, "a route");
                    fields.Required("track", "the name of the GPX file of the route");
                    (var track, against) = fields.Text("track", 500) is { } named ? Track(read(named)) : (null, []);
                    return new RouteParts(fields, track).Route();
                }
            );
        return against.IsEmpty ? route : new Read<Route>.Refused([.. (route as Read<Route>.Refused)?.Refusals ?? [], .. against]);
    }

    private static (TrackFile? Track, ImmutableArray<Refusal> Refusals) Track(Read<TrackFile> read)
    {
        switch (read)
        {
            case Read<TrackFile>.Usable(var track):
                ImmutableArray<Refusal> against = [.. track.AgainstWalking()];
                return against.IsEmpty ? (track, against) : (null, against);
            case Read<TrackFile>.Refused(var why):
                return (null, why);
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }
}

/// <summary>Reads the parts of a route. Without a usable track it still finds every other fault.</summary>
internal sealed class RouteParts(LocatedObject fields, TrackFile? track)
{
    private static readonly string[] SureEnds = ["back", "end", "exits"];
    private static readonly string[] Measures = ["distanceKm", "ascentM", "descentM", "terrain"];

    private static readonly (string, Meaning<TravelMode>)[] OnFoot = Modes(TravelMode.Walk, TravelMode.Carry);
    private static readonly (string, Meaning<TravelMode>)[] Comes = Modes(TravelMode.Vehicle, TravelMode.Boat, TravelMode.Aircraft);

    /// <summary>The route evened out, for placing exits on it.</summary>
    private RouteLine? line;

    public Route? Route()
    {
        fields.Text("$schema", PlanReader.LongestNote);
        fields.Text("note", PlanReader.LongestNote);
        var (id, title) = (fields.Text("id", PlanReader.LongestName), fields.Text("title", PlanReader.LongestName));
        var spacing = fields.Number("spacingM", 10, 10_000, " m") ?? Farhold.WayOut.Reach.Route.UsualSpacingM;
        var (start, zone) = (fields.Instant("start"), fields.Zone());
        var correlation = fields.Number("correlation", 0, 1) ?? Plan.UsualCorrelation;
        var lambda = fields.Number("lambda", 0, 100) ?? Plan.ClassicalLambda;
        var moving = Moving();
        if (track is not null)
        {
            if (track.Metres / spacing > RouteReader.MostPoints)
                fields.Refuse(
                    "spacingM",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"the track of {track.Metres / 1000:0} km would have more than {RouteReader.MostPoints} points: set "
                            + $"spacingM wider"
                    )
                );
            else
                line = RouteLine.Of(track.Track, spacing, moving);
        }

        var call = Items("call", "a step of the call", Step).ToImmutableArray();
        var hands = Time(fields, "hands");
        var (back, end) = (EndOf("back", ReachTexts.BackToStart), EndOf("end", ReachTexts.OnToEnd));
        var exits = Items("exits", "an exit", Exit).ToImmutableArray();
        var pickUps = Items("pickUps", "a pick-up", PickUpOf).ToImmutableArray();
        var helicopter = HelicopterOf();
        fields.Done();
        if (!SureEnds.Any(fields.Has) && !pickUps.Any(p => p.Probability == 1) && fields.File.Refusals.Count == 0)
            fields.Refuse("pickUps", "a route with no sure end: give end, back, an exit, or a pick-up that is sure to come");
        if (start is null && !fields.Has("start") && WaitsForLight(moving, pickUps, helicopter))
            fields.Refuse("start", "something here waits for daylight, so the route needs start, when the casualty is assumed");
        return track is null
            ? null
            : new(id, title, track, spacing, start, zone, correlation, lambda, moving, call, hands, back, end, exits, pickUps, helicopter);
    }

    private static bool WaitsForLight(Moving moving, ImmutableArray<PickUp> pickUps, Helicopter? helicopter) =>
        moving.Dark == DarkRule.Stop || helicopter?.Window == FlightWindow.Daylight || pickUps.Any(p => p.Window == FlightWindow.Daylight);

    private Moving Moving()
    {
        fields.Required("mode", "walk or carry, how a casualty would be moved");
        var mode = fields.Word("mode", OnFoot)?.Value;
        var surface = fields.Word("terrain", Surfaces.All.Select(s => (s.Id, s))) ?? Surfaces.Path;
        var bearers = fields.Whole("bearers", LitterTeam.Fewest, TravelReader.MostBearers, " people");
        var snow = fields.Number("snowCm", 0, 200, " cm") ?? 0;
        var dark = fields.Word("dark", TravelReader.DarkRules)?.Value ?? DarkRule.Allowed;
        var walk = mode is null or TravelMode.Walk;
        var rule = walk ? fields.Word("rule", PaceRules.All.Select(r => (r.Id, r))) : null;
        var spread = walk ? fields.Number("spread", 0, 2) : null;
        var packaging = mode is null or TravelMode.Carry ? fields.Flag("packaging") : null;
        return new(
            mode ?? TravelMode.Carry,
            surface,
            bearers,
            snow,
            rule ?? PaceRules.Tired,
            spread ?? PlanCompiler.UsualSpread,
            dark,
            packaging ?? mode != TravelMode.Walk
        );
    }

    private IEnumerable<T> Items<T>(string name, string what, Func<LocatedObject, int, T?> read)
        where T : class
    {
        if (fields.Any(name) is not { } json)
            return [];
        if (json.Kind != JsonValueKind.Array || json.Items.Length is 0 or > RouteReader.MostWays)
        {
            fields.File.RefuseValue(json, name, $"a list of 1 to {RouteReader.MostWays}, or left out");
            return [];
        }

        return [.. json.Items.Select((item, i) => Whole(new(fields.File, item, what), i)).OfType<T>()];

        T? Whole(LocatedObject item, int i)
        {
            if (!item.IsObject)
                return null;
            var value = read(item, i);
            item.Done();
            return value;
        }
    }

    private NamedTime? Step(LocatedObject item, int i)
    {
        var name = item.Text("name", PlanReader.LongestName) ?? ReachTexts.CallStep(i + 1);
        item.Text("note", PlanReader.LongestNote);
        return TimeFields.Either(item) is { } time ? new(name, time) : null;
    }

    private static Extent? Time(LocatedObject of, string name)
    {
        if (of.Object(name) is not { IsObject: true } item)
            return null;
        item.Text("note", PlanReader.LongestNote);
        var time = TimeFields.Either(item);
        item.Done();
        return time;
    }

    private static Extent? Onward(LocatedObject item) => Time(item, "onward");

    private WayEnd? EndOf(string name, string usual)
    {
        if (fields.Object(name) is not { IsObject: true } item)
            return null;
        item.Text("note", PlanReader.LongestNote);
        var end = new WayEnd(item.Text("name", PlanReader.LongestName) ?? usual, Onward(item));
        item.Done();
        return end;
    }

    private SideExit? Exit(LocatedObject item, int i)
    {
        var name = item.Text("name", PlanReader.LongestName) ?? ReachTexts.Exit(i + 1);
        item.Text("note", PlanReader.LongestNote);
        var (place, along) = Spot(item);
        var onward = Onward(item);
        var timed = TimeFields.HasThree(item) || TimeFields.HasTenths(item);
        var measured = Measures.Any(item.Has);
        if (timed && measured)
            item.Refuse(Measures.First(item.Has), "an exit has either a distance or a time of its own");
        var time = timed ? TimeFields.Either(item) : null;
        if (!timed)
            item.Required("distanceKm", "a number of kilometres from the route to the foot of the exit, or a time given in its place");
        var km = item.Number("distanceKm", 0, 5000, " km");
        var (up, down) = (item.Number("ascentM", 0, 50_000, " m"), item.Number("descentM", 0, 50_000, " m"));
        if (!timed)
            TravelReader.Steep(item, km, up, down);
        var surface = item.Word("terrain", Surfaces.All.Select(s => (s.Id, s)));
        return place is { } at && (time is not null || km is not null)
            ? new(name, at, along, km is { } length && time is null ? new Stretch(length, up ?? 0, down ?? 0) : null, surface, time, onward)
            : null;
    }

    private PickUp? PickUpOf(LocatedObject item, int i)
    {
        var name = item.Text("name", PlanReader.LongestName) ?? ReachTexts.PickUp(i + 1);
        item.Text("note", PlanReader.LongestNote);
        item.Required("mode", "one of vehicle, boat, aircraft");
        item.Required("wait", "the time from the call until it is there");
        var (place, along) = Spot(item);
        var mode = item.Word("mode", Comes)?.Value;
        var probability = item.Number("probability", 0, 1);
        var window = item.Word("window", TravelReader.Windows)?.Value ?? FlightWindow.AnyHour;
        var wait = Time(item, "wait");
        var onward = Onward(item);
        return place is { } at && mode is { } by && wait is not null
            ? new(name, at, along, by, item.Has("probability") ? probability ?? 0 : 1, window, wait, onward)
            : null;
    }

    private Helicopter? HelicopterOf()
    {
        if (fields.Object("helicopter") is not { IsObject: true } item)
            return null;
        item.Text("note", PlanReader.LongestNote);
        item.Required("probability", "a number from 0 to 1, how likely it comes at all");
        item.Required("wait", "the time from the call until it has the casualty");
        var probability = item.Number("probability", 0, 1);
        var from = item.Instant("from");
        if (from is not null && !fields.Has("start"))
            item.Refuse("from", "from counts from no moment: give the route a start");
        var window = item.Word("window", TravelReader.Windows)?.Value ?? FlightWindow.AnyHour;
        var wait = Time(item, "wait");
        var onward = Onward(item);
        item.Done();
        return probability is { } p && wait is not null ? new(p, from, window, wait, onward) : null;
    }

    private (GeoPoint? Place, double AlongM) Spot(LocatedObject item)
    {
        item.Required("at", "where it leaves or meets the route, as lat and lon");
        if (item.Place("at") is not { } read)
            return (null, 0);
        var place = new GeoPoint(read.LatDeg, read.LonDeg);
        if (line is null)
            return (place, 0);
        var spot = line.Nearest(place);
        if (spot.OffM > Farhold.WayOut.Reach.Route.FurthestOffM)
        {
            var swapped =
                Math.Abs(read.LonDeg) <= 90 && line.Nearest(new(read.LonDeg, read.LatDeg)).OffM <= Farhold.WayOut.Reach.Route.FurthestOffM;
            item.Refuse(
                "at",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"this place lies {spot.OffM / 1000:0.0} km off the route; at most {Farhold.WayOut.Reach.Route.FurthestOffM:0} m "
                        + $"are taken"
                ) + (swapped ? "; with lat and lon exchanged it lies on it" : "")
            );
        }

        return (place, spot.AlongM);
    }

    private static (string, Meaning<TravelMode>)[] Modes(params ReadOnlySpan<TravelMode> some)
    {
        var words = new List<(string, Meaning<TravelMode>)>();
        foreach (var mode in some)
            words.Add((TravelReader.Word(mode), new(mode)));
        return [.. words];
    }
}
