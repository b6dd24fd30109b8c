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

    /// <summary>How strong the pulse at the wrist is.</summary>
    Wrist,

    /// <summary>Lips and eyelid, skin of the trunk: pale, cool, clammy.</summary>
    Skin,

    /// <summary>Asked whether they feel faint.</summary>
    Dizzy,

    /// <summary>Core by a thermometer, °C.</summary>
    Temperature,

    /// <summary>The pulse beyond the tourniquet of the modelled limb.</summary>
    Beyond,
}

public enum PulseFelt
{
    Strong,
    Weak,
    Absent,
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

    /// <param name="Confused">Answers to voice or better, and is not clear.</param>
    public sealed record Answers(Consciousness To, bool Confused = false) : Shown;

    public sealed record Pulses(PulseFelt Felt) : Shown;

    public sealed record Skin(bool Pale, bool Cool, bool Clammy) : Shown;

    public sealed record Says(bool Yes) : Shown;

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
            LookKind.Wrist or LookKind.Beyond => WristTime,
            LookKind.Skin or LookKind.Dizzy => SkinTime,
            LookKind.Temperature => ThermometerTime,
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
            LookKind.Mental => new Shown.Answers(v.Consciousness, v.Consciousness == Consciousness.Alert && v.Glasgow < ConfusedBelow),
            LookKind.Wrist => new Shown.Pulses(
                !v.RadialPulse ? PulseFelt.Absent
                : v.SystolicPressure < WeakBelow ? PulseFelt.Weak
                : PulseFelt.Strong
            ),
            LookKind.Skin => new Shown.Skin(v.Pale, v.ShellTemperature < CoolBelow, v.ColdAndClammy),
            LookKind.Dizzy => v.Consciousness == Consciousness.Alert
                ? new Shown.Says(v.SystolicPressure < DizzyBelow)
                : new Shown.CannotTell(),
            LookKind.Temperature => new Shown.Number(Math.Round(10 * (v.CoreTemperature + (ThermometerError * error("core")))) / 10),
            LookKind.Beyond => v.LimbFlowShare >= BeyondFrom && v.RadialPulse
                ? new Shown.Pulses(PulseFelt.Strong)
                : new Shown.Pulses(PulseFelt.Absent),
            _ => new Shown.Bleeds(hidden && kind == LookKind.Bleeding ? BleedingSeen.None : Word(k, flow)),
        };

    // What numbered constants have nothing about; all by judgement.
    private const double WristTime = 10;
    private const double SkinTime = 5;
    private const double ThermometerTime = 60;
    private const double ThermometerError = 0.2;
    private const double ConfusedBelow = 14.5;
    private const double WeakBelow = 90;
    private const double CoolBelow = 30;
    private const double DizzyBelow = 95;
    private const double BeyondFrom = 0.3;

    public static BleedingSeen Word(LooksConstants k, double flow) =>
        flow < k.OozingFrom ? BleedingSeen.None
        : flow <= k.ActiveFrom ? BleedingSeen.Oozing
        : BleedingSeen.Active;

    private static double Stepped(double value, double step) => Math.Round(value / step) * step;
}
