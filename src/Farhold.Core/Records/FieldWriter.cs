using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using NodaTime;

namespace Farhold.Records;

/// <summary>Writes the fields of an entry; what is not given is left out.</summary>
internal sealed class FieldWriter(Utf8JsonWriter w) : FieldCodec
{
    public override string? Text(Field field, string? value)
    {
        if (value is not null)
            w.WriteString(Fields.Wire(field), value);
        return value;
    }

    public override string RequiredText(Field field, string? value) => Text(field, value)!;

    public override string? Name(Field field, string? value) => Text(field, value);

    public override string RequiredName(Field field, string? value) => Text(field, value)!;

    public override double? Number(FieldRange range, Field field, double? value)
    {
        if (value is not { } known)
            return value;
        w.WritePropertyName(Fields.Wire(field));
        w.WriteRawValue(known.ToString("R", CultureInfo.InvariantCulture));
        return value;
    }

    public override double RequiredNumber(FieldRange range, Field field, double? value) => Number(range, field, value)!.Value;

    public override bool? Flag(Field field, bool? value)
    {
        if (value is { } known)
            w.WriteBoolean(Fields.Wire(field), known);
        return value;
    }

    public override bool RequiredFlag(Field field, bool? value) => Flag(field, value)!.Value;

    public override T? Word<T>(Field field, T? value)
    {
        if (value is { } known)
            w.WriteString(Fields.Wire(field), Wire.Word(known));
        return value;
    }

    public override T RequiredWord<T>(Field field, T? value) => Word(field, value)!.Value;

    public override Instant? Time(Field field, Instant? value)
    {
        if (value is { } known)
            w.WriteString(Fields.Wire(field), WrittenInstant.Write(known));
        return value;
    }

    public override Instant RequiredTime(Field field, Instant? value) => Time(field, value)!.Value;

    public override EntryId? OptionalId(Field field, EntryId? value)
    {
        Text(field, value?.ToString());
        return value;
    }

    public override EntryId RequiredId(Field field, EntryId? value) => OptionalId(field, value)!.Value;

    public override ImmutableArray<string> Texts(Field field, ImmutableArray<string> value)
    {
        if (value.IsDefault)
            return value;
        w.WriteStartArray(Fields.Wire(field));
        foreach (var text in value)
            w.WriteStringValue(text);
        w.WriteEndArray();
        return value;
    }

    public override ImmutableSortedDictionary<Limb, T>? ByLimb<T>(Field field, ImmutableSortedDictionary<Limb, T>? value)
    {
        if (value is null)
            return value;
        w.WriteStartObject(Fields.Wire(field));
        foreach (var (limb, word) in value)
            w.WriteString(Wire.Word(limb), Wire.Word(word));
        w.WriteEndObject();
        return value;
    }

    public override T? Object<T>(Field field, string what, T? value, Func<FieldCodec, T?, T> through)
        where T : class
    {
        if (value is null)
            return value;
        w.WriteStartObject(Fields.Wire(field));
        through(this, value);
        w.WriteEndObject();
        return value;
    }

    public override JsonText RequiredJsonObject(Field field, JsonText? value)
    {
        w.WritePropertyName(Fields.Wire(field));
        w.WriteRawValue(value!.Value.Utf8.Span);
        return value.Value;
    }

    /// <remarks>The envelope writes it.</remarks>
    public override string UnknownKind(string? value) => value!;
}
