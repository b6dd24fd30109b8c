using System.Collections.Immutable;

namespace Farhold.Protocols;

/// <summary>Reads a file of rules of warning signs. Nothing is half-read: one fault refuses it.</summary>
public static class WarningSignReader
{
    /// <param name="clock">The limits that rules may name.</param>
    public static Read<WarningRules> Read(ReadOnlyMemory<byte> utf8, string file, ClockLimits clock) =>
        LocatedFields.Whole(utf8, file, "a file of rules", (json, root) => Compose(json, root, clock));

    private static WarningRules Compose(LocatedJson json, Located root, ClockLimits clock)
    {
        json.OnlyKnown(root, "warningSigns", "version", "title", "sources", "freshness", "rules");
        var parts = new ProtocolParts(json, root, LongInput.All);
        var sources = parts.Sources([]);
        var conditions = new ConditionReader(json, clock, LongInput.All);
        var rules = ImmutableArray.CreateBuilder<WarningRule>();
        foreach (var item in json.Items(root, "rules"))
        {
            if (!json.IsObject(item, "a rule"))
                continue;
            json.OnlyKnown(item, "id", "scope", "text", "do", "falseDays", "forbids", "sources", "when");
            var scope = json.Word<TaskScope>(item, "scope");
            if (scope == TaskScope.Loosened)
                json.Refuse(item.Offset, "a rule is about the casualty or about a limb");
            var falseDays = json.Required(item, "falseDays") is { } given ? json.Number(given, "falseDays") : null;
            if (falseDays is < 0 or > 1000)
                json.Refuse(item.Offset, "falseDays is of 1,000 days");
            if (json.Required(item, "when") is not { } when || conditions.Read(when) is not { } condition)
                continue;
            if (scope == TaskScope.Casualty && condition.AsksOfLimb)
                json.Refuse(when.Offset, "a rule about the casualty as a whole can't ask about a limb");
            rules.Add(
                new(
                    json.Text(item, "id"),
                    scope,
                    json.Text(item, "text"),
                    json.Text(item, "do"),
                    falseDays ?? 0,
                    parts.Cited(item),
                    condition
                )
                {
                    Forbids = Forbids(json, item),
                }
            );
        }

        foreach (var twice in rules.GroupBy(r => r.Id).Where(g => g.Count() > 1))
            json.Refuse(root.Offset, $"rule {twice.Key} is given twice");
        json.Listed(root, rules.SelectMany(r => r.Sources), sources);
        return new(
            json.Text(root, "warningSigns"),
            json.Text(root, "version"),
            json.Text(root, "title"),
            sources,
            parts.Freshness(),
            rules.ToImmutable()
        );
    }

    private static ImmutableArray<string> Forbids(LocatedJson json, Located item)
    {
        var words = json.Items(item, "forbids", required: false);
        foreach (var word in words.Where(w => w.Kind != System.Text.Json.JsonValueKind.String || w.Text.Trim().Length == 0))
            json.Refuse(word.Offset, "forbids is a list of drugs, their groups or kinds");
        return [.. words.Select(w => w.Text)];
    }
}
