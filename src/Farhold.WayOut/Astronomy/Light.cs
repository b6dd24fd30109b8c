namespace Farhold.WayOut.Astronomy;

/// <summary>How light it is outside, from dark to bright, under a clear sky with a flat horizon.</summary>
/// <remarks>
/// The steps lie where the centre of the sun stands 18, 12 and 6 degrees below the horizon, and 50 minutes of arc below it
/// (34′ refraction and 16′ radius). Source: US Naval Observatory, definitions of rise, set and twilight (from memory). Whether one can
/// still walk in a given light is for the caller to say.
/// </remarks>
public enum Light
{
    Night,
    AstronomicalTwilight,
    NauticalTwilight,
    CivilTwilight,
    Day,
}

internal static class LightSteps
{
    /// <summary>Altitude of the sun, degrees, at which each light from <see cref="Light.AstronomicalTwilight"/> on begins.</summary>
    public static double Beginning(Light light) =>
        light switch
        {
            Light.AstronomicalTwilight => -18,
            Light.NauticalTwilight => -12,
            Light.CivilTwilight => -6,
            Light.Day => -50 / 60.0,
            _ => throw new ArgumentOutOfRangeException(nameof(light), light, "Night has no altitude at which it begins to get light."),
        };

    public static Light At(double altitude) =>
        altitude switch
        {
            >= -50 / 60.0 => Light.Day,
            >= -6 => Light.CivilTwilight,
            >= -12 => Light.NauticalTwilight,
            >= -18 => Light.AstronomicalTwilight,
            _ => Light.Night,
        };
}
