using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Care;

/// <summary>What air and wind do to everybody out there, by the weather that was last stated.</summary>
public sealed record Exposure(Payload.WeatherStated Weather, Happened When)
{
    /// <summary>Older than this it is asked for again (design: weather turns within hours).</summary>
    public static readonly Duration Fresh = Duration.FromHours(3);

    public const string Source =
        "wind chill: index of 2001, chart of the US National Weather Service (read in a copy), metric form (memory); "
        + "freezing times: Environment Canada's table (read in a copy)";

    /// <summary>Felt temperature, °C; null where the index does not hold or no wind was stated.</summary>
    public double? FeltC => Weather.WindKmh is { } wind ? WindChill.FeltC(Weather.AirC, wind) : null;

    /// <summary>How soon bare skin can freeze; null where it hardly does.</summary>
    public FrostbiteTime? Frostbite => WindChill.Frostbite(ColdestC);

    private double ColdestC => WindChill.ColdestC(Weather.AirC, Weather.WindKmh);

    /// <summary>By the weather last stated, the coldest where several may be the last; null where none was.</summary>
    public static Exposure? At(State state, Instant now) =>
        Current
            .Of<(Payload.WeatherStated Weather, Happened When)>(
                state.Of(Kind.WeatherStated),
                now,
                d => (d.As<Payload.WeatherStated>(), d.When)
            )
            .Select(w => new Exposure(w.Weather, w.When))
            .MinBy(e => e.ColdestC);

    /// <summary>Of several readings of one record, the coldest.</summary>
    public static Exposure? Coldest(IEnumerable<Exposure?> all) => all.OfType<Exposure>().MinBy(e => e.ColdestC);

    /// <summary>What it means, a sentence each.</summary>
    /// <param name="degrees">How a temperature is written; null: in °C.</param>
    public ImmutableArray<string> Lines(Instant now, Func<double, string>? degrees = null)
    {
        degrees ??= celsius => CareTexts.Degrees(Say.Number(celsius));
        var age = When.Until(now);
        return
        [
            CareTexts.Air(degrees(Weather.AirC), Weather.WindKmh is { } wind ? CareTexts.AirWind(Say.Number(wind)) : "", Say.Elapsed(age))
                + (age.Max > Fresh ? CareTexts.WeatherTurns : ""),
            Felt(degrees),
            .. Frostbite is { } time ? [Freezes(time)] : ImmutableArray<string>.Empty,
            .. Weather.AirC <= WindChill.WarmestAirC ? [Worse] : ImmutableArray<string>.Empty,
        ];
    }

    // Common practice: the index was measured on dry, healthy faces.
    private static string Worse => CareTexts.ColdWorse;

    private string Felt(Func<double, string> degrees) =>
        (Weather, FeltC) switch
        {
            // Adding nothing makes a rounded −0 a 0.
            (_, { } felt) => CareTexts.FeelsLike(degrees(Math.Round(felt) + 0.0)),
            ({ AirC: > WindChill.WarmestAirC }, _) => CareTexts.NotFeltAbove(degrees(WindChill.WarmestAirC)),
            ({ WindKmh: null }, _) => CareTexts.NotFeltNoWind,
            ({ WindKmh: < WindChill.LeastWindKmh }, _) => CareTexts.FeelsAsAir(Say.Number(WindChill.LeastWindKmh)),
            _ => CareTexts.NotFeltOutside(
                degrees(WindChill.ColdestAirC),
                Say.Number(WindChill.MostWindKmh),
                degrees(Math.Ceiling(ColdestC))
            ),
        };

    private string Freezes(FrostbiteTime time)
    {
        var within = time.From == 0 ? CareTexts.FreezesUnder(time.To) : CareTexts.FreezesWithin(time.From, time.To);
        var sooner = Weather.WindKmh is null or > WindChill.SoonerFromKmh ? CareTexts.SoonerInWind : "";
        return CareTexts.SkinFreezes(within, sooner);
    }
}
