using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.Protocols;

/// <summary>Reads a whole protocol file.</summary>
/// <remarks>The form is that of <c>protocols/protocol.schema.json</c>. Nothing is half-read: one fault refuses the file.</remarks>
public static class ProtocolReader
{
    public static Read<Protocol> Read(ReadOnlyMemory<byte> utf8, string file) =>
        LocatedFields.Whole(
            utf8,
            file,
            "a protocol",
            (json, root) => Compose(json, root) is { } read ? read with { Hash = FileHash.Of(utf8.Span) } : null
        );

    private static Protocol? Compose(LocatedJson json, Located root)
    {
        json.OnlyKnown(
            root,
            "$schema",
            "protocol",
            "version",
            "title",
            "sources",
            "clock",
            "looks",
            "advice",
            "attempts",
            "effect",
            "freshness",
            "criteria",
            "attemptActs",
            "cautions",
            "steps",
            "watch",
            "tasks",
            "careFreshness",
            "overlays"
        );
        var parts = new ProtocolParts(json, root);
        if (parts.Clock(null) is not { } clock)
            return null;
        var protocol = new Protocol(
            json.Text(root, "protocol"),
            json.Text(root, "version"),
            json.Text(root, "title"),
            parts.Sources([]),
            clock,
            parts.Freshness(),
            parts.Criteria(clock),
            parts.Steps(clock),
            parts.Watch() ?? new("", [], []),
            new CareTaskReader(json, parts, clock).All(root),
            null
        )
        {
            CareFreshness = parts.CareFreshness(),
            Overlays = parts.Overlays(),
            Looks = parts.Looks(LookRules.Usual),
            Advice = parts.Advice(AdviceRules.Usual),
            Attempts = parts.Attempts(AttemptRules.Usual),
            Effect = parts.Effect(EffectPlan.Usual),
            AttemptActs = parts.Texts(root, "attemptActs", clock),
            Cautions = parts.Texts(root, "cautions", clock),
        };
        Whole(json, root, protocol);
        return protocol;
    }

    /// <summary>What must hold of a protocol as a whole, whatever it was put together from.</summary>
    internal static void Whole(LocatedJson json, Located root, Protocol protocol)
    {
        foreach (var twice in protocol.Criteria.GroupBy(c => c.Id).Where(g => g.Count() > 1))
            json.Refuse(root.Offset, $"criterion {twice.Key} is given twice");
        foreach (var soft in protocol.Criteria.Where(c => c is { Role: Role.Soft, AsksOfSigns: false }))
            json.Refuse(root.Offset, $"criterion {soft.Id} is a soft sign: it can ask only about signs and the age");
        if (protocol.Criteria.All(c => c.Role == Role.Awaits))
            json.Refuse(root.Offset, "a protocol needs criteria that forbid or require something");
        if (!protocol.Steps.Select(s => s.Id).SequenceEqual(Enum.GetValues<StepId>()))
            json.Refuse(root.Offset, $"steps have to be {string.Join(", ", Wire.Words<StepId>())}, in this order");
        foreach (var input in protocol.Criteria.SelectMany(c => c.Condition.Inputs).Distinct())
            if (input.Expires && !protocol.Freshness.ContainsKey(input.Name))
                json.Refuse(root.Offset, $"freshness has to say how long {input.Name} stays fresh");
        foreach (var step in protocol.Steps.Where(s => s.Gate is { } gate && protocol.Tasks.All(t => t.Id != gate)))
            json.Refuse(root.Offset, $"the step {Wire.Word(step.Id)} waits for {step.Gate}, which is no task here");
        foreach (var twice in protocol.Tasks.GroupBy(t => t.Id).Where(g => g.Count() > 1))
            json.Refuse(root.Offset, $"task {twice.Key} is given twice");
        foreach (var task in protocol.Tasks.Where(t => t.ReplacedBy is { } other && protocol.Tasks.All(o => o.Id != other)))
            json.Refuse(root.Offset, $"task {task.Id} is replaced by {task.ReplacedBy}, which is no task here");
        var texts = protocol
            .AttemptActs.Concat(protocol.Cautions)
            .Concat(protocol.Criteria.SelectMany(c => c.Acts))
            .Concat(protocol.Steps.SelectMany(s => s.Before));
        foreach (
            var input in protocol
                .Tasks.Select(t => t.Condition)
                .Concat(texts.Select(t => t.When))
                .SelectMany(c => c?.Inputs ?? [])
                .Distinct()
        )
            if (input.Expires && !protocol.Freshness.ContainsKey(input.Name) && !protocol.CareFreshness.ContainsKey(input.Name))
                json.Refuse(root.Offset, $"careFreshness has to say how long {input.Name} stays fresh");
        var cited = protocol
            .Criteria.SelectMany(c => c.Sources)
            .Concat(protocol.Steps.SelectMany(s => s.Sources))
            .Concat(protocol.Watch.Sources)
            .Concat(protocol.Tasks.SelectMany(t => t.Sources))
            .Concat(protocol.Effect.Sources);
        json.Listed(root, cited, protocol.Sources);
    }
}
