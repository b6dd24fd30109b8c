using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace Farhold.WayOut.Ground;

/// <summary>A point while its element is being read.</summary>
/// <param name="Fault">Why its position can't be used.</param>
internal readonly record struct GpxPointDraft(GeoPoint Place, double? ElevationM, Instant? Time, int Line, int Column, string? Fault)
{
    /// <summary>Metres; the Dead Sea's shore and the highest summit lie within (design, rounded outwards).</summary>
    private const double LowestM = -500,
        HighestM = 9_000;

    public static GpxPointDraft At(string? latitude, string? longitude, int line, int column, TrackWarnings warnings)
    {
        var draft = new GpxPointDraft(default, null, null, line, column, null);
        if (latitude is null || longitude is null)
            return draft with { Fault = $"This point has no {(latitude is null ? "lat" : "lon")}; a point needs both lat and lon." };
        if (Number(latitude, line, column, warnings) is not { } lat)
            return draft with { Fault = $"lat=\"{Short(latitude)}\" is not a number of degrees." };
        if (Number(longitude, line, column, warnings) is not { } lon)
            return draft with { Fault = $"lon=\"{Short(longitude)}\" is not a number of degrees." };
        if (Math.Abs(lat) > 90)
            return draft with
            {
                Fault =
                    Math.Abs(lat) <= 180 && Math.Abs(lon) <= 90
                        ? $"The latitude {Short(latitude)} is beyond 90 degrees, but {Short(longitude)} would be one: latitude and "
                            + $"longitude seem to be swapped."
                        : $"The latitude {Short(latitude)} is beyond 90 degrees.",
            };
        if (Math.Abs(lon) > 180)
            return draft with { Fault = $"The longitude {Short(longitude)} is beyond 180 degrees." };
        return draft with { Place = new GeoPoint(lat, lon) };
    }

    public GpxPointDraft WithElevation(string text, TrackWarnings warnings)
    {
        if (string.IsNullOrWhiteSpace(text))
            return this;
        if (Number(text, Line, Column, warnings) is { } metres && metres is >= LowestM and <= HighestM)
            return this with { ElevationM = metres };
        warnings.Add(
            TrackWarningKind.ElevationNotUsable,
            Line,
            Column,
            count => GroundTexts.HeightsNotUsable(count, Say.Number(LowestM), Say.Number(HighestM), Short(text))
        );
        return this;
    }

    public GpxPointDraft WithTime(string text, TrackWarnings warnings)
    {
        text = text.Trim();
        if (text.Length == 0)
            return this;
        if (OffsetDateTimePattern.ExtendedIso.Parse(text) is { Success: true } zoned)
            return this with { Time = zoned.Value.ToInstant() };
        if (LocalDateTimePattern.ExtendedIso.Parse(text) is { Success: true } local)
        {
            warnings.Add(TrackWarningKind.TimeWithoutZone, Line, Column, count => GroundTexts.TimesWithoutZone(count));
            return this with { Time = local.Value.InUtc().ToInstant() };
        }

        warnings.Add(TrackWarningKind.TimeNotReadable, Line, Column, count => GroundTexts.TimesNotReadable(count, Short(text)));
        return this;
    }

    public GpxPoint ToPoint() => new(Place, ElevationM, Time, Line, Column);

    private static double? Number(string text, int line, int column, TrackWarnings warnings)
    {
        if (Parse(text) is { } number)
            return number;
        var comma = text.IndexOf(',', StringComparison.Ordinal);
        if (comma < 0 || text.Contains('.', StringComparison.Ordinal) || Parse(text.Replace(',', '.')) is not { } repaired)
            return null;
        warnings.Add(TrackWarningKind.DecimalComma, line, column, count => GroundTexts.DecimalCommas(count, Short(text)));
        return repaired;

        static double? Parse(string s) =>
            double.TryParse(s, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }

    private static string Short(string text) => text.Length <= 20 ? text : string.Concat(text.AsSpan(0, 20), "…");
}
