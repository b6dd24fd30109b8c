using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold;

/// <summary>Reads a local protocol and lays it over another.</summary>
/// <remarks>
/// Tightening needs no signature. Loosening anything needs a named authority; loosening a hard limit is then told on every
/// screen and print. Some things no signature can do: the limit may not go beyond <see cref="FurthestLimit"/>, a hard
/// criterion may not be dropped, nor change its role. One fault refuses the file, and the
/// protocol under it stays in force.
/// </remarks>
public sealed class LocalReader
{
    /// <summary>No authority moves the time limit beyond this (a design choice: published texts keep to six hours in the field).</summary>
    public static readonly Duration FurthestLimit = Duration.FromHours(8);

    private readonly LocatedJson json;
    private readonly Protocol under;
    private readonly List<(int Offset, string Text)> loosened = [];
    private readonly List<string> hardLoosened = [];
    private readonly List<string> changes = [];

    private LocalReader(LocatedJson json, Protocol under) => (this.json, this.under) = (json, under);

    /// <summary>The protocol with the local one laid over it.</summary>
    public static Read<Protocol> Read(ReadOnlyMemory<byte> utf8, string file, Protocol under) =>
        LocatedFields.Whole(utf8, file, "a local protocol", (json, root) => new LocalReader(json, under).Lay(root));

    private Protocol? Lay(Located root)
    {
        json.OnlyKnown(root, "$schema", "local", "version", "title", "over", "authority", "sources", "clock", "freshness", "criteria", "steps", "watch", "tasks", "careFreshness", "orders");
        if (json.Text(root, "over") is var over && over.Length > 0 && over != under.Id)
            json.Refuse(root["over"]!.Offset, $"this local protocol is meant for {over}, not for {under.Id}");
        var parts = new ProtocolParts(json, root);
        var clock = Clock(root, parts);
        if (clock is null)
            return null;
        var laid = under with
        {
            Sources = parts.Sources(under.Sources),
            Clock = clock,
            Freshness = Freshness(root, parts),
            Criteria = Criteria(root, parts, clock),
            Steps = Steps(root, parts, clock),
            Watch = Watch(root, parts),
            Tasks = Tasks(root, new(json, parts, clock)),
            CareFreshness = CareFreshness(root, parts),
        };
        ProtocolReader.Whole(json, root, laid);
        var orders = Orders(root);
        var authority = Authority(root);
        return laid with
        {
            Local = new(
                json.Text(root, "local"), json.Text(root, "version"), json.Text(root, "title"),
                authority, [.. hardLoosened], [.. changes], orders),
        };
    }

    private ClockLimits? Clock(Located root, ProtocolParts parts)
    {
        if (parts.Clock(under.Clock) is not { } clock)
            return null;
        if (root["clock"] is { } at)
        {
            Note(at, Strictness.Shorter(under.Clock.Window, clock.Window), false, $"the first window is {Say.Duration(clock.Window)} instead of {Say.Duration(under.Clock.Window)}");
            Note(at, Strictness.Shorter(under.Clock.Limit, clock.Limit), true, $"the time limit is {Say.Duration(clock.Limit)} instead of {Say.Duration(under.Clock.Limit)}");
            Note(at, Strictness.Longer(under.Clock.Soon, clock.Soon), false, $"help counts as soon within {Say.Duration(clock.Soon)} instead of {Say.Duration(under.Clock.Soon)}");
            Note(at, Strictness.Larger(under.Clock.SoonProbability, clock.SoonProbability), false, FormattableString.Invariant($"a forecast counts for soon at a probability of {clock.SoonProbability} instead of {under.Clock.SoonProbability}"));
            if (clock.Limit > FurthestLimit)
                json.Refuse(at.Offset, $"the time limit may not be longer than {Say.Duration(FurthestLimit)}, whoever signs");
        }

        return clock with
        {
            Longest = (Duration.Max(under.Clock.Longest.Window, clock.Window), Duration.Max(under.Clock.Longest.Limit, clock.Limit)),
        };
    }

    private ImmutableSortedDictionary<string, Duration> Freshness(Located root, ProtocolParts parts)
    {
        var freshness = under.Freshness.ToBuilder();
        foreach (var (name, span) in parts.Freshness())
        {
            var hard = under.Criteria.Any(c => c.Hard && c.Condition.Inputs.Any(i => i.Name == name));
            if (under.Freshness.TryGetValue(name, out var before))
                Note(root["freshness"]![name]!, Strictness.Shorter(before, span), hard, $"{name} stays fresh {Say.Duration(span)} instead of {Say.Duration(before)}");
            freshness[name] = span;
        }

        return freshness.ToImmutable();
    }

    private ImmutableSortedDictionary<string, Duration> CareFreshness(Located root, ProtocolParts parts)
    {
        var freshness = under.CareFreshness.ToBuilder();
        foreach (var (name, span) in parts.CareFreshness())
        {
            var before = under.CareFreshness.GetValueOrDefault(name, under.Freshness.GetValueOrDefault(name, span));
            Note(root["careFreshness"]![name]!, Strictness.Shorter(before, span), false, $"for tasks, {name} stays fresh {Say.Duration(span)} instead of {Say.Duration(before)}");
            freshness[name] = span;
        }

        return freshness.ToImmutable();
    }

    private ImmutableArray<Criterion> Criteria(Located root, ProtocolParts parts, ClockLimits clock)
    {
        // Limits taken from the clock follow it, so that a changed clock changes every criterion that names it.
        var criteria = under.Criteria.Select(c => c with { Condition = Reclocked(c.Condition, clock) }).ToList();
        foreach (var item in json.Items(root, "criteria", required: false))
        {
            var at = criteria.FindIndex(c => c.Id == item["id"]?.Text);
            if (json.Flag(item, "drop"))
                Drop(item, criteria, at);
            else if (parts.Criterion(item, clock, at < 0 ? null : criteria[at]) is { } criterion)
                Put(criteria, at, criterion, criterion.Id, before => Compare(item, before, criterion));
        }

        return [.. criteria];
    }

    /// <summary>Puts a rule in the place of the one before, or beside the others, and tells what that changes.</summary>
    private void Put<T>(List<T> rules, int at, T rule, string name, Action<T> compare)
    {
        if (at < 0)
        {
            rules.Add(rule);
            changes.Add($"added {name}");
            return;
        }

        compare(rules[at]);
        rules[at] = rule;
    }

    private void Compare(Located item, Criterion before, Criterion criterion)
    {
        if (before.Hard && (criterion.Role != before.Role || criterion.Group != before.Group || !criterion.Hard))
            json.Refuse(item.Offset, $"{before.Id} is a hard limit: its role, group and hardness can't be changed");
        if (Stops(before) && !Stops(criterion))
            json.Refuse(item.Offset, $"{before.Id} has to forbid at {Say.Duration(FurthestLimit)} since first tightening at the latest, whoever signs");
        var hard = before.Hard;
        Tell(item, Strictness.Of(before, criterion), (hard, hard), before.Id, criterion.Text, (before.Text, before.Sources), (criterion.Text, criterion.Sources));
    }

    private void Drop(Located item, List<Criterion> criteria, int at)
    {
        json.OnlyKnown(item, "id", "drop");
        if (at < 0)
        {
            json.Refuse(item.Offset, $"there is no criterion {item["id"]?.Text} to drop");
            return;
        }

        var dropped = criteria[at];
        criteria.RemoveAt(at);
        if (dropped.Hard)
            json.Refuse(item.Offset, $"{dropped.Id} is a hard limit and can't be dropped, whoever signs");
        Note(item, Change.Looser, dropped.Hard, $"{dropped.Id} is dropped: {dropped.Text}");
    }

    private ImmutableArray<AttemptStep> Steps(Located root, ProtocolParts parts, ClockLimits clock)
    {
        var steps = under.Steps.ToBuilder();
        foreach (var item in json.Items(root, "steps", required: false))
        {
            if (parts.Step(item, clock) is not { } step || under.Steps.FirstOrDefault(s => s.Id == step.Id) is not { } before)
                continue;
            Tell(item, Strictness.Of(before, step), default, $"the step {Wire.Word(step.Id)}", step.Text, (before.Text, before.Sources), (step.Text, step.Sources));
            steps[under.Steps.IndexOf(before)] = step;
        }

        return steps.ToImmutable();
    }

    private WatchPlan Watch(Located root, ProtocolParts parts)
    {
        if (root["watch"] is not { } at || parts.Watch() is not { } given || given.Periods is not [.., { Until: null }])
            return under.Watch;
        var watch = given with { AfterMove = given.AfterMove ?? under.Watch.AfterMove };
        var change = Strictness.Of(under.Watch, watch);
        Note(at, change, false, $"the watch after slackening is changed: {watch.Text}");
        if (change == Change.Same)
            Reworded(at, false, "the watch after slackening", (under.Watch.Text, under.Watch.Sources), (watch.Text, watch.Sources));
        return watch;
    }

    private ImmutableArray<CareTask> Tasks(Located root, CareTaskReader reader)
    {
        var tasks = under.Tasks.ToList();
        foreach (var item in json.Items(root, "tasks", required: false))
        {
            var at = tasks.FindIndex(t => t.Id == item["id"]?.Text);
            if (json.Flag(item, "drop"))
            {
                json.OnlyKnown(item, "id", "drop");
                if (at < 0)
                    json.Refuse(item.Offset, $"there is no task {item["id"]?.Text} to drop");
                else
                {
                    Note(item, Change.Looser, tasks[at].AtMost is not null, $"the task {tasks[at].Id} is dropped");
                    tasks.RemoveAt(at);
                }
            }
            else if (reader.Read(item, at < 0 ? null : tasks[at]) is { } task)
                Put(tasks, at, task, $"the task {task.Id}: {task.Text}", before => Compare(item, before, task));
        }

        return [.. tasks];
    }

    private void Compare(Located item, CareTask before, CareTask task)
    {
        Tell(
            item, Strictness.Of(before, task), (before.AtMost is { } most && !(task.AtMost <= most), false), $"the task {task.Id}", task.Text,
            (Words(before), before.Sources), (Words(task), task.Sources));
        if (before.Child?.Text is { } childs && task.Child?.Text == childs && task.Text != before.Text)
            changes.Add($"the task {task.Id} keeps its words for a child: {childs}");
    }

    private static string Words(CareTask task) => string.Join(" ", new[] { task.Text, task.Reason, task.Instead, task.Child?.Text, task.Child?.Reason }.OfType<string>());

    /// <summary>Drugs that may be given: never without a named authority.</summary>
    private ImmutableArray<string> Orders(Located root)
    {
        var orders = ImmutableArray.CreateBuilder<string>();
        foreach (var item in json.Items(root, "orders", required: false))
        {
            if (item.Kind != JsonValueKind.String || ShippedFormulary.Formulary.Drugs.All(d => d.Id != item.Text))
                json.Refuse(item.Offset, $"{item.Text} is no drug of the formulary; there are {string.Join(", ", ShippedFormulary.Formulary.Drugs.Select(d => d.Id))}");
            else if (!orders.Contains(item.Text))
                orders.Add(item.Text);
        }

        if (orders.Count > 0)
        {
            var text = $"drugs are ordered: {string.Join(", ", orders)}";
            loosened.Add((root["orders"]!.Offset, text));
            changes.Add(text);
        }

        return orders.ToImmutable();
    }

    private Authority? Authority(Located root)
    {
        if (root["authority"] is not { } at)
        {
            foreach (var (offset, text) in loosened)
                json.Refuse(offset, $"this needs a named authority: {text}");
            return null;
        }

        if (!json.IsObject(at, "authority"))
            return null;
        json.OnlyKnown(at, "name", "role", "date");
        var date = json.Date(at, "date");
        return date is null ? null : new(json.Text(at, "name"), json.Text(at, "role"), date.Value);
    }

    private void Note(Located at, Change change, bool hard, string text)
    {
        if (change == Change.Same)
            return;
        changes.Add(text);
        if (!change.IsLoosening())
            return;
        loosened.Add((at.Offset, text));
        if (hard)
            hardLoosened.Add(text);
    }

    /// <summary>A rule that took the place of another: what it changes or, where it is as strict, what it words otherwise.</summary>
    /// <param name="hard">Whether loosening it, and wording it otherwise, touches a hard limit.</param>
    private void Tell(
        Located at, Change change, (bool Loosened, bool Words) hard, string what, string text,
        (string Text, ImmutableArray<string> Sources) before, (string Text, ImmutableArray<string> Sources) after)
    {
        Note(at, change, hard.Loosened, $"{what} is changed: {text}");
        if (change == Change.Same)
            Reworded(at, hard.Words, what, before, after);
    }

    /// <summary>Other words or sources for the same rule are told; where the rule is hard they need a signature too.</summary>
    private void Reworded(
        Located at, bool hard, string what, (string Text, ImmutableArray<string> Sources) before, (string Text, ImmutableArray<string> Sources) after)
    {
        if (before.Text == after.Text && before.Sources.SequenceEqual(after.Sources))
            return;
        var text = $"{what} is reworded: {after.Text}";
        changes.Add(text);
        if (hard)
            loosened.Add((at.Offset, text));
    }

    /// <summary>Whether a criterion surely ends attempts at <see cref="FurthestLimit"/> since first tightening, if not before.</summary>
    private static bool Stops(Criterion criterion) => criterion is { Hard: true, Role: Role.Forbids } && Stops(criterion.Condition);

    private static bool Stops(Condition condition) => condition switch
    {
        Condition.All all => all.Parts.All(Stops),
        Condition.Any any => any.Parts.Any(Stops),
        Condition.Compare { Comparison: Comparison.AtLeast } c =>
            (c.Input == Input.SinceFirstTightened || c.Input == Input.TimeOn) && c.Limit <= FurthestLimit.TotalSeconds,
        _ => false,
    };

    private static Condition Reclocked(Condition condition, ClockLimits clock) => condition switch
    {
        Condition.All all => new Condition.All([.. all.Parts.Select(p => Reclocked(p, clock))]),
        Condition.Any any => new Condition.Any([.. any.Parts.Select(p => Reclocked(p, clock))]),
        Condition.Not not => new Condition.Not(Reclocked(not.Part, clock)),
        Condition.Compare { Clock: "window" } c => c with { Limit = clock.Window.TotalSeconds },
        Condition.Compare { Clock: "limit" } c => c with { Limit = clock.Limit.TotalSeconds },
        Condition.Compare { Clock: "soon" } c => c with { Limit = clock.Soon.TotalSeconds },
        _ => condition,
    };
}
