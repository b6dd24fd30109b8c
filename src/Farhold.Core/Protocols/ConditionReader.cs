using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.Protocols;

/// <summary>Reads the condition of a criterion.</summary>
/// <param name="inputs">What may be asked about.</param>
internal sealed class ConditionReader(LocatedJson file, ClockLimits clock, ImmutableArray<Input> inputs)
{
    private static readonly (string Name, Comparison Comparison)[] Comparisons =
    [
        ("above", Comparison.Above),
        ("atLeast", Comparison.AtLeast),
        ("below", Comparison.Below),
        ("atMost", Comparison.AtMost),
    ];

    /// <summary>The condition, or null with at least one refusal.</summary>
    public Condition? Read(Located value)
    {
        if (!file.IsObject(value, "a condition"))
            return null;
        if (value["all"] is not null)
            return Parts(value, "all") is { } all ? new Condition.All(all) : null;
        if (value["any"] is not null)
            return Parts(value, "any") is { } any ? new Condition.Any(any) : null;
        if (value["not"] is { } part)
        {
            file.OnlyKnown(value, "not");
            return Read(part) is { } not ? new Condition.Not(not) : null;
        }

        if (value["input"] is not { } name)
            return No(value, "a condition has to be one of all, any, not, or an input with what it is held against");
        return Input.Named(name.Text, inputs) is { } input
            ? Held(value, input)
            : No(name, $"there is no input {name.Text}; there are {string.Join(", ", inputs.Select(i => i.Name))}");
    }

    private ImmutableArray<Condition>? Parts(Located value, string name)
    {
        file.OnlyKnown(value, name);
        var items = file.Items(value, name);
        if (items.IsEmpty)
        {
            No(value, $"{name} needs at least one condition");
            return null;
        }

        var parts = items.Select(Read).ToImmutableArray();
        return parts.Contains(null) ? null : parts!;
    }

    private Condition? Held(Located value, Input input)
    {
        file.OnlyKnown(value, "input", "in", "is", "above", "atLeast", "below", "atMost", "byAge", "measured");
        if (value["byAge"] is { } byAge && input.Type != InputType.Number)
            return No(byAge, "only numbers have limits by age");
        if (value["measured"] is { } measured && input.Type != InputType.Number)
            return No(measured, "only numbers count where they were measured");
        var operands = value.Members.Where(m => m.Name is "in" or "is" || Comparisons.Any(c => c.Name == m.Name)).ToArray();
        if (operands is not [var operand])
            return No(value, "an input is held against exactly one of in, is, above, atLeast, below, atMost");
        switch (operand.Name, input.Type)
        {
            case ("is", InputType.Flag):
                return file.FlagOf(operand.Value, "is") is null ? null : new Condition.OneOf(input, [operand.Value.Text]);
            case ("in", InputType.Word):
                return Words(value, input, operand.Value);
            case ("in" or "is", _):
                return No(operand.Value, $"{input.Name} is not a {(operand.Name == "is" ? "flag" : "word")}");
            case (_, InputType.Number or InputType.Duration):
                return Compared(value, input, operand);
            default:
                return No(operand.Value, $"{input.Name} is not a number");
        }
    }

    private Condition.OneOf? Words(Located value, Input input, Located operand)
    {
        var words = file.Items(value, "in");
        if (words.IsEmpty)
            return No(operand, "in needs at least one word") as Condition.OneOf;
        foreach (var word in words)
            if (!input.Words.Contains(word.Text) || word.Kind != JsonValueKind.String)
                file.RefuseValue(word, input.Name, LocatedFields.OneOf(input.Words));
        return new(input, [.. words.Select(w => w.Text)]);
    }

    private Condition.Compare? Compared(Located value, Input input, LocatedMember operand)
    {
        var comparison = Comparisons.First(c => c.Name == operand.Name).Comparison;
        var (limit, clockName) = Limit(input, operand.Value);
        var bands = Bands(value);
        var measured = file.Flag(value, "measured");
        return limit is null || bands.IsDefault ? null : new(input, comparison, limit.Value, clockName, bands, measured);
    }

    private (double? Limit, string? Clock) Limit(Input input, Located operand)
    {
        if (input.Type == InputType.Number)
            return (file.Number(operand, input.Name), null);
        return operand.Text switch
        {
            "window" => (clock.Window.TotalSeconds, "window"),
            "limit" => (clock.Limit.TotalSeconds, "limit"),
            "soon" => (clock.Soon.TotalSeconds, "soon"),
            _ => (file.Span(operand, $"{input.Name} (or one of window, limit, soon)")?.TotalSeconds, null),
        };
    }

    /// <summary>Bands must not overlap; <c>default</c> with a refusal.</summary>
    private ImmutableArray<AgeBand> Bands(Located value)
    {
        if (value["byAge"] is null)
            return [];
        var bands = ImmutableArray.CreateBuilder<AgeBand>();
        foreach (var item in file.Items(value, "byAge"))
        {
            if (!file.IsObject(item, "a band"))
                return default;
            file.OnlyKnown(item, "from", "under", "limit");
            if (
                file.Required(item, "from") is not { } from
                || file.Required(item, "under") is not { } under
                || file.Required(item, "limit") is not { } limit
                || file.Number(from, "from") is not { } f
                || file.Number(under, "under") is not { } u
                || file.Number(limit, "limit") is not { } l
            )
                return default;
            if (f < 0 || u <= f || (bands.Count > 0 && f < bands[^1].UnderYears))
            {
                No(item, "bands run upwards from 0 years and do not overlap");
                return default;
            }

            bands.Add(new(f, u, l));
        }

        return bands.ToImmutable();
    }

    private Condition? No(Located at, string reason)
    {
        file.Refuse(at.Offset, reason);
        return null;
    }
}
