using System.Collections.Immutable;

namespace Farhold.Signs;

/// <summary>One value of an input that may be the current one.</summary>
/// <param name="Low">For numbers and durations (in seconds): the least it can be.</param>
/// <param name="High">The most it can be.</param>
/// <param name="Word">For words and flags; for a number, a word that stands in its place (no cuff).</param>
/// <param name="Lasting">Does not go stale.</param>
/// <param name="Doubtful">It can't be what it says, or says nothing of what is asked: to be looked at again, and unknown until
/// then.</param>
/// <param name="Contradicted">Another value of the same look contradicts it: it is no good news, but a bad one still acts.</param>
public readonly record struct Reading(
    double Low,
    double High,
    string? Word,
    Happened When,
    bool Lasting = false,
    bool Doubtful = false,
    bool Contradicted = false
)
{
    public static Reading Of(double number, Happened when, bool lasting = false) => new(number, number, null, when, lasting);

    public static Reading Of(string word, Happened when, bool lasting = false) => new(double.NaN, double.NaN, word, when, lasting);

    public static Reading Of(bool flag, Happened when, bool lasting = false) => Of(flag ? "true" : "false", when, lasting);
}

/// <summary>Finds which of several readings may be the current one.</summary>
public static class Current
{
    /// <inheritdoc cref="Of{T}"/>
    public static ImmutableArray<Reading> Of(ImmutableArray<Dated> entries, NodaTime.Instant now, Func<Dated, Reading?> read) =>
        Of<Reading>(entries, now, read);

    /// <summary>
    /// Readings not surely followed by a later one: usually one, several where times overlap, none if nobody ever looked.
    /// </summary>
    /// <param name="entries">Sorted by latest possible time.</param>
    /// <param name="read">Null where the entry says nothing of the matter.</param>
    public static ImmutableArray<T> Of<T>(ImmutableArray<Dated> entries, NodaTime.Instant now, Func<Dated, T?> read)
        where T : struct
    {
        var found = ImmutableArray<T>.Empty;
        var surelySince = NodaTime.Instant.MinValue;
        for (var i = entries.Length - 1; i >= 0; i--)
        {
            var entry = entries[i];
            if (entry.When.Latest < surelySince)
                break;
            if (entry.When.Earliest > now || read(entry) is not { } reading)
                continue;
            found = found.Add(reading);
            if (entry.When.Latest <= now)
                surelySince = NodaTime.Instant.Max(surelySince, entry.When.Earliest);
        }

        return found;
    }
}
