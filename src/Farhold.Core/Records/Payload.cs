using NodaTime;

namespace Farhold.Records;

/// <summary>What an entry says. Field names, units and ranges are those of the record format (see <c>FieldRange</c>).</summary>
/// <remarks>
/// A closed family, one file a kind in <c>Kinds/</c>: what it holds, the walk over its fields (<c>Through</c>), and its sentence. A
/// <c>switch</c> over it ends in <see cref="System.Diagnostics.UnreachableException"/>.
/// </remarks>
public abstract partial record Payload
{
    private Payload() { }

    internal abstract Kind OfKind { get; }

    /// <summary>What it says, in one line for people.</summary>
    /// <param name="zone">For the times it names; null: UTC.</param>
    internal abstract string Said(DateTimeZone? zone);
}

/// <summary>Glasgow coma scale parts: eye 1–4, verbal 1–5, motor 1–6; a part that can't be tested is null, never 1.</summary>
/// <remarks>Source: Teasdale and Jennett 1974, Lancet 304:81; 2014 wording (from memory).</remarks>
public sealed record GlasgowParts(int? Eye, int? Verbal, int? Motor)
{
    internal static GlasgowParts Through(FieldCodec f, GlasgowParts? p) =>
        new(
            (int?)f.Number(FieldRange.Eye, Field.Eye, p?.Eye),
            (int?)f.Number(FieldRange.Verbal, Field.Verbal, p?.Verbal),
            (int?)f.Number(FieldRange.Motor, Field.Motor, p?.Motor)
        );
}
