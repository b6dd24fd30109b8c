using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>Reads legs in the order written and gives each its slot.</summary>
internal sealed class LegReader(Complaints complaints)
{
    private static readonly string[] choices = ["branches", "first", "all"];

    private int slots;
    private bool onLitter;

    public ImmutableArray<Leg> Legs(Located? json, string what, int at, bool mayBeEmpty)
    {
        if (json is null)
            return [];
        if (json.Kind != JsonValueKind.Array)
            complaints.Add(json.Offset, $"'{what}' is a list in square brackets.");
        else if (json.Items.Length == 0 && !mayBeEmpty)
            complaints.Add(at, "No leg here: a way needs an end to arrive at.");
        return [.. json.Items.Select(Leg).OfType<Leg>()];
    }

    private Leg? Leg(Located json)
    {
        var fields = new PlacedFields(json, complaints, "A leg");
        if (++slots == PlanReader.MostLegs + 1)
            complaints.Add(json.Offset, $"A plan has at most {PlanReader.MostLegs} legs.");
        if (!fields.IsObject || slots > PlanReader.MostLegs)
            return null;
        var slot = slots;
        var kinds = choices.Where(fields.Has).ToArray();
        if (kinds.Length + (fields.Has("mode") ? 1 : 0) != 1)
        {
            complaints.Add(json.Offset, "A leg has exactly one of 'mode', 'branches', 'first' and 'all'.");
            return null;
        }

        var name = fields.Text("name", 200);
        fields.Text("note");
        return kinds is [var kind] ? ChoiceOf(fields, slot, name, kind) : new TravelReader(fields, complaints).Travel(slot, name, ref onLitter);
    }

    private Choice? ChoiceOf(PlacedFields fields, int slot, string? name, string kind)
    {
        var json = fields.Any(kind)!;
        fields.Done($"a leg with '{kind}'");
        if (json.Kind != JsonValueKind.Array || json.Items.Length is < 2 or > PlanReader.MostWays)
        {
            complaints.Add(json.Offset, $"'{kind}' is a list of 2 to {PlanReader.MostWays} ways.");
            return null;
        }

        var (before, after) = (onLitter, true);
        var read = new List<(double? Probability, Way Way)>();
        foreach (var item in json.Items)
        {
            onLitter = before;
            if (WayOf(item, kind) is { } way)
                read.Add(way);
            after &= onLitter;
        }

        onLitter = after;
        return kind switch
        {
            "branches" => new Choice(slot, name, ChoiceKind.Branches, Shared(read, json)),
            "first" => new Choice(slot, name, ChoiceKind.First, Certain(read, json)),
            _ => new Choice(slot, name, ChoiceKind.All, [.. read.Select(r => r.Way with { Probability = 1 })]),
        };
    }

    private (double? Probability, Way Way)? WayOf(Located json, string kind)
    {
        var fields = new PlacedFields(json, complaints, $"A way of '{kind}'");
        if (!fields.IsObject)
            return null;
        var name = fields.Text("name", 200);
        fields.Text("note");
        fields.Missing("legs", "the legs of this way.");
        var probability = kind == "all" ? null : fields.Number("probability", 0, 1, "");
        var legs = Legs(fields.Any("legs"), "legs", fields.At("legs"), mayBeEmpty: kind == "branches");
        fields.Done($"a way of '{kind}'");
        // A probability that was refused is no omitted one.
        return (fields.Has("probability") ? probability ?? double.NaN : null, new Way(name, 0, legs));
    }

    /// <summary>One way may leave its probability out and takes what the others leave.</summary>
    private ImmutableArray<Way> Shared(List<(double? Probability, Way Way)> ways, Located json)
    {
        var given = ways.Sum(w => w.Probability ?? 0);
        var open = ways.Count(w => w.Probability is null);
        if (open > 1)
            complaints.Add(json.Offset, "Only one way may leave its probability out.");
        else if (given > 1 + 1e-9)
            complaints.Add(json.Offset, FormattableString.Invariant($"The probabilities of these ways add up to {given:0.####}, more than 1."));
        else if (open == 0 && given < 1 - 1e-9)
            complaints.Add(json.Offset, FormattableString.Invariant($"The probabilities of these ways add up to {given:0.####}, not 1."));
        return [.. ways.Select(w => w.Way with { Probability = w.Probability ?? Math.Max(0, 1 - given) })];
    }

    private ImmutableArray<Way> Certain(List<(double? Probability, Way Way)> ways, Located json)
    {
        if (ways.Count > 0 && ways.All(w => w.Probability < 1))
            complaints.Add(json.Offset, "None of these is sure to come, so the plan may have no end: leave the probability of one out.");
        return [.. ways.Select(w => w.Way with { Probability = w.Probability ?? 1 })];
    }
}
