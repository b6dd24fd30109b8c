using System.Buffers.Text;
using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using NodaTime;

namespace Farhold.Records;

/// <summary>The fields of one line, found in one pass, and the objections to them gathered on the way.</summary>
/// <remarks>
/// A field whose value is JSON <c>null</c> counts as not given. Offsets are in bytes from the line's start. What nobody has asked
/// for once the entry is read is not understood: so the fields of a kind are those that its reader asks for.
/// </remarks>
internal sealed class EntryFields(StringPool pool) : FieldCodec
{
    public const int MaxFields = 200;
    public const int MaxDepth = 16;
    private const int MaxText = 20_000;
    private const int MaxName = 64;

    private readonly Slot[] slots = new Slot[Fields.Total];
    private readonly bool[] asked = new bool[Fields.Total];
    private readonly List<int> given = [];
    private readonly List<(string Name, Slot Slot)> unknown = [];
    private readonly List<(NotUnderstood What, bool IsNull)> inside = [];
    private readonly List<(int Offset, string Reason)> objections = [];
    private ReadOnlyMemory<byte> line;

    public IReadOnlyList<(int Offset, string Reason)> Objections => objections;

    /// <summary>Takes in a line; false if it is no JSON object (the objection says why).</summary>
    public bool Scan(ReadOnlyMemory<byte> text)
    {
        line = text;
        Array.Clear(slots);
        Array.Clear(asked);
        given.Clear();
        unknown.Clear();
        inside.Clear();
        objections.Clear();
        var reader = new Utf8JsonReader(text.Span, new JsonReaderOptions { MaxDepth = MaxDepth });
        try
        {
            if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
                return Object(0, "an entry is a JSON object in braces, one on a line");
            ScanMembers(ref reader);
            reader.Read();
            return true;
        }
        catch (JsonException e)
        {
            return Object((int)(e.BytePositionInLine ?? 0), JsonFault.Of(e));
        }
        catch (InvalidOperationException)
        {
            return Object((int)reader.TokenStartIndex, "a name holds an escape that stands for no character");
        }
    }

    public override string? Text(Field field, string? value = null) => Text(field, MaxText);

    public override string RequiredText(Field field, string? value = null) => Text(field, MaxText) ?? Missing(field, "");

    public override string RequiredName(Field field, string? value = null) => Text(field, MaxName) ?? Missing(field, "");

    public override string? Name(Field field, string? value = null) => Text(field, MaxName);

    public override double? Number(FieldRange range, Field field, double? value = null)
    {
        if (!Given(field, JsonTokenType.Number, "a number", out var slot))
            return null;
        var written = line.Span.Slice(slot.Start, slot.Length);
        if (Utf8Parser.TryParse(written, out double read, out var used) && used == written.Length && range.Holds(read))
            return read;
        Object(slot.Start, range.Objection(Encoding.UTF8.GetString(written[..Math.Min(written.Length, 40)])));
        return null;
    }

    public override double RequiredNumber(FieldRange range, Field field, double? value = null) =>
        Number(range, field) ?? Missing(field, range.Min);

    public override bool? Flag(Field field, bool? value = null)
    {
        asked[(int)field] = true;
        ref var slot = ref slots[(int)field];
        if (slot.Type is JsonTokenType.True or JsonTokenType.False)
            return slot.Type == JsonTokenType.True;
        Given(field, JsonTokenType.True, "true or false", out _);
        return null;
    }

    public override bool RequiredFlag(Field field, bool? value = null) => Flag(field) ?? Missing(field, false);

    public override T? Word<T>(Field field, T? value = null)
    {
        if (!Given(field, JsonTokenType.String, "a word", out var slot))
            return null;
        var word = Wire.Parse<T>(Written(slot));
        if (word is null)
            Object(slot.Start, $"{Fields.Wire(field)} is not one of {string.Join(", ", Wire.Words<T>())}");
        return word;
    }

    public override T RequiredWord<T>(Field field, T? value = null) => Word<T>(field) ?? Missing(field, default(T));

    public override Instant? Time(Field field, Instant? value = null)
    {
        if (!Given(field, JsonTokenType.String, "an instant", out var slot))
            return null;
        var instant = WrittenInstant.TryParse(Written(slot));
        if (instant is null)
            Object(slot.Start, $"{Fields.Wire(field)} is no instant of the years 1900 to 2500 such as 2031-05-04T02:10:00Z");
        return instant;
    }

    public override Instant RequiredTime(Field field, Instant? value = null) => Time(field) ?? Missing(field, default(Instant));

    public Happened RequiredHappened(Field field)
    {
        if (slots[(int)field].Type == JsonTokenType.StartObject)
            return HappenedParts(field);
        return Time(field) is { } instant ? Happened.At(instant) : Missing(field, default(Happened));
    }

    public override EntryId RequiredId(Field field, EntryId? value = null) => OptionalId(field) ?? Missing(field, default(EntryId));

    public override EntryId? OptionalId(Field field, EntryId? value = null)
    {
        if (Text(field, 80) is not { } text)
            return null;
        if (EntryId.TryParse(text) is { } id)
            return id with { Device = pool.Get(Encoding.ASCII.GetBytes(id.Device)) };
        Object(slots[(int)field].Start, $"{Fields.Wire(field)} is not a device id, a dash and a number from 1, such as 7k3f-12");
        return null;
    }

    public Kind? KindWord() =>
        Given(Field.Kind, JsonTokenType.String, "a word", out var slot)
            ? Kinds.Parse(Written(slot)) ?? Kind.OfNewerVersion
            : Missing<Kind?>(Field.Kind, null);

    /// <summary>The link to the line before; null where none is given, one that fits no line where it is no such digits.</summary>
    public LineHash? Link(Field field)
    {
        asked[(int)field] = true;
        return !Has(field) ? null
            : slots[(int)field] is { Type: JsonTokenType.String } slot && LineHash.TryParse(Written(slot)) is { } link ? link
            : default(LineHash);
    }

    /// <summary>A mark that others may read; anything but true or false is left as not understood.</summary>
    public void Mark(Field field) => asked[(int)field] = slots[(int)field].Type is JsonTokenType.True or JsonTokenType.False;

    public override ImmutableArray<string> Texts(Field field, ImmutableArray<string> value = default)
    {
        if (!Given(field, JsonTokenType.StartArray, "a list of texts", out var slot))
            return default;
        var texts = ImmutableArray.CreateBuilder<string>();
        var reader = new Utf8JsonReader(line.Span.Slice(slot.Start, slot.Length));
        reader.Read();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            if (reader.TokenType == JsonTokenType.String && reader.ValueSpan.Length <= MaxText && TryString(ref reader) is { } text)
                texts.Add(text);
            else
            {
                Object(slot.Start + (int)reader.TokenStartIndex, $"{Fields.Wire(field)} is a list of texts");
                return default;
            }
        }

        return texts.ToImmutable();
    }

    public override T? Object<T>(Field field, string what, T? value, Func<FieldCodec, T?, T> through)
        where T : class => Object(field, what, inner => through(inner, null));

    /// <summary>The members of an object field as their own fields; null where it is not given.</summary>
    private T? Object<T>(Field field, string what, Func<EntryFields, T?> read)
        where T : class
    {
        if (!Given(field, JsonTokenType.StartObject, what, out var slot))
            return null;
        var inner = new EntryFields(pool);
        inner.Scan(line.Slice(slot.Start, slot.Length));
        var value = read(inner);
        foreach (var (offset, reason) in inner.objections)
            Object(slot.Start + offset, reason);
        foreach (var (left, isNull) in inner.Left())
            inside.Add((left with { Name = $"{Fields.Wire(field)}.{left.Name}", Offset = slot.Start + left.Offset }, isNull));
        return inner.objections.Count == 0 ? value : null;
    }

    public override JsonText RequiredJsonObject(Field field, JsonText? value = null) =>
        Given(field, JsonTokenType.StartObject, "an object of fields", out var slot)
            ? new(line.Slice(slot.Start, slot.Length))
            : Missing(field, JsonText.Of("{}"));

    public override ImmutableSortedDictionary<Limb, T>? ByLimb<T>(Field field, ImmutableSortedDictionary<Limb, T>? value = null)
    {
        if (!Has(field))
            return null;
        var all = ImmutableSortedDictionary.CreateBuilder<Limb, T>();
        foreach (var (name, word, offset) in WordMembers(field))
        {
            if (Wire.Parse<Limb>(name) is { } limb && word is not null && Wire.Parse<T>(word) is { } known && !all.ContainsKey(limb))
                all.Add(limb, known);
            else
                Object(offset, $"{Fields.Wire(field)} names each limb once, as {string.Join(" or ", Wire.Words<T>())}");
        }

        return all.ToImmutable();
    }

    public override string UnknownKind(string? value) => RequiredText(Field.Kind);

    public override void OneOf(Field one, Field other, string reason)
    {
        if (Has(one) == Has(other))
            Object(one, reason);
    }

    public override void Together(Field one, Field other)
    {
        if (Has(one) != Has(other))
            Object(one, $"{Fields.Wire(one)} and {Fields.Wire(other)} go together");
    }

    public override void Check(bool holds, Field at, string reason)
    {
        if (!holds)
            Object(at, reason);
    }

    /// <summary>Names of the members of an object field with the values they have as text, or null for values of another form.</summary>
    private List<(string Name, string? Word, int Offset)> WordMembers(Field field)
    {
        if (!Given(field, JsonTokenType.StartObject, "an object", out var slot))
            return [];
        var members = new List<(string, string?, int)>();
        var reader = new Utf8JsonReader(line.Span.Slice(slot.Start, slot.Length));
        reader.Read();
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName && members.Count < MaxFields)
        {
            var offset = slot.Start + (int)reader.TokenStartIndex;
            var name = TryString(ref reader) ?? "?";
            reader.Read();
            members.Add((name, reader.TokenType == JsonTokenType.String ? TryString(ref reader) : null, offset));
            reader.Skip();
        }

        return members;
    }

    /// <summary>What nobody asked for, in the order of the line.</summary>
    /// <param name="nulls">Whether that counts which is null, and so not given.</param>
    public ImmutableArray<NotUnderstood> NotUnderstood(bool nulls)
    {
        if (unknown.Count == 0 && inside.Count == 0 && given.TrueForAll(i => asked[i]))
            return [];
        return [.. Left().Where(l => nulls || !l.IsNull).Select(l => l.What).OrderBy(w => w.Offset)];
    }

    /// <summary>The word that stands for the kind.</summary>
    public NotUnderstood UnknownKind() =>
        new(Farhold.Records.NotUnderstood.Cut(Text(Field.Kind) ?? ""), "", slots[(int)Field.Kind].Start, IsKind: true);

    /// <summary>
    /// Objects to the first text anywhere in the line in which an escape stands for half a character: nobody could write it again.
    /// </summary>
    public void RefuseHalfCharacters()
    {
        if (line.Span.IndexOf("\\u"u8) < 0)
            return;
        var reader = new Utf8JsonReader(line.Span, new JsonReaderOptions { MaxDepth = MaxDepth });
        while (reader.Read())
        {
            if (
                reader.TokenType is not (JsonTokenType.String or JsonTokenType.PropertyName)
                || !reader.ValueIsEscaped
                || TryString(ref reader) is not null
            )
                continue;
            Object((int)reader.TokenStartIndex, "a text holds an escape that stands for no character");
            return;
        }
    }

    public bool Has(Field field) => slots[(int)field].Type is not (JsonTokenType.None or JsonTokenType.Null);

    /// <summary>Adds an objection at a field (or at the line's start where the field is not given).</summary>
    public void Object(Field field, string reason) => Object(slots[(int)field].Start, reason);

    public bool Object(int offset, string reason)
    {
        objections.Add((offset, reason));
        return false;
    }

    private void ScanMembers(ref Utf8JsonReader reader)
    {
        var members = 0;
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var at = (int)reader.TokenStartIndex;
            if (++members > MaxFields)
            {
                Object(at, $"an entry has at most {MaxFields} fields");
                return;
            }

            var index = Fields.IndexOf(reader.ValueIsEscaped ? Encoding.UTF8.GetBytes(reader.GetString()!) : reader.ValueSpan);
            var name = index < 0 ? reader.GetString()! : "";
            var twice = index >= 0 ? slots[index].Type != JsonTokenType.None : unknown.Exists(u => u.Name == name);
            if (twice)
                Object(at, "the same field is given twice");
            reader.Read();
            var start = (int)reader.TokenStartIndex;
            var slot = new Slot(at, start, 0, reader.TokenType, reader.ValueIsEscaped);
            if (reader.TokenType == JsonTokenType.String)
                slot = slot with { Start = start + 1, Length = reader.ValueSpan.Length };
            reader.Skip();
            if (slot.Type != JsonTokenType.String)
                slot = slot with { Length = (int)reader.BytesConsumed - start };
            if (index >= 0)
            {
                slots[index] = slot;
                given.Add(index);
            }
            else
                unknown.Add((name, slot));
        }
    }

    private IEnumerable<(NotUnderstood What, bool IsNull)> Left() =>
        given
            .Where(i => !asked[i])
            .Select(i => (Fields.Wire((Field)i), slots[i]))
            .Concat(unknown)
            .Select(u =>
                (
                    new NotUnderstood(Farhold.Records.NotUnderstood.Cut(u.Item1), Shown(u.Item2), u.Item2.At),
                    u.Item2.Type == JsonTokenType.Null
                )
            )
            .Concat(inside);

    /// <summary>A value as it is written.</summary>
    private string Shown(Slot slot) =>
        Farhold.Records.NotUnderstood.Cut(
            Encoding.UTF8.GetString(line.Span.Slice(slot.Start, Math.Min(slot.Length, 4 * Farhold.Records.NotUnderstood.MaxShown)))
        );

    private string? Text(Field field, int longest)
    {
        if (!Given(field, JsonTokenType.String, "a text", out var slot))
            return null;
        if (slot.Length > 0 && slot.Length <= longest * 6)
        {
            var text = slot.Escaped ? Unescaped(slot) : pool.Get(line.Span.Slice(slot.Start, slot.Length));
            if (text?.Length <= longest)
                return text;
            if (text is null)
            {
                Object(slot.Start, $"{Fields.Wire(field)} holds an escape that stands for no character");
                return null;
            }
        }

        Object(slot.Start, $"{Fields.Wire(field)} is a text of 1 to {longest} characters");
        return null;
    }

    /// <summary>The bytes a text stands for; none where an escape stands for half a character.</summary>
    private ReadOnlySpan<byte> Written(Slot slot) =>
        slot.Escaped ? Encoding.UTF8.GetBytes(Unescaped(slot) ?? "") : line.Span.Slice(slot.Start, slot.Length);

    private string? Unescaped(Slot slot)
    {
        var reader = new Utf8JsonReader(line.Span.Slice(slot.Start - 1, slot.Length + 2));
        reader.Read();
        return TryString(ref reader);
    }

    /// <summary>The string, or null where an escape stands for half a character.</summary>
    private static string? TryString(ref Utf8JsonReader reader)
    {
        try
        {
            return reader.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private Happened HappenedParts(Field field)
    {
        var parts = Object(
            field,
            "an instant or {earliest, latest}",
            inner =>
            {
                Instant earliest = inner.RequiredTime(Field.Earliest),
                    latest = inner.RequiredTime(Field.Latest);
                if (latest >= earliest)
                    return new Pair(earliest, latest);
                inner.Object(Field.Latest, "latest is before earliest");
                return null;
            }
        );
        return parts is null ? default : new(parts.Earliest, parts.Latest);
    }

    private bool Given(Field field, JsonTokenType type, string expected, out Slot slot)
    {
        asked[(int)field] = true;
        slot = slots[(int)field];
        if (slot.Type == type)
            return true;
        if (slot.Type is not (JsonTokenType.None or JsonTokenType.Null))
            Object(slot.Start, $"{Fields.Wire(field)} has to be {expected}");
        return false;
    }

    private T Missing<T>(Field field, T stand)
    {
        if (!Has(field))
            Object(0, $"the field {Fields.Wire(field)} is missing");
        return stand;
    }

    private sealed record Pair(Instant Earliest, Instant Latest);

    /// <param name="At">Where the field's name stands.</param>
    /// <param name="Start">Where its value does; a text's without the quote.</param>
    private readonly record struct Slot(int At, int Start, int Length, JsonTokenType Type, bool Escaped);
}
