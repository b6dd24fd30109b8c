using NodaTime;

namespace Farhold.Signs;

/// <summary>When tapping along has gone on long enough.</summary>
/// <param name="HalfWidthPerMinute">The interval of the rate may reach this far either side, per minute.</param>
/// <param name="LeastSpan">From the first tap to the last.</param>
public sealed record TapTarget(double HalfWidthPerMinute, Duration LeastSpan)
{
    /// <summary>±5/min over at least 15 s (design).</summary>
    public static TapTarget Pulse { get; } = new(5, Duration.FromSeconds(15));

    /// <summary>±2/min over at least 30 s (design).</summary>
    public static TapTarget Breaths { get; } = new(2, Duration.FromSeconds(30));
}

/// <summary>A rate counted by tapping along.</summary>
/// <param name="Beats">Beats between the first and the last tap, after mending.</param>
/// <param name="PerMinute">Null below two taps at different times.</param>
/// <param name="LowPerMinute">Lower end of the 95 % interval; null below <see cref="TapRate.LeastIntervals"/> intervals.</param>
/// <param name="HighPerMinute">Upper end; null as well where the spread is too great to give one.</param>
/// <param name="Missed">Beats added where a gap was a whole number of beats.</param>
/// <param name="Doubled">Taps left out because they came at once after another.</param>
/// <param name="Irregular">The rhythm is too uneven for mending; nothing was added or left out.</param>
/// <param name="Enough">The target is met.</param>
public sealed record TapCount(
    int Beats,
    double? PerMinute,
    double? LowPerMinute,
    double? HighPerMinute,
    int Missed,
    int Doubled,
    bool Irregular,
    bool Enough
)
{
    internal static TapCount None { get; } = new(0, null, null, null, 0, 0, Irregular: false, Enough: false);
}
