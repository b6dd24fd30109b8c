using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Records;

/// <summary>What may stand in a field.</summary>
public enum FieldType
{
    Text,

    /// <summary>A text of at most 64 characters.</summary>
    Name,
    Number,
    Flag,
    Word,
    Time,

    /// <summary>A list of texts.</summary>
    Texts,

    /// <summary>The id of another entry.</summary>
    Id,

    /// <summary>An object of fields.</summary>
    Object,

    /// <summary>An object of a word for each limb.</summary>
    ByLimb,

    /// <summary>An object of anything.</summary>
    Json,
}

/// <summary>A field of a kind of entry, as its reader and writer know it.</summary>
/// <param name="Name">As it stands in the record.</param>
/// <param name="Required">An entry without it is refused.</param>
public sealed record EntryField(string Name, FieldType Type, bool Required)
{
    /// <summary>Of a number; null for everything else.</summary>
    public FieldRange? Range { get; init; }

    /// <summary>Of a word: all that may stand there.</summary>
    public ImmutableArray<string> Words { get; init; } = [];

    /// <summary>Of an object: its own fields.</summary>
    public ImmutableArray<EntryField> Members { get; init; } = [];
}

/// <summary>Lists the fields of a kind, from the same walk that reads and writes them.</summary>
internal sealed class FieldLister : FieldCodec
{
    private readonly ImmutableArray<EntryField>.Builder all = ImmutableArray.CreateBuilder<EntryField>();

    public static ImmutableArray<EntryField> Of<T>(Func<FieldCodec, T?, T> through)
    {
        var lister = new FieldLister();
        through(lister, default);
        return lister.all.ToImmutable();
    }

    public override string? Text(Field field, string? value) => Add<string?>(field, FieldType.Text, false, null);

    public override string RequiredText(Field field, string? value) => Add(field, FieldType.Text, true, "");

    public override string? Name(Field field, string? value) => Add<string?>(field, FieldType.Name, false, null);

    public override string RequiredName(Field field, string? value) => Add(field, FieldType.Name, true, "");

    public override double? Number(FieldRange range, Field field, double? value) =>
        Add<double?>(field, FieldType.Number, false, null, range);

    public override double RequiredNumber(FieldRange range, Field field, double? value) =>
        Add(field, FieldType.Number, true, range.Min, range);

    public override bool? Flag(Field field, bool? value) => Add<bool?>(field, FieldType.Flag, false, null);

    public override bool RequiredFlag(Field field, bool? value) => Add(field, FieldType.Flag, true, false);

    public override T? Word<T>(Field field, T? value) => Add<T?>(field, FieldType.Word, false, null, words: [.. Wire.Words<T>()]);

    public override T RequiredWord<T>(Field field, T? value) => Add(field, FieldType.Word, true, default(T), words: [.. Wire.Words<T>()]);

    public override Instant? Time(Field field, Instant? value) => Add<Instant?>(field, FieldType.Time, false, null);

    public override Instant RequiredTime(Field field, Instant? value) => Add(field, FieldType.Time, true, default(Instant));

    public override EntryId? OptionalId(Field field, EntryId? value) => Add<EntryId?>(field, FieldType.Id, false, null);

    public override EntryId RequiredId(Field field, EntryId? value) => Add(field, FieldType.Id, true, default(EntryId));

    public override ImmutableArray<string> Texts(Field field, ImmutableArray<string> value) =>
        Add(field, FieldType.Texts, false, default(ImmutableArray<string>));

    public override ImmutableSortedDictionary<Limb, T>? ByLimb<T>(Field field, ImmutableSortedDictionary<Limb, T>? value) =>
        Add<ImmutableSortedDictionary<Limb, T>?>(
            field,
            FieldType.ByLimb,
            false,
            null,
            members: [.. Wire.Words<Limb>().Select(l => new EntryField(l, FieldType.Word, false) { Words = [.. Wire.Words<T>()] })]
        );

    public override T? Object<T>(Field field, string what, T? value, Func<FieldCodec, T?, T> through)
        where T : class => Add<T?>(field, FieldType.Object, false, null, members: Of(through));

    public override JsonText RequiredJsonObject(Field field, JsonText? value) => Add(field, FieldType.Json, true, default(JsonText));

    public override string UnknownKind(string? value) => "";

    private T Add<T>(
        Field field,
        FieldType type,
        bool required,
        T stand,
        FieldRange? range = null,
        ImmutableArray<string> words = default,
        ImmutableArray<EntryField> members = default
    )
    {
        all.Add(
            new(Fields.Wire(field), type, required)
            {
                Range = range,
                Words = words.IsDefault ? [] : words,
                Members = members.IsDefault ? [] : members,
            }
        );
        return stand;
    }
}
