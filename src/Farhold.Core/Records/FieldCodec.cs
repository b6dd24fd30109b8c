using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Records;

/// <summary>
/// One walk over the fields of a kind of entry, in the order in which they are written. Each kind has one such walk: over a line it
/// reads them, over an entry it writes them, and over neither it lists them.
/// </summary>
/// <remarks>Every call takes the value to write and returns the value to go on with: the same one, or the one that was read.</remarks>
internal abstract class FieldCodec
{
    public abstract string? Text(Field field, string? value);

    public abstract string RequiredText(Field field, string? value);

    /// <summary>A short name such as a wound's or a tourniquet's: 1 to 64 characters.</summary>
    public abstract string? Name(Field field, string? value);

    public abstract string RequiredName(Field field, string? value);

    public abstract double? Number(FieldRange range, Field field, double? value);

    public abstract double RequiredNumber(FieldRange range, Field field, double? value);

    public abstract bool? Flag(Field field, bool? value);

    public abstract bool RequiredFlag(Field field, bool? value);

    public abstract T? Word<T>(Field field, T? value)
        where T : struct, Enum;

    public abstract T RequiredWord<T>(Field field, T? value)
        where T : struct, Enum;

    public abstract Instant? Time(Field field, Instant? value);

    public abstract Instant RequiredTime(Field field, Instant? value);

    public abstract EntryId? OptionalId(Field field, EntryId? value);

    public abstract EntryId RequiredId(Field field, EntryId? value);

    /// <summary>A list of texts; <c>default</c> where the field is not given.</summary>
    public abstract ImmutableArray<string> Texts(Field field, ImmutableArray<string> value);

    /// <summary>A word for each limb; limbs that nothing is said of are missing.</summary>
    public abstract ImmutableSortedDictionary<Limb, T>? ByLimb<T>(Field field, ImmutableSortedDictionary<Limb, T>? value)
        where T : struct, Enum;

    /// <summary>The members of an object field as their own fields; null where it is not given.</summary>
    /// <param name="what">The object, for a person.</param>
    public abstract T? Object<T>(Field field, string what, T? value, Func<FieldCodec, T?, T> through)
        where T : class;

    /// <summary>An object, kept as the JSON it came in.</summary>
    public abstract JsonText RequiredJsonObject(Field field, JsonText? value);

    /// <summary>The word that stands for a kind which this version does not know.</summary>
    public abstract string UnknownKind(string? value);

    /// <summary>Exactly one of two fields has to be given.</summary>
    public virtual void OneOf(Field one, Field other, string reason) { }

    /// <summary>Two fields that are given both or not at all.</summary>
    public virtual void Together(Field one, Field other) { }

    /// <summary>What has to hold between values that were read.</summary>
    public virtual void Check(bool holds, Field at, string reason) { }
}
