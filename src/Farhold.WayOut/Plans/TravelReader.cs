namespace Farhold.WayOut.Plans;

/// <summary>Reads one leg with a mode.</summary>
internal sealed class TravelReader(LocatedObject fields)
{
    internal static readonly (string, Meaning<TravelMode>)[] Modes =
    [
        ("walk", new(TravelMode.Walk)),
        ("carry", new(TravelMode.Carry)),
        ("vehicle", new(TravelMode.Vehicle)),
        ("boat", new(TravelMode.Boat)),
        ("aircraft", new(TravelMode.Aircraft)),
        ("wait", new(TravelMode.Wait)),
    ];

    internal static readonly (string, Meaning<DarkRule>)[] DarkRules = [("allowed", new(DarkRule.Allowed)), ("stop", new(DarkRule.Stop))];

    internal static readonly (string, Meaning<FlightWindow>)[] Windows =
    [
        ("any", new(FlightWindow.AnyHour)),
        ("daylight", new(FlightWindow.Daylight)),
    ];

    private static readonly string[] GroundFields = ["track", "distanceKm", "ascentM", "descentM"];

    /// <summary>More are refused: nobody carries one litter with so many.</summary>
    internal const int MostBearers = 60;

    /// <summary>Further is refused on foot: a day is no leg, and a litter goes nowhere near as far (design).</summary>
    internal const double FurthestWalkKm = 200,
        FurthestCarryKm = 50;

    /// <summary>Steeper than this nobody walks: metres up and down to a kilometre of ground (design, 45 degrees).</summary>
    internal const double SteepestMPerKm = 1000;

    public Travel? Travel(int slot, string? name, ref bool onLitter)
    {
        var mode = fields.Word("mode", Modes)?.Value;
        var dark = mode == TravelMode.Wait ? null : fields.Word("dark", DarkRules);
        var window = mode is null or TravelMode.Aircraft ? fields.Word("window", Windows) : null;
        var hold = fields.Object("hold") is { } given ? HoldOf(given) : null;
        var extent = ExtentOf(mode, onLitter);
        onLitter |= mode == TravelMode.Carry;
        fields.Done();
        return mode is { } m && extent is not null
            ? new(slot, name, m, extent, dark?.Value ?? DarkRule.Allowed, window?.Value ?? FlightWindow.AnyHour, hold)
            : null;
    }

    public static string Word(TravelMode mode) => Modes.First(m => m.Item2.Value == mode).Item1;

    private Extent? ExtentOf(TravelMode? mode, bool onLitter)
    {
        bool three = TimeFields.HasThree(fields),
            tenths = TimeFields.HasTenths(fields),
            measured = GroundFields.Any(fields.Has);
        if (mode == TravelMode.Wait && measured)
            fields.Refuse(GroundFields.First(fields.Has), "a wait has a time, no distance");
        else if ((three ? 1 : 0) + (tenths ? 1 : 0) + (measured ? 1 : 0) != 1)
            fields.Refuse("mode", "a stage has either a distance or track, or a time as low, likely and high, or as p10 and p90");
        if (measured || (!three && !tenths))
            return Ground(mode, onLitter);
        return tenths ? TimeFields.Tenths(fields) : TimeFields.Three(fields);
    }

    private static Hold? HoldOf(LocatedObject hold)
    {
        if (!hold.IsObject)
            return null;
        hold.Required("probability", "a number from 0 to 1, how likely weather holds this stage up");
        var probability = hold.Number("probability", 0, 1);
        var time = TimeFields.Three(hold);
        hold.Done();
        return probability is { } p && time is not null ? new(p, time) : null;
    }

    private Measured? Ground(TravelMode? mode, bool onLitter)
    {
        bool Is(params ReadOnlySpan<TravelMode> some) => mode is not { } known || some.Contains(known);
        var track = fields.Text("track", 500);
        if (fields.Has("track") && GroundFields.Skip(1).FirstOrDefault(fields.Has) is { } figure)
            fields.Refuse(figure, $"the track gives distance and heights: leave it or {figure} out");
        if (!fields.Has("track"))
            fields.Required("distanceKm", "a number of kilometres along the ground, or a track given in its place");
        var furthest =
            mode == TravelMode.Carry ? FurthestCarryKm
            : mode == TravelMode.Walk ? FurthestWalkKm
            : 5000;
        var km = fields.Number("distanceKm", 0, furthest, " km");
        var (up, down) = (fields.Number("ascentM", 0, 50000, " m"), fields.Number("descentM", 0, 50000, " m"));
        if (Is(TravelMode.Walk, TravelMode.Carry))
            Steep(fields, km, up, down);
        var surface = fields.Word("terrain", Surfaces.All.Select(s => (s.Id, s)));
        var bearers = fields.Whole("bearers", LitterTeam.Fewest, MostBearers, " people");
        var rule = Is(TravelMode.Walk) ? fields.Word("rule", PaceRules.All.Select(r => (r.Id, r))) : null;
        var spread = Is(TravelMode.Walk) ? fields.Number("spread", 0, 2) : null;
        var snow = Is(TravelMode.Walk, TravelMode.Carry) ? fields.Number("snowCm", 0, 200, " cm") : null;
        var carry = Is(TravelMode.Carry);
        var wheel = carry ? fields.Flag("wheel") : null;
        var pitches = carry ? fields.Whole("ropePitches", 0, 50, " pitches") : null;
        var packaging = carry ? fields.Flag("packaging") : null;
        var joining = carry && fields.Object("joining") is { } more ? JoiningOf(more) : null;
        var halts = carry && fields.Object("halts") is { } stops ? HaltsOf(stops) : null;
        var speed = Is(TravelMode.Vehicle, TravelMode.Boat, TravelMode.Aircraft)
            ? fields.Number("speedKmh", 0.1, Fastest(mode), " km/h")
            : null;
        if (mode == TravelMode.Boat && !fields.Has("speedKmh"))
            fields.Refuse("mode", "a boat over a distance needs speedKmh: there is no usual one");
        return new(
            track,
            km is { } length ? new Stretch(length, up ?? 0, down ?? 0) : null,
            rule,
            surface,
            snow ?? 0,
            spread,
            speed,
            bearers,
            wheel ?? false,
            pitches ?? 0,
            packaging ?? (mode == TravelMode.Carry && !onLitter)
        )
        {
            Joining = joining,
            Halts = halts,
        };
    }

    /// <summary>Asks back a climb that no ground has.</summary>
    internal static void Steep(LocatedObject of, double? km, double? up, double? down)
    {
        if (km is not { } length || (up ?? 0) + (down ?? 0) <= SteepestMPerKm * length)
            return;
        of.Refuse(
            (up ?? 0) >= (down ?? 0) ? "ascentM" : "descentM",
            FormattableString.Invariant(
                $"{(up ?? 0) + (down ?? 0):0} m up and down over {length:0.###} km is steeper than anyone walks: check metres and kilometres"
            )
        );
    }

    /// <summary>What nothing that carries a casualty by these means exceeds, km/h (design).</summary>
    private static double Fastest(TravelMode? mode) =>
        mode switch
        {
            TravelMode.Vehicle => 130,
            TravelMode.Boat => 90,
            _ => 900,
        };

    private static Joining? JoiningOf(LocatedObject more)
    {
        if (!more.IsObject)
            return null;
        more.Required("bearers", "how many more people carry");
        var bearers = more.Whole("bearers", 1, MostBearers, " people");
        var time = TimeFields.Either(more);
        more.Done();
        return bearers is { } people && time is not null ? new(people, time) : null;
    }

    private static Halts? HaltsOf(LocatedObject stops)
    {
        if (!stops.IsObject)
            return null;
        stops.Required("every", "how long it is carried between two halts");
        stops.Required("for", "how long a halt lasts");
        var (every, length) = (stops.SpanOrMinutes("every"), stops.SpanOrMinutes("for"));
        if (every < NodaTime.Duration.FromMinutes(1))
            stops.Refuse("every", "a minute at least between two halts");
        stops.Done();
        return every is { } e && length is { } l ? new(e, l) : null;
    }
}

/// <summary>What a word of a file stands for.</summary>
internal sealed record Meaning<T>(T Value);
