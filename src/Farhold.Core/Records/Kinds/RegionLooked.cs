using System.Diagnostics;
using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>A step of the first look: one region or one limb, and what was found there.</summary>
    public sealed record RegionLooked(Limb? Limb, BodyRegion? Region, LookFound Found, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.RegionLooked;

        internal static RegionLooked Through(FieldCodec f, RegionLooked? p)
        {
            f.OneOf(Field.Limb, Field.Region, "a look is at one limb or in one region: give exactly one of limb and region");
            return new(
                f.Word(Field.Limb, p?.Limb),
                f.Word(Field.Region, p?.Region),
                f.RequiredWord(Field.Found, p?.Found),
                f.Text(Field.Note, p?.Note)
            );
        }

        internal override string Said(DateTimeZone? zone)
        {
            var found = Found switch
            {
                LookFound.Nothing => RecordTexts.FoundNothing,
                LookFound.Wound => RecordTexts.FoundWound,
                LookFound.Other => RecordTexts.FoundOther,
                _ => throw new UnreachableException(),
            };
            return RecordTexts.RegionLooked(EntryWords.Place(Limb, Region), found, EntryWords.Note(Note));
        }
    }
}
