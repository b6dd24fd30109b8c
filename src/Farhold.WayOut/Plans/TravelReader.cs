namespace Farhold.WayOut.Plans;

/// <summary>Reads one leg with a mode.</summary>
internal sealed class TravelReader(PlacedFields fields, Complaints complaints)
{
    internal static readonly (string, Meaning<TravelMode>)[] Modes =
    [
        ("walk", new(TravelMode.Walk)), ("carry", new(TravelMode.Carry)), ("vehicle", new(TravelMode.Vehicle)),
        ("boat", new(TravelMode.Boat)), ("aircraft", new(TravelMode.Aircraft)), ("wait", new(TravelMode.Wait)),
    ];

    internal static readonly (string, Meaning<DarkRule>)[] DarkRules = [("allowed", new(DarkRule.Allowed)), ("stop", new(DarkRule.Stop))];

    internal static readonly (string, Meaning<FlightWindow>)[] Windows =
        [("any", new(FlightWindow.AnyHour)), ("daylight", new(FlightWindow.Daylight))];

    private static readonly string[] ground = ["track", "distanceKm", "ascentM", "descentM"];

    public Travel? Travel(int slot, string? name, ref bool onLitter)
    {
        var mode = fields.Word("mode", Modes)?.Value;
        var dark = mode == TravelMode.Wait ? null : fields.Word("dark", DarkRules);
        var window = mode is null or TravelMode.Aircraft ? fields.Word("window", Windows) : null;
        var hold = fields.Any("hold") is { } json ? HoldOf(new PlacedFields(json, complaints, "'hold'")) : null;
        var extent = ExtentOf(mode, onLitter);
        onLitter |= mode == TravelMode.Carry;
        fields.Done(mode is { } known ? $"a leg by '{Word(known)}' like this" : "a leg");
        return mode is { } m && extent is not null
            ? new(slot, name, m, extent, dark?.Value ?? DarkRule.Allowed, window?.Value ?? FlightWindow.AnyHour, hold)
            : null;
    }

    public static string Word(TravelMode mode) => Modes.First(m => m.Item2.Value == mode).Item1;

    private Extent? ExtentOf(TravelMode? mode, bool onLitter)
    {
        bool three = TimeFields.HasThree(fields), tenths = TimeFields.HasTenths(fields), measured = ground.Any(fields.Has);
        if (mode == TravelMode.Wait && measured)
            fields.Refuse(ground.First(fields.Has), "A wait has a time, no distance.");
        else if ((three ? 1 : 0) + (tenths ? 1 : 0) + (measured ? 1 : 0) != 1)
            fields.Refuse("mode", "A leg has either a distance or track, or a time as low, likely and high, or as p10 and p90.");
        if (measured || (!three && !tenths))
            return Ground(mode, onLitter);
        return tenths ? TimeFields.Tenths(fields) : TimeFields.Three(fields);
    }

    private static Hold? HoldOf(PlacedFields hold)
    {
        if (!hold.IsObject)
            return null;
        hold.Missing("probability", "how likely weather holds this leg up.");
        var probability = hold.Number("probability", 0, 1, "");
        var time = TimeFields.Three(hold);
        hold.Done("a hold");
        return probability is { } p && time is not null ? new(p, time) : null;
    }

    private Measured? Ground(TravelMode? mode, bool onLitter)
    {
        bool Is(params ReadOnlySpan<TravelMode> some) => mode is not { } known || some.Contains(known);
        var track = fields.Text("track", 500);
        if (fields.Has("track") && ground.Skip(1).FirstOrDefault(fields.Has) is { } figure)
            fields.Refuse(figure, $"The track gives distance and heights: leave it or '{figure}' out.");
        if (!fields.Has("track"))
            fields.Missing("distanceKm", "kilometres along the ground, or a track.");
        var km = fields.Number("distanceKm", 0, 5000, " km");
        var (up, down) = (fields.Number("ascentM", 0, 50000, " m"), fields.Number("descentM", 0, 50000, " m"));
        var surface = fields.Word("terrain", Surfaces.All.Select(s => (s.Id, s)));
        var bearers = fields.Whole("bearers", LitterTeam.Fewest, 200, " people");
        var rule = Is(TravelMode.Walk) ? fields.Word("rule", PaceRules.All.Select(r => (r.Id, r))) : null;
        var spread = Is(TravelMode.Walk) ? fields.Number("spread", 0, 2, "") : null;
        var snow = Is(TravelMode.Walk, TravelMode.Carry) ? fields.Number("snowCm", 0, 200, " cm") : null;
        var carry = Is(TravelMode.Carry);
        var wheel = carry ? fields.Flag("wheel") : null;
        var pitches = carry ? fields.Whole("ropePitches", 0, 50, " pitches") : null;
        var packaging = carry ? fields.Flag("packaging") : null;
        var speed = Is(TravelMode.Vehicle, TravelMode.Boat, TravelMode.Aircraft) ? fields.Number("speedKmh", 0.1, 1000, " km/h") : null;
        if (mode == TravelMode.Boat && !fields.Has("speedKmh"))
            fields.Refuse("mode", "A boat over a distance needs 'speedKmh': there is no usual one.");
        return new(
            track, km is { } length ? new Stretch(length, up ?? 0, down ?? 0) : null, rule, surface, snow ?? 0, spread,
            speed, bearers, wheel ?? false, pitches ?? 0, packaging ?? (mode == TravelMode.Carry && !onLitter));
    }
}

/// <summary>What a word of a file stands for.</summary>
internal sealed record Meaning<T>(T Value);
