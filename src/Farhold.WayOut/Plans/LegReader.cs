using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>Reads legs in the order written and gives each its slot.</summary>
internal sealed class LegReader(LocatedJson file)
{
    private static readonly string[] Choices = ["branches", "first", "all", "waitFor", "try"];

    private int slots;
    private bool onLitter;

    public ImmutableArray<Leg> Legs(LocatedObject of, bool mayBeEmpty)
    {
        const string name = "legs";
        if (of.Any(name) is not { } json)
            return [];
        if (json.Kind != JsonValueKind.Array)
            file.RefuseValue(json, name, "a list");
        else if (json.Items.Length == 0 && !mayBeEmpty)
            file.Refuse(json.Offset, "there is no stage here: a way needs an end to arrive at");
        return [.. json.Items.Select(Leg).OfType<Leg>()];
    }

    private Leg? Leg(Located json)
    {
        var fields = new LocatedObject(file, json, "a stage");
        if (++slots == PlanReader.MostLegs + 1)
            file.Refuse(json.Offset, $"a plan has at most {PlanReader.MostLegs} stages");
        if (!fields.IsObject || slots > PlanReader.MostLegs)
            return null;
        var slot = slots;
        var kinds = Choices.Where(fields.Has).ToArray();
        if (kinds.Length + (fields.Has("mode") ? 1 : 0) != 1)
        {
            file.Refuse(json.Offset, "a stage has exactly one of mode, branches, first, all, waitFor and try");
            return null;
        }

        var name = fields.Text("name", PlanReader.LongestName);
        fields.Text("note", PlanReader.LongestNote);
        return kinds is [var kind] ? ChoiceOf(fields, slot, name, kind) : new TravelReader(fields).Travel(slot, name, ref onLitter);
    }

    private Choice? ChoiceOf(LocatedObject fields, int slot, string? name, string kind)
    {
        if (kind is "waitFor" or "try")
            return Either(fields, slot, name, kind == "try");
        var json = fields.Any(kind)!;
        fields.Done();
        if (json.Kind != JsonValueKind.Array || json.Items.Length is < 2 or > PlanReader.MostWays)
        {
            file.RefuseValue(json, kind, $"a list of 2 to {PlanReader.MostWays} ways");
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
            "first" => new Choice(slot, name, ChoiceKind.First, Coming(read)),
            _ => new Choice(slot, name, ChoiceKind.All, [.. read.Select(r => r.Way with { Probability = 1 })]),
        };
    }

    /// <summary>Wait for one way until a moment, or try it; else go another.</summary>
    private Choice? Either(LocatedObject fields, int slot, string? name, bool tried)
    {
        if (!tried)
            fields.Required("otherwise", "the way that sets out if what is waited for is not there in time");
        var until = tried ? null : fields.SpanOrMinutes("until");
        var closes = tried ? ClosesOf(fields) : null;
        var before = onLitter;
        var first = fields.Any(tried ? "try" : "waitFor") is { } asked ? WayOf(asked, "first") : null;
        // What is tried is gone by the party itself, which goes on from there.
        if (!tried)
            onLitter = before;
        var onward = fields.Any("onward") is { } then ? WayOf(then, "all") : (null, new Way(null, 1, []));
        onLitter = before;
        var other =
            fields.Any("otherwise") is { } last ? WayOf(last, "all")
            : tried ? (null, new Way(null, 1, []))
            : null;
        fields.Done();
        return first is var (probability, way) && onward is var (_, on) && other is var (_, go)
            ? new(
                slot,
                name,
                tried ? ChoiceKind.Try : ChoiceKind.Until,
                [way with { Probability = probability ?? 1 }, on with { Probability = 1 }, go with { Probability = 1 }]
            )
            {
                Until = until,
                Closes = closes,
            }
            : null;
    }

    /// <summary>A moment, or one that nobody is sure of.</summary>
    private static Extent? ClosesOf(LocatedObject fields)
    {
        const string name = "closes";
        if (fields.Any(name) is not { Kind: JsonValueKind.Object })
            return fields.SpanOrMinutes(name) is { } at ? new ThreePoint(at, at, at) : null;
        if (fields.Object(name) is not { } unsure)
            return null;
        var time = TimeFields.Either(unsure);
        unsure.Done();
        return time;
    }

    private (double? Probability, Way Way)? WayOf(Located json, string kind)
    {
        var fields = new LocatedObject(file, json, $"a way of {kind}");
        if (!fields.IsObject)
            return null;
        var name = fields.Text("name", PlanReader.LongestName);
        fields.Text("note", PlanReader.LongestNote);
        fields.Required("legs", "a list of the stages of this way");
        var probability = kind == "all" ? null : fields.Number("probability", 0, 1);
        var legs = Legs(fields, mayBeEmpty: kind == "branches");
        fields.Done();
        // A probability that was refused is no omitted one.
        return (fields.Has("probability") ? probability ?? double.NaN : null, new Way(name, 0, legs));
    }

    /// <summary>One way may leave its probability out and takes what the others leave.</summary>
    private ImmutableArray<Way> Shared(List<(double? Probability, Way Way)> ways, Located json)
    {
        var given = ways.Sum(w => w.Probability ?? 0);
        var open = ways.Count(w => w.Probability is null);
        if (open > 1)
            file.Refuse(json.Offset, "only one way may leave its probability out");
        else if (given > 1 + 1e-9)
            file.Refuse(json.Offset, FormattableString.Invariant($"the probabilities of these ways add up to {given:0.####}, more than 1"));
        else if (open == 0 && given < 1 - 1e-9)
            file.Refuse(json.Offset, FormattableString.Invariant($"the probabilities of these ways add up to {given:0.####}, not 1"));
        return [.. ways.Select(w => w.Way with { Probability = w.Probability ?? Math.Max(0, 1 - given) })];
    }

    /// <summary>None need be sure: a way may fail, and then nothing comes.</summary>
    private static ImmutableArray<Way> Coming(List<(double? Probability, Way Way)> ways) =>
        [.. ways.Select(w => w.Way with { Probability = w.Probability ?? 1 })];
}
