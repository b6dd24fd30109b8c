namespace Farhold.Rehearsal.Runs;

/// <summary>What a look shows where the scenario sets a sign.</summary>
internal static class Overridden
{
    public static Shown Show(LookKind kind, Shown shown, SignOverride set) =>
        kind switch
        {
            LookKind.Pulse when set.HeartRate is { } rate => new Shown.Number(rate),
            LookKind.Breaths when set.BreathRate is { } rate => new Shown.Number(rate),
            LookKind.Refill when set.CapillaryRefillS is { } seconds => new Shown.Number(seconds),
            LookKind.Temperature when set.TemperatureC is { } celsius => new Shown.Number(celsius),
            LookKind.Pressure when set.Systolic is { } systolic => new Shown.Pressures(systolic, Math.Min(systolic, Diastolic(shown, set))),
            LookKind.Mental when set.Mental is { } mental => new Shown.Answers(
                mental switch
                {
                    Mental.Voice => Consciousness.Voice,
                    Mental.Pain => Consciousness.Pain,
                    Mental.Unresponsive => Consciousness.Unresponsive,
                    _ => Consciousness.Alert,
                },
                mental == Mental.Confused
            ),
            _ => shown,
        };

    private static double Diastolic(Shown shown, SignOverride set) =>
        set.Diastolic ?? (shown is Shown.Pressures pressures ? pressures.Diastolic : 60);
}
