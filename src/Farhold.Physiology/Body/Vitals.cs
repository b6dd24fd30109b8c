namespace Farhold.Physiology.Body;

/// <summary>Answers to voice, to pain, not at all.</summary>
public enum Consciousness
{
    Alert,
    Voice,
    Pain,
    Unresponsive,
}

/// <summary>What is read off the state. Rules of signs are set by judgement, but where the model's file names a source.</summary>
public sealed record Vitals
{
    /// <summary>A minute.</summary>
    public double HeartRate { get; }

    /// <summary>mmHg.</summary>
    public double SystolicPressure { get; }

    /// <summary>mmHg.</summary>
    public double DiastolicPressure { get; }

    /// <summary>mmHg.</summary>
    public double MeanArterialPressure { get; }

    /// <summary>mmHg.</summary>
    public double CentralVenousPressure { get; }

    /// <summary>mL.</summary>
    public double StrokeVolume { get; }

    /// <summary>L/min.</summary>
    public double CardiacOutput { get; }

    /// <summary>A minute.</summary>
    public double RespiratoryRate { get; }

    /// <summary>Glasgow Coma Scale, 3 to 15, without steps: round it to show it.</summary>
    public double Glasgow { get; }

    public Consciousness Consciousness { get; }

    /// <summary>Seconds.</summary>
    public double CapillaryRefill { get; }

    /// <summary>g/dL.</summary>
    public double Haemoglobin { get; }

    /// <summary>mL.</summary>
    public double BloodVolume { get; }

    /// <summary>mL/h.</summary>
    public double Urine { get; }

    /// <summary>Out of all wounds, mL/min.</summary>
    public double WoundFlow { get; }

    /// <summary>mL/min.</summary>
    public double OxygenDelivery { get; }

    /// <summary>mL/min.</summary>
    public double OxygenUse { get; }

    /// <summary>mmol/L.</summary>
    public double BaseDeficit { get; }

    /// <summary>Arterial, mmHg.</summary>
    public double CarbonDioxide { get; }

    /// <summary>Arterial.</summary>
    public double Ph { get; }

    /// <summary>Heart rate over systolic pressure.</summary>
    public double ShockIndex { get; }

    /// <summary>1 at rest.</summary>
    public double SkinFlow { get; }

    /// <summary>0 to 10.</summary>
    public double Thirst { get; }

    /// <summary>Pulses are lost in this order, Deakin and Low 2000. One that is felt says nothing of a pressure above its limit.</summary>
    public bool RadialPulse { get; }
    public bool FemoralPulse { get; }
    public bool CarotidPulse { get; }

    public bool Pale { get; }
    public bool ColdAndClammy { get; }
    public bool Mottled { get; }
    public bool Shivers { get; }

    /// <summary>°C.</summary>
    public double CoreTemperature { get; }

    /// <summary>Of skin and what lies under it, °C.</summary>
    public double ShellTemperature { get; }

    /// <summary>Into the injured limb, 1 at rest.</summary>
    public double LimbFlowShare { get; }

    /// <summary>Gasps, or does not breathe.</summary>
    public bool Agonal { get; }

    internal Vitals(ModelConstants k, in Physique p, in Levels s, in Signals a)
    {
        var g = k.Signs;
        var pulse = a.StrokeVolume / p.PulseCompliance;
        HeartRate = a.HeartRate;
        MeanArterialPressure = a.ArterialPressure;
        SystolicPressure = a.ArterialPressure + (g.SystolicShare * pulse);
        DiastolicPressure = a.ArterialPressure - ((1 - g.SystolicShare) * pulse);
        CentralVenousPressure = a.VenousPressure;
        StrokeVolume = a.StrokeVolume;
        CardiacOutput = a.Output * 60 / 1000;
        RespiratoryRate = a.BreathRate;
        Glasgow = AlongGlasgow(k, s.CerebralSupply);
        Consciousness =
            Glasgow >= g.AlertFrom ? Consciousness.Alert
            : Glasgow >= g.VoiceFrom ? Consciousness.Voice
            : Glasgow >= g.PainFrom ? Consciousness.Pain
            : Consciousness.Unresponsive;
        CapillaryRefill = k.Skin.RefillTime / Math.Sqrt(Math.Max(k.Skin.RefillFloor, a.SkinFlow));
        Haemoglobin = a.Haemoglobin;
        BloodVolume = a.BloodVolume;
        Urine = a.UrineFlow * 3600;
        WoundFlow = a.WoundFlow * 60;
        OxygenDelivery = a.OxygenDelivery * 60;
        OxygenUse = a.OxygenUse * 60;
        BaseDeficit = a.BaseDeficit;
        CarbonDioxide = a.CarbonDioxide;
        Ph = PhOf(g, a.BaseDeficit, a.CarbonDioxide);
        ShockIndex = HeartRate / Math.Max(SystolicPressure, g.ShockIndexPressureFloor);
        SkinFlow = a.SkinFlow;
        var dry =
            (g.ThirstPerBlood * (1 - (a.BloodVolume / p.BloodVolume)))
            + (g.ThirstPerTissue * Math.Max(1 - (s.InterstitialVolume / p.InterstitialVolume), 0));
        Thirst = 10 * Math.Clamp(dry, 0, 1);
        RadialPulse = SystolicPressure >= g.RadialPulseBelow;
        FemoralPulse = SystolicPressure >= g.FemoralPulseBelow;
        CarotidPulse = SystolicPressure >= g.CarotidPulseBelow;
        Pale = a.ActivationAbove > g.PaleAbove;
        ColdAndClammy = a.ActivationAbove > g.ClammyAbove && s.ShellTemperature < g.ClammyShellBelow;
        Mottled = a.SkinFlow < g.MottledBelow;
        Shivers = a.ShiveringMultiple > g.ShiveringShown;
        CoreTemperature = s.CoreTemperature;
        ShellTemperature = s.ShellTemperature;
        LimbFlowShare = a.LimbInflow / p.LimbFlow;
        Agonal = s.CerebralSupply < g.AgonalBelow;
    }

    private static double AlongGlasgow(ModelConstants k, double supply)
    {
        var points = k.Glasgow;
        if (supply <= points[0][0])
            return points[0][1];
        for (var i = 1; i < points.Length; i++)
            if (supply <= points[i][0])
            {
                var (from, to) = (points[i - 1], points[i]);
                return from[1] + ((to[1] - from[1]) * (supply - from[0]) / (to[0] - from[0]));
            }

        return points[^1][1];
    }

    /// <summary>Van Slyke's equation with Henderson and Hasselbalch's, halved 60 times between 6.2 and 7.9.</summary>
    private static double PhOf(SignsConstants g, double baseDeficit, double carbonDioxide)
    {
        var ten = ExactMath.Log(10);
        var (low, high) = (6.2, 7.9);
        for (var i = 0; i < 60; i++)
        {
            var ph = (low + high) / 2;
            var bicarbonate = g.CarbonDioxideSolubility * carbonDioxide * ExactMath.Exp((ph - g.CarbonicPk) * ten);
            var excess = g.VanSlykeFactor * (bicarbonate - g.Bicarbonate + (g.Buffer * (ph - g.NormalPh)));
            (low, high) = excess < -baseDeficit ? (ph, high) : (low, ph);
        }

        return (low + high) / 2;
    }
}
