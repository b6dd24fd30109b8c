using NodaTime;

namespace Farhold.WayOut.Pace;

/// <summary>Units of distance, a km along or 100 m of height, divided by a rate.</summary>
/// <remarks>Source: Munter's method, read at chrismarchbanks.com/post/trip-speed: rate 4 up, 6 flat or down on foot, 2 in bush.</remarks>
public static class Munter
{
    public const double Up = 4;
    public const double DownOnFoot = 6;
    public const double DownOnSki = 10;
    public const double Bush = 2;

    public static Duration Time(Stretch stretch, double rate) =>
        Duration.FromHours((stretch.DistanceKm + ((stretch.AscentM + stretch.DescentM) / 100)) / rate);

    /// <summary>The climbing part at the rate for up, the rest at the rate for down.</summary>
    public static Duration Time(Stretch stretch)
    {
        var rising = stretch.Rising;
        return Time(rising, rising.AscentM > 0 ? Up : DownOnFoot) + Time(stretch.Falling, DownOnFoot);
    }
}
