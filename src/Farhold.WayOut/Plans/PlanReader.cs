namespace Farhold.WayOut.Plans;

/// <summary>Reads a plan from JSON, wholly or not at all. Its form is plans/plan.schema.json.</summary>
public static class PlanReader
{
    /// <summary>More would outrun the random numbers set aside for a trial.</summary>
    public const int MostLegs = 500;

    /// <summary>As many as a leg has random numbers for.</summary>
    public const int MostWays = 7;

    /// <summary>Longer notes are refused.</summary>
    internal const int LongestNote = 2000;

    /// <summary>Longer names are refused.</summary>
    internal const int LongestName = 200;

    /// <summary>Deeper nesting is refused: choices of a plan stand in each other.</summary>
    private const int MaxDepth = 64;

    public static Read<Plan> Read(ReadOnlyMemory<byte> utf8, string file) => Json(utf8, file).Whole("a plan", Compose);

    /// <summary>A file of this part, with room for what its plans and routes may hold.</summary>
    internal static LocatedJson Json(ReadOnlyMemory<byte> utf8, string file) => new(utf8, file, RecordReader.MaxFile, MaxDepth);

    private static Plan? Compose(LocatedJson json, Located root)
    {
        var fields = new LocatedObject(json, root, "a plan");
        fields.Text("$schema", LongestNote);
        fields.Text("note", LongestNote);
        var (id, title) = (fields.Text("id", LongestName), fields.Text("title", LongestName));
        fields.Required("start", "when the plan sets out, such as 2031-05-04T02:10:00Z");
        fields.Required("legs", "a list of stages, since a plan without stages has no end");
        var start = fields.Instant("start");
        var from = fields.Place("from");
        var zone = fields.Zone();
        var correlation = fields.Number("correlation", 0, 1) ?? Plan.UsualCorrelation;
        var weather = fields.Number("weather", 0, 1) ?? Plan.UsualWeather;
        var lambda = fields.Number("lambda", 0, 100) ?? Plan.ClassicalLambda;
        var legs = new LegReader(json).Legs(fields, mayBeEmpty: false);
        fields.Done();
        var plan = new Plan(id, title, start ?? default, from, zone, correlation, lambda, legs) { Weather = weather };
        if (plan.NeedsLight && from is null && !fields.Has("from") && !plan.Tracks.Any())
            fields.Refuse("legs", "a stage here waits for daylight, so the plan needs from (lat, lon) or a track to know where the sun is");
        return plan;
    }
}
