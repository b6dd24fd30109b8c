using NodaTime;

namespace Farhold.Signs;

/// <summary>National Early Warning Score 2, summed from what is known; what is not known widens the result.</summary>
/// <remarks>
/// Source: Royal College of Physicians 2017, National Early Warning Score (NEWS) 2, chart 1, thresholds and triggers.
/// The chart counts in whole numbers (temperature in tenths); a value between two of its bands takes the higher
/// score of the two (design). Not for under 16 years, pregnancy or altitude: see <see cref="News2Caution"/>.
/// </remarks>
public static class News2
{
    private static readonly ScoreBounds AnyOfThree = new(0, 3);

    /// <summary>The score at <paramref name="now"/> from signs no older than <paramref name="freshFor"/>.</summary>
    public static News2Result Score(News2Signs signs, News2Scale scale, Instant now, Duration freshFor)
    {
        var oxygen = Fresh(signs.OnOxygen);
        return new News2Result([
            Part(News2PartName.RespiratoryRate, signs.RespiratoryRate, OfRespiratoryRate),
            Spo2(),
            new(News2PartName.Oxygen, oxygen is { } on ? ScoreBounds.Exactly(OfOxygen(on)) : new(0, 2), Known(signs.OnOxygen)),
            Part(News2PartName.Systolic, signs.Systolic, OfSystolic),
            Part(News2PartName.HeartRate, signs.HeartRate, OfHeartRate),
            Part(News2PartName.Consciousness, signs.Mental, OfMental),
            Part(News2PartName.Temperature, signs.TemperatureC, OfTemperature),
        ]);

        // On scale 2 a saturation of 93 % or more scores only on oxygen, so not knowing that widens this part too.
        News2Part Spo2()
        {
            var bounds = (Fresh(signs.Spo2), scale) switch
            {
                (null, _) => AnyOfThree,
                ({ } percent, News2Scale.One) => ScoreBounds.Exactly(OfSpo2Scale1(percent)),
                ({ } percent, _) when oxygen is { } on => ScoreBounds.Exactly(OfSpo2Scale2(percent, on)),
                ({ } percent, _) => new(OfSpo2Scale2(percent, onOxygen: false), OfSpo2Scale2(percent, onOxygen: true)),
            };
            return new(News2PartName.Spo2, bounds, Known(signs.Spo2));
        }

        News2Part Part<T>(News2PartName name, Seen<T>? seen, Func<T, int> score)
            where T : struct => new(name, Fresh(seen) is { } value ? ScoreBounds.Exactly(score(value)) : AnyOfThree, Known(seen));

        T? Fresh<T>(Seen<T>? seen)
            where T : struct => seen is { } s && s.IsFreshAt(now, freshFor) ? s.Value : null;

        Knowledge Known<T>(Seen<T>? seen) =>
            seen is not { } s ? Knowledge.NeverSeen
            : s.IsFreshAt(now, freshFor) ? Knowledge.Fresh
            : Knowledge.Stale;
    }

    /// <summary>Breaths per minute: 3 to 8, 1 from 9 to 11, 0 from 12 to 20, 2 from 21 to 24, 3 from 25.</summary>
    public static int OfRespiratoryRate(double perMinute) =>
        Finite(perMinute) switch
        {
            < 9 => 3,
            < 12 => 1,
            <= 20 => 0,
            <= 24 => 2,
            _ => 3,
        };

    /// <summary>Percent: 3 to 91, 2 from 92 to 93, 1 from 94 to 95, 0 from 96.</summary>
    public static int OfSpo2Scale1(double percent) =>
        Finite(percent) switch
        {
            < 92 => 3,
            < 94 => 2,
            < 96 => 1,
            _ => 0,
        };

    /// <summary>
    /// Percent: 3 to 83, 2 from 84 to 85, 1 from 86 to 87, 0 from 88 to 92; above that 0 on air, on oxygen 1 to 94, 2 to
    /// 96, 3 from 97.
    /// </summary>
    public static int OfSpo2Scale2(double percent, bool onOxygen) =>
        Finite(percent) switch
        {
            < 84 => 3,
            < 86 => 2,
            < 88 => 1,
            <= 92 => 0,
            _ when !onOxygen => 0,
            <= 94 => 1,
            <= 96 => 2,
            _ => 3,
        };

    public static int OfOxygen(bool onOxygen) => onOxygen ? 2 : 0;

    /// <summary>mmHg: 3 to 90, 2 from 91 to 100, 1 from 101 to 110, 0 from 111 to 219, 3 from 220.</summary>
    public static int OfSystolic(double mmHg) =>
        Finite(mmHg) switch
        {
            < 91 => 3,
            < 101 => 2,
            < 111 => 1,
            <= 219 => 0,
            _ => 3,
        };

    /// <summary>
    /// Beats per minute: 3 to 40, 1 from 41 to 50, 0 from 51 to 90, 1 from 91 to 110, 2 from 111 to 130, 3 from 131.
    /// </summary>
    public static int OfHeartRate(double perMinute) =>
        Finite(perMinute) switch
        {
            < 41 => 3,
            < 51 => 1,
            <= 90 => 0,
            <= 110 => 1,
            <= 130 => 2,
            _ => 3,
        };

    /// <summary>0 if alert, 3 for new confusion or anything below alert.</summary>
    public static int OfMental(Mental mental) => mental == Mental.Alert ? 0 : 3;

    /// <summary>°C: 3 to 35.0, 1 from 35.1 to 36.0, 0 from 36.1 to 38.0, 1 from 38.1 to 39.0, 2 from 39.1.</summary>
    public static int OfTemperature(double celsius) =>
        Finite(celsius) switch
        {
            < 35.1 => 3,
            < 36.1 => 1,
            <= 38.0 => 0,
            <= 39.0 => 1,
            _ => 2,
        };

    // Every comparison with NaN is false, which would score as the last band of each table.
    private static double Finite(double value) =>
        double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A sign is a finite number.");
}
