using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Signs;

/// <summary>Signs as the record has them: the last of each, and its course.</summary>
public static class SignsSeen
{
    /// <summary>The last time anybody saw this sign up to <paramref name="now"/>; null if nobody did.</summary>
    public static Seen<T>? Last<T>(State state, Instant now, Func<Payload.SignsTaken, T?> sign)
        where T : struct
    {
        var taken = state.Of(Kind.SignsTaken);
        for (var i = taken.Length - 1; i >= 0; i--)
            if (taken[i].When.Latest <= now && sign(taken[i].As<Payload.SignsTaken>()) is { } value)
                return new Seen<T>(value, taken[i].When);
        return null;
    }

    /// <summary>Every reading of a sign up to <paramref name="now"/>, in order.</summary>
    public static ImmutableArray<Seen<double>> Course(State state, Instant now, Func<Payload.SignsTaken, double?> sign) =>
        [
            .. state
                .Of(Kind.SignsTaken)
                .Where(d => d.When.Latest <= now)
                .Select(d => (d.When, Value: sign(d.As<Payload.SignsTaken>())))
                .Where(d => d.Value is not null)
                .Select(d => new Seen<double>(d.Value!.Value, d.When)),
        ];

    /// <summary>What NEWS2 is made from.</summary>
    public static News2Signs ForNews2(State state, Instant now) =>
        new()
        {
            RespiratoryRate = Last(state, now, s => s.RespiratoryRate),
            Spo2 = Last(state, now, s => s.Spo2),
            OnOxygen = Last(state, now, s => s.OnOxygen),
            Systolic = Last(state, now, s => s.Systolic),
            HeartRate = Last(state, now, s => s.HeartRate),
            Mental = Last(state, now, s => s.Mental),
            TemperatureC = Last(state, now, s => s.TemperatureC),
        };
}
