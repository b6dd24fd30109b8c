using System.Globalization;
using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>Where the casualty is, in degrees (WGS 84); accuracy and altitude in metres.</summary>
    public sealed record PositionNoted(double Lat, double Lon, double? AccuracyM = null, double? AltitudeM = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.PositionNoted;

        internal static PositionNoted Through(FieldCodec f, PositionNoted? p) =>
            new(
                f.RequiredNumber(FieldRange.Lat, Field.Lat, p?.Lat),
                f.RequiredNumber(FieldRange.Lon, Field.Lon, p?.Lon),
                f.Number(FieldRange.AccuracyM, Field.AccuracyM, p?.AccuracyM),
                f.Number(FieldRange.AltitudeM, Field.AltitudeM, p?.AltitudeM)
            );

        internal override string Said(DateTimeZone? zone)
        {
            var more = EntryWords.Listed(
                [
                    AccuracyM is { } accuracy ? RecordTexts.PositionWithin(Say.Number(accuracy)) : null,
                    AltitudeM is { } altitude ? RecordTexts.PositionAltitude(Say.Number(altitude)) : null,
                ],
                ", "
            );
            return RecordTexts.Position(
                    string.Create(CultureInfo.InvariantCulture, $"{Lat:0.#####}"),
                    string.Create(CultureInfo.InvariantCulture, $"{Lon:0.#####}")
                ) + (more.Length == 0 ? "" : $" ({more})");
        }
    }
}
