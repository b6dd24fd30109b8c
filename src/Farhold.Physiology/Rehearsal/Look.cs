namespace Farhold.Physiology.Rehearsal;

public enum LookKind
{
    /// <summary>At the wrist, a minute.</summary>
    Pulse,
    Breaths,

    /// <summary>Systolic and diastolic by cuff.</summary>
    Pressure,
    Refill,
    Mental,

    /// <summary>At a wound, from above.</summary>
    Bleeding,

    /// <summary>At a wound, also under the limb and the dressing's edge.</summary>
    BleedingBelow,
}

public enum BleedingSeen
{
    None,
    Oozing,
    Active,
}

/// <summary>A look that somebody has begun; what it shows comes when its time is up.</summary>
/// <param name="Wound">Where a wound is looked at.</param>
/// <param name="ReadyAt">In seconds since the start.</param>
public sealed record Look(LookKind Kind, string? Wound, double AskedAt, double ReadyAt);

/// <summary>What a look shows: not the truth, but what somebody can make out, with an error of its own.</summary>
public abstract record Shown
{
    private Shown() { }

    /// <summary>A rate a minute, or seconds.</summary>
    public sealed record Number(double Value) : Shown;

    /// <summary>mmHg.</summary>
    public sealed record Pressures(double Systolic, double Diastolic) : Shown;

    public sealed record Answers(Consciousness To) : Shown;

    public sealed record Bleeds(BleedingSeen Seen) : Shown;

    /// <summary>No pulse to count, none to hear: not known, which is never good news.</summary>
    public sealed record CannotTell : Shown;
}

/// <summary>Makes what is shown of what is true.</summary>
internal static class Observation
{
    public static double Seconds(LooksConstants k, LookKind kind) =>
        kind switch
        {
            LookKind.Pulse => k.PulseTime,
            LookKind.Breaths => k.BreathsTime,
            LookKind.Pressure => k.CuffTime,
            LookKind.Refill => k.RefillTime,
            LookKind.Mental => k.MentalTime,
            _ => k.BleedingTime,
        };

    /// <param name="error">Draws an even error within 1 either way, by a name of its own.</param>
    /// <param name="flow">Of the wound looked at, mL/min.</param>
    /// <param name="hidden">By what covers it, and not soaked through.</param>
    public static Shown Of(LooksConstants k, LookKind kind, Vitals v, double flow, bool hidden, Func<string, double> error) =>
        kind switch
        {
            LookKind.Pulse => v.RadialPulse
                ? new Shown.Number(Math.Round(v.HeartRate * (1 + (k.PulseError * error("rate")))))
                : new Shown.CannotTell(),
            LookKind.Breaths => new Shown.Number(
                v.RespiratoryRate <= 0 ? 0 : Math.Max(0, Math.Round(v.RespiratoryRate + (k.BreathsError * error("rate"))))
            ),
            LookKind.Pressure => v.RadialPulse
                ? new Shown.Pressures(
                    Stepped(v.SystolicPressure + (k.CuffError * error("systolic")), k.CuffSteps),
                    Stepped(v.DiastolicPressure + (k.CuffError * error("diastolic")), k.CuffSteps)
                )
                : new Shown.CannotTell(),
            LookKind.Refill => new Shown.Number(Math.Max(0.5, Stepped(v.CapillaryRefill + (k.RefillError * error("time")), 0.5))),
            LookKind.Mental => new Shown.Answers(v.Consciousness),
            _ => new Shown.Bleeds(hidden && kind == LookKind.Bleeding ? BleedingSeen.None : Word(k, flow)),
        };

    public static BleedingSeen Word(LooksConstants k, double flow) =>
        flow < k.OozingFrom ? BleedingSeen.None
        : flow <= k.ActiveFrom ? BleedingSeen.Oozing
        : BleedingSeen.Active;

    private static double Stepped(double value, double step) => Math.Round(value / step) * step;
}
