using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>The air out where the party is, and the wind as a forecast states it: 10 m above open ground.</summary>
    /// <param name="WindKmh">Null: not stated.</param>
    public sealed record WeatherStated(double AirC, double? WindKmh = null, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.WeatherStated;

        internal static WeatherStated Through(FieldCodec f, WeatherStated? p) =>
            new(
                f.RequiredNumber(FieldRange.AirC, Field.AirC, p?.AirC),
                f.Number(FieldRange.WindKmh, Field.WindKmh, p?.WindKmh),
                f.Text(Field.Note, p?.Note)
            );

        internal override string Said(DateTimeZone? zone) =>
            RecordTexts.Weather(
                Say.Number(AirC),
                WindKmh is { } wind ? RecordTexts.WeatherWind(Say.Number(wind)) : "",
                EntryWords.Note(Note)
            );
    }
}
