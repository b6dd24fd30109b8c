using NodaTime;

namespace Farhold.App.Signs;

/// <summary>Sums on the last blood pressure.</summary>
/// <param name="Index">Shock index, from a heart rate of the same look; null without one.</param>
/// <param name="Mean">Mean arterial pressure, mmHg; null without a diastolic.</param>
public sealed record PressureSum(double? Index, double? Mean, Elapsed Age)
{
    /// <summary>Null if no systolic pressure above 0 was ever taken.</summary>
    public static PressureSum? Of(State state, Instant now)
    {
        var last = state.Of(Kind.SignsTaken).LastOrDefault(d => d.When.Latest <= now && d.As<Payload.SignsTaken>().Systolic > 0);
        if (last?.As<Payload.SignsTaken>() is not { Systolic: { } systolic } signs)
            return null;
        double? index = signs.HeartRate is > 0 and var rate ? ShockIndex.Of(rate, systolic) : null;
        double? mean = signs.Diastolic is { } diastolic && diastolic <= systolic ? Pressures.MeanArterial(systolic, diastolic) : null;
        return index is null && mean is null ? null : new(index, mean, last.When.Until(now));
    }
}
