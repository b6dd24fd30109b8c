using System.Globalization;

namespace Farhold.WayOut.Ground;

/// <summary>Places as people write them: degrees in their usual forms, or a grid reference.</summary>
public static class CoordinateText
{
    /// <summary>Longer text is refused unread.</summary>
    public const int MaxLength = 200;

    /// <param name="source">Named in a refusal as the file.</param>
    /// <remarks>
    /// Letters N, S, E, W, before or after, decide what is latitude; without letters the latitude comes first. A grid
    /// reference gives the centre of its square.
    /// </remarks>
    public static Read<GeoPoint> Parse(string text, string source = "coordinates")
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > MaxLength)
            return new Read<GeoPoint>.Refused([new Refusal(source, 1, MaxLength + 1, GroundTexts.PlaceLong(MaxLength))]);
        if (!MgrsText.LooksLikeOne(text))
            return AnglePairText.Parse(text, source);
        return Mgrs.Parse(text, source) switch
        {
            Read<MgrsSquare>.Usable square => new Read<GeoPoint>.Usable(square.Value.Centre),
            Read<MgrsSquare>.Refused refused => new Read<GeoPoint>.Refused(refused.Refusals),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    public static string Format(GeoPoint place, CoordinateStyle style) =>
        style switch
        {
            CoordinateStyle.Decimal => string.Create(CultureInfo.InvariantCulture, $"{place.Latitude:F6}, {place.Longitude:F6}"),
            CoordinateStyle.DegreesMinutes => Pair(place, DegreesMinutes),
            CoordinateStyle.DegreesMinutesSeconds => Pair(place, DegreesMinutesSeconds),
            CoordinateStyle.Mgrs => Mgrs.Format(place),
            _ => throw new ArgumentOutOfRangeException(nameof(style), style, "Not a way to write a place."),
        };

    private static string Pair(GeoPoint place, Func<double, int, string> write) =>
        $"{write(place.Latitude, 2)} {(double.IsNegative(place.Latitude) ? 'S' : 'N')} "
        + $"{write(place.Longitude, 3)} {(double.IsNegative(place.Longitude) ? 'W' : 'E')}";

    // Rounded once, in the smallest unit, so that 59.99996 minutes carry into the next degree.
    private static string DegreesMinutes(double degrees, int width)
    {
        var units = (long)Math.Round(Math.Abs(degrees) * 60_000);
        var (whole, rest) = Math.DivRem(units, 60_000);
        return $"{Padded(whole, width)}° {Padded(rest / 1000, 2)}.{Padded(rest % 1000, 3)}′";
    }

    private static string DegreesMinutesSeconds(double degrees, int width)
    {
        var units = (long)Math.Round(Math.Abs(degrees) * 36_000);
        var (whole, rest) = Math.DivRem(units, 36_000);
        return $"{Padded(whole, width)}° {Padded(rest / 600, 2)}′ {Padded(rest % 600 / 10, 2)}.{rest % 10}″";
    }

    private static string Padded(long number, int width) => number.ToString("D" + width, CultureInfo.InvariantCulture);
}
