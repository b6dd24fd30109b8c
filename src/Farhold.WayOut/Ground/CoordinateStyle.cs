namespace Farhold.WayOut.Ground;

/// <summary>How a place is written.</summary>
public enum CoordinateStyle
{
    /// <summary>46.558000, 8.561500: six decimals, 0.1 m.</summary>
    Decimal,

    /// <summary>46° 33.480′ N 008° 33.690′ E: thousandths of a minute, 2 m.</summary>
    DegreesMinutes,

    /// <summary>46° 33′ 28.8″ N 008° 33′ 41.4″ E: tenths of a second, 3 m.</summary>
    DegreesMinutesSeconds,

    /// <summary>32TMS6637156118: a square of 1 m.</summary>
    Mgrs,
}
