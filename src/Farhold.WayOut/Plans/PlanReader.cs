using System.Collections.Immutable;
using System.Text.Json;

namespace Farhold.WayOut.Plans;

/// <summary>Reads a plan from JSON, wholly or not at all. Its form is plans/plan.schema.json.</summary>
public static class PlanReader
{
    /// <summary>More would outrun the random numbers set aside for a trial.</summary>
    public const int MostLegs = 500;

    /// <summary>Deeper nesting is refused.</summary>
    internal const int MaxDepth = 64;

    /// <summary>As many as a leg has random numbers for.</summary>
    public const int MostWays = 7;

    public static Read<Plan> Read(ReadOnlyMemory<byte> utf8, string file)
    {
        var complaints = new Complaints(file, utf8);
        var (json, at, reason) = LocatedText.Parse(utf8.Span, MaxDepth);
        Plan? plan = null;
        if (json is null)
            complaints.Add(at, Complaints.Sentence(reason!));
        else
            plan = Read(new PlacedFields(json, complaints, "A plan"), complaints);
        return complaints.Any ? new Read<Plan>.Refused(complaints.InOrder()) : new Read<Plan>.Usable(plan!);
    }

    private static Plan? Read(PlacedFields fields, Complaints complaints)
    {
        if (!fields.IsObject)
            return null;
        fields.Text("$schema");
        fields.Text("note");
        var id = fields.Text("id", 200);
        var title = fields.Text("title", 200);
        fields.Missing("start", "when the plan sets out, such as \"2031-05-04T02:10:00Z\".");
        fields.Missing("legs", "a plan without legs has no end.");
        var start = fields.Moment("start");
        var from = From(fields, complaints);
        var zone = fields.Zone();
        var correlation = fields.Number("correlation", 0, 1, "") ?? Plan.UsualCorrelation;
        var lambda = fields.Number("lambda", 0, 100, "") ?? Plan.ClassicalLambda;
        var legs = new LegReader(complaints).Legs(fields.Any("legs"), "legs", fields.At("legs"), mayBeEmpty: false);
        fields.Done("a plan");
        var plan = new Plan(id, title, start ?? default, from, zone, correlation, lambda, legs);
        if (plan.NeedsLight && from is null && !fields.Has("from") && !plan.Tracks.Any())
            fields.Refuse("legs", "A leg here waits for daylight, so the plan needs 'from' (lat, lon) or a track to know where the sun is.");
        return plan;
    }

    private static PlanPlace? From(PlacedFields fields, Complaints complaints)
    {
        return fields.Any("from") is { } json ? new PlacedFields(json, complaints, "'from'").Place("'from'") : null;
    }
}
