using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Protocols;

/// <summary>Reads the tasks of protocols and local protocols.</summary>
internal sealed class CareTaskReader(LocatedJson json, ProtocolParts parts, ClockLimits clock)
{
    private static readonly string[] Known =
    [
        "id",
        "scope",
        "group",
        "text",
        "reason",
        "every",
        "unstable",
        "night",
        "atMost",
        "once",
        "again",
        "from",
        "people",
        "when",
        "unless",
        "onlyStable",
        "instead",
        "replacedBy",
        "afterMove",
        "child",
        "seen",
        "drugs",
        "doneBy",
        "sources",
    ];

    public ImmutableArray<CareTask> All(Located root) => [.. json.Items(root, "tasks").Select(i => Read(i)).OfType<CareTask>()];

    /// <param name="under">The task that a local one takes the place of: what the local one does not name stays as it is there.</param>
    public CareTask? Read(Located item, CareTask? under = null)
    {
        if (!json.IsObject(item, "a task"))
            return null;
        json.OnlyKnown(item, Known);
        var scope = json.Word<TaskScope>(item, "scope");
        var once = item["once"] is not { } given
            ? null
            : given.Text switch
            {
                "window" => clock.Window,
                "limit" => clock.Limit,
                _ => json.Span(given, "once (or window, limit)"),
            };
        var task = new CareTask(
            json.Text(item, "id"),
            scope,
            json.Text(item, "text"),
            json.OptionalSpan(item, "every"),
            json.OptionalSpan(item, "unstable"),
            once,
            [.. json.Items(item, "doneBy").Select(KindOf).OfType<Kind>()],
            parts.Cited(item)
        )
        {
            Again = item["again"] is null
                ? under?.Again ?? []
                : [.. json.Items(item, "again").Select(i => json.Span(i, "again")).OfType<Duration>()],
            Reason = Optional(item, "reason") ?? under?.Reason,
            Group = item["group"] is null ? under?.Group ?? TaskGroup.Check : json.Word<TaskGroup>(item, "group"),
            From = json.OptionalSpan(item, "from") ?? under?.From ?? Duration.Zero,
            AtMost = json.OptionalSpan(item, "atMost") ?? under?.AtMost,
            Night = json.OptionalSpan(item, "night") ?? under?.Night,
            People = People(item) ?? under?.People ?? 1,
            Condition = item["when"] is { } when ? new ConditionReader(json, clock, LongInput.All).Read(when) : under?.Condition,
            Unless = item["unless"] is { } unless ? new ConditionReader(json, clock, LongInput.All).Read(unless) : under?.Unless,
            Drugs = item["drugs"] is null ? under?.Drugs ?? [] : Drugs(item),
            OnlyStable = item["onlyStable"] is null ? under?.OnlyStable ?? false : json.Flag(item, "onlyStable"),
            Instead = Optional(item, "instead") ?? under?.Instead,
            Seen = item["seen"] is null ? under?.Seen ?? [] : [.. json.Items(item, "seen").Select(InputOf).OfType<Input>()],
            ReplacedBy = Optional(item, "replacedBy") ?? under?.ReplacedBy,
            AfterMove = Optional(item, "afterMove") ?? under?.AfterMove,
            Child = item["child"] is { } child ? Child(child, under?.Child) : under?.Child,
        };
        Whole(item, task);
        return task;
    }

    private void Whole(Located item, CareTask task)
    {
        if ((task.Once is null) == (task.Every is null && task.Unstable is null))
            json.Refuse(item.Offset, "a task is done once, or every so often: give once, or every and unstable");
        if (task.Scope != TaskScope.Limb && item["once"]?.Text is "window" or "limit")
            json.Refuse(item.Offset, "window and limit count from the tightening of a limb: its scope has to be limb");
        if (task.Once is not null && task.Scope == TaskScope.Loosened)
            json.Refuse(item.Offset, "a task done once counts from the tightening of a limb, or from the injury");
        if (task.Unless is not null && task.Instead is null)
            json.Refuse(item.Offset, "unless goes with instead: what to say where it must not be done any more");
        if (!task.Drugs.IsEmpty && !task.DoneBy.Contains(Kind.DrugGiven))
            json.Refuse(item.Offset, "a task about drugs is done by drug.given");
        if (task.Once is not null && task.AfterMove is not null)
            json.Refuse(item.Offset, "what is done once does not come back after a move: afterMove goes with every or unstable");
        if (
            !task.Again.IsEmpty
            && (task.Once is not { } first || !task.Again.Prepend(first).SequenceEqual(task.Again.Prepend(first).Distinct().Order()))
        )
            json.Refuse(item.Offset, "again follows once, each time later than the one before");
        if (
            task.Scope == TaskScope.Casualty
            && (task.Condition?.AsksOfLimb == true || task.Unless?.AsksOfLimb == true || task.Seen.Any(i => i.OfLimb))
        )
            json.Refuse(item.Offset, "a task about the casualty as a whole can't ask about a limb");
        if (task.Night is { } night && !(night >= task.Every))
            json.Refuse(item.Offset, "night is the longest a task may wait at night: no shorter than every");
        foreach (var (name, span) in new[] { ("every", task.Every), ("unstable", task.Unstable), ("night", task.Night) })
            if (span > task.AtMost)
                json.Refuse(item.Offset, $"{name} is longer than atMost, the longest that its source allows");
    }

    private ChildWords? Child(Located child, ChildWords? under)
    {
        if (!json.IsObject(child, "child"))
            return null;
        json.OnlyKnown(child, "text", "reason");
        return new(Filled("text") ?? under?.Text, Filled("reason") ?? under?.Reason);

        string? Filled(string name)
        {
            var words = Optional(child, name);
            if (
                words is not null
                && ChildWords
                    .Figures.Aggregate(words, (w, n) => w.Replace(n, "", StringComparison.Ordinal))
                    .Contains('{', StringComparison.Ordinal)
            )
                json.Refuse(child[name]!.Offset, $"only {string.Join(", ", ChildWords.Figures)} stand for figures");
            return words;
        }
    }

    private string? Optional(Located item, string name) => item[name] is null ? null : json.Text(item, name);

    private ImmutableArray<string> Drugs(Located item)
    {
        var words = json.Items(item, "drugs");
        foreach (var word in words.Where(w => w.Kind != System.Text.Json.JsonValueKind.String || w.Text.Trim().Length == 0))
            json.Refuse(word.Offset, "drugs is a list of names");
        return [.. words.Select(w => w.Text)];
    }

    private int? People(Located item)
    {
        if (item["people"] is not { } given || json.Number(given, "people") is not { } people)
            return null;
        if (people is 1 or 2)
            return (int)people;
        json.RefuseValue(given, "people", "1 or 2");
        return null;
    }

    private Input? InputOf(Located item)
    {
        var input = Input.Named(item.Text, LongInput.All);
        if (input is null)
            json.Refuse(item.Offset, $"there is no input {item.Text}");
        return input;
    }

    private Kind? KindOf(Located item)
    {
        var kind = Kinds.Parse(System.Text.Encoding.UTF8.GetBytes(item.Text));
        if (kind is null)
            json.Refuse(item.Offset, $"there is no kind of entry {item.Text}");
        return kind;
    }
}
