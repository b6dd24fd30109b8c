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
        var complaints = new Complaints(file, utf8);
        var (json, at, reason) = LocatedText.Parse(utf8.Span, PlanReader.MaxDepth);
        if (json is null)
        {
            complaints.Add(at, Complaints.Sentence(reason!));
            return new Read<Route>.Refused(complaints.InOrder());
        }

        var fields = new PlacedFields(json, complaints, "A route");
        if (!fields.IsObject)
            return new Read<Route>.Refused(complaints.InOrder());
        fields.Missing("track", "the GPX file of the route.");
        var named = fields.Text("track", 500);
        var (track, refusals) = named is null ? (null, []) : Track(read(named));
        var route = new RouteParts(fields, complaints, track).Route();
        return route is null || complaints.Any || refusals.Length > 0
            ? new Read<Route>.Refused([.. complaints.InOrder(), .. refusals])
            : new Read<Route>.Usable(route);
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
internal sealed class RouteParts(PlacedFields fields, Complaints complaints, TrackFile? track)
{
    private static readonly string[] sureEnds = ["back", "end", "exits"];
    private static readonly string[] measures = ["distanceKm", "ascentM", "descentM", "terrain"];

    private static readonly (string, Meaning<TravelMode>)[] onFoot = Modes(TravelMode.Walk, TravelMode.Carry);
    private static readonly (string, Meaning<TravelMode>)[] comes = Modes(TravelMode.Vehicle, TravelMode.Boat, TravelMode.Aircraft);

    /// <summary>The route evened out, for placing exits on it.</summary>
    private RouteLine? line;

    public Route? Route()
    {
        fields.Text("$schema");
        fields.Text("note");
        var (id, title) = (fields.Text("id", 200), fields.Text("title", 200));
        var spacing = fields.Number("spacingM", 10, 10_000, " m") ?? Farhold.WayOut.Reach.Route.UsualSpacingM;
        var (start, zone) = (fields.Moment("start"), fields.Zone());
        var correlation = fields.Number("correlation", 0, 1, "") ?? Plan.UsualCorrelation;
        var lambda = fields.Number("lambda", 0, 100, "") ?? Plan.ClassicalLambda;
        var moving = Moving();
        if (track is not null)
        {
            if (track.Metres / spacing > RouteReader.MostPoints)
                fields.Refuse("spacingM", string.Create(CultureInfo.InvariantCulture,
                    $"The track of {track.Metres / 1000:0} km would have more than {RouteReader.MostPoints} points: set 'spacingM' wider."));
            else
                line = RouteLine.Of(track.Track, spacing, moving);
        }

        var call = Items("call", "A step of 'call'", Step).ToImmutableArray();
        var hands = Time("hands");
        var (back, end) = (EndOf("back", "back to the start"), EndOf("end", "on to the end"));
        var exits = Items("exits", "An exit", Exit).ToImmutableArray();
        var pickUps = Items("pickUps", "A pick-up", PickUpOf).ToImmutableArray();
        var helicopter = HelicopterOf();
        fields.Done("a route");
        if (!sureEnds.Any(fields.Has) && !pickUps.Any(p => p.Probability == 1) && !complaints.Any)
            fields.Refuse("pickUps", "A route with no sure end: give 'end', 'back', an exit, or a pick-up that is sure to come.");
        if (start is null && !fields.Has("start") && WaitsForLight(moving, pickUps, helicopter))
            fields.Refuse("start", "Something here waits for daylight, so the route needs 'start', when the casualty is assumed.");
        return track is null ? null
            : new(id, title, track, spacing, start, zone, correlation, lambda, moving, call, hands, back, end, exits, pickUps, helicopter);
    }

    private static bool WaitsForLight(Moving moving, ImmutableArray<PickUp> pickUps, Helicopter? helicopter) =>
        moving.Dark == DarkRule.Stop || helicopter?.Window == FlightWindow.Daylight || pickUps.Any(p => p.Window == FlightWindow.Daylight);

    private Moving Moving()
    {
        fields.Missing("mode", "'walk' or 'carry': how a casualty would be moved.");
        var mode = fields.Word("mode", onFoot)?.Value;
        var surface = fields.Word("terrain", Surfaces.All.Select(s => (s.Id, s))) ?? Surfaces.Path;
        var bearers = fields.Whole("bearers", LitterTeam.Fewest, 200, " people");
        var snow = fields.Number("snowCm", 0, 200, " cm") ?? 0;
        var dark = fields.Word("dark", TravelReader.DarkRules)?.Value ?? DarkRule.Allowed;
        var walk = mode is null or TravelMode.Walk;
        var rule = walk ? fields.Word("rule", PaceRules.All.Select(r => (r.Id, r))) : null;
        var spread = walk ? fields.Number("spread", 0, 2, "") : null;
        var packaging = mode is null or TravelMode.Carry ? fields.Flag("packaging") : null;
        return new(
            mode ?? TravelMode.Carry, surface, bearers, snow, rule ?? PaceRules.Default, spread ?? PlanCompiler.UsualSpread,
            dark, packaging ?? mode != TravelMode.Walk);
    }

    private IEnumerable<T> Items<T>(string name, string what, Func<PlacedFields, int, T?> read)
        where T : class
    {
        if (fields.Any(name) is not { } json)
            return [];
        if (json.Kind != JsonValueKind.Array || json.Items.Length > RouteReader.MostWays)
        {
            complaints.Add(json.Offset, $"'{name}' is a list in square brackets of at most {RouteReader.MostWays}.");
            return [];
        }

        if (json.Items.Length == 0)
            complaints.Add(json.Offset, $"'{name}' is empty: leave it out.");
        return [.. json.Items.Select((item, i) => Whole(new PlacedFields(item, complaints, what), i)).OfType<T>()];

        T? Whole(PlacedFields item, int i)
        {
            if (!item.IsObject)
                return null;
            var value = read(item, i);
            item.Done(what.ToLowerInvariant());
            return value;
        }
    }

    private NamedTime? Step(PlacedFields item, int i)
    {
        var name = item.Text("name", 200) ?? $"step {i + 1} of the call";
        item.Text("note");
        return TimeFields.Either(item) is { } time ? new(name, time) : null;
    }

    private Extent? Time(string name) => fields.Any(name) is { } json ? Time(json, name) : null;

    private Extent? Time(Located json, string name)
    {
        var item = new PlacedFields(json, complaints, $"'{name}'");
        item.Text("note");
        var time = TimeFields.Either(item);
        if (item.IsObject)
            item.Done($"'{name}'");
        return time;
    }

    private Extent? Onward(PlacedFields item) => item.Any("onward") is { } json ? Time(json, "onward") : null;

    private WayEnd? EndOf(string name, string usual)
    {
        if (fields.Any(name) is not { } json)
            return null;
        var item = new PlacedFields(json, complaints, $"'{name}'");
        if (!item.IsObject)
            return null;
        item.Text("note");
        var end = new WayEnd(item.Text("name", 200) ?? usual, Onward(item));
        item.Done($"'{name}'");
        return end;
    }

    private SideExit? Exit(PlacedFields item, int i)
    {
        var name = item.Text("name", 200) ?? $"exit {i + 1}";
        item.Text("note");
        var (place, along) = Spot(item);
        var onward = Onward(item);
        var timed = TimeFields.HasThree(item) || TimeFields.HasTenths(item);
        var measured = measures.Any(item.Has);
        if (timed && measured)
            item.Refuse(measures.First(item.Has), "An exit has either a distance or a time of its own.");
        var time = timed ? TimeFields.Either(item) : null;
        if (!timed)
            item.Missing("distanceKm", "kilometres from the route to the foot of the exit, or a time as low, likely and high.");
        var km = item.Number("distanceKm", 0, 5000, " km");
        var (up, down) = (item.Number("ascentM", 0, 50_000, " m"), item.Number("descentM", 0, 50_000, " m"));
        var surface = item.Word("terrain", Surfaces.All.Select(s => (s.Id, s)));
        return place is { } at && (time is not null || km is not null)
            ? new(name, at, along, km is { } length && time is null ? new Stretch(length, up ?? 0, down ?? 0) : null, surface, time, onward)
            : null;
    }

    private PickUp? PickUpOf(PlacedFields item, int i)
    {
        var name = item.Text("name", 200) ?? $"pick-up {i + 1}";
        item.Text("note");
        item.Missing("mode", "'vehicle', 'boat' or 'aircraft'.");
        item.Missing("wait", "the time from the call until it is there.");
        var (place, along) = Spot(item);
        var mode = item.Word("mode", comes)?.Value;
        var probability = item.Number("probability", 0, 1, "");
        var window = item.Word("window", TravelReader.Windows)?.Value ?? FlightWindow.AnyHour;
        var wait = item.Any("wait") is { } json ? Time(json, "wait") : null;
        var onward = Onward(item);
        return place is { } at && mode is { } by && wait is not null
            ? new(name, at, along, by, item.Has("probability") ? probability ?? 0 : 1, window, wait, onward)
            : null;
    }

    private Helicopter? HelicopterOf()
    {
        if (fields.Any("helicopter") is not { } json)
            return null;
        var item = new PlacedFields(json, complaints, "'helicopter'");
        if (!item.IsObject)
            return null;
        item.Text("note");
        item.Missing("probability", "how likely it comes at all.");
        item.Missing("wait", "the time from the call until it has the casualty.");
        var probability = item.Number("probability", 0, 1, "");
        var from = item.Moment("from");
        if (from is not null && !fields.Has("start"))
            item.Refuse("from", "'from' counts from no moment: give the route a 'start'.");
        var window = item.Word("window", TravelReader.Windows)?.Value ?? FlightWindow.AnyHour;
        var wait = item.Any("wait") is { } time ? Time(time, "wait") : null;
        var onward = Onward(item);
        item.Done("'helicopter'");
        return probability is { } p && wait is not null ? new(p, from, window, wait, onward) : null;
    }

    private (GeoPoint? Place, double AlongM) Spot(PlacedFields item)
    {
        item.Missing("at", "where it leaves or meets the route, as lat and lon.");
        if (item.Any("at") is not { } json || new PlacedFields(json, complaints, "'at'").Place("'at'") is not { } read)
            return (null, 0);
        var place = new GeoPoint(read.LatDeg, read.LonDeg);
        if (line is null)
            return (place, 0);
        var spot = line.Nearest(place);
        if (spot.OffM > Farhold.WayOut.Reach.Route.FurthestOffM)
        {
            var swapped = Math.Abs(read.LonDeg) <= 90 && line.Nearest(new(read.LonDeg, read.LatDeg)).OffM <= Farhold.WayOut.Reach.Route.FurthestOffM;
            item.Refuse("at", string.Create(CultureInfo.InvariantCulture,
                $"This place lies {spot.OffM / 1000:0.0} km off the route; at most {Farhold.WayOut.Reach.Route.FurthestOffM:0} m are taken.")
                + (swapped ? " With lat and lon exchanged it lies on it." : ""));
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
