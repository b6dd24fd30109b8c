namespace Farhold.Physiology.Rehearsal;

/// <summary>A value on its way to another while something is done.</summary>
internal readonly record struct Ramp(double From, double To, double Start, double End)
{
    public static Ramp Constant(double value) => new(value, value, 0, 0);

    public bool Runs(double time) => time < End;

    public double At(double time) =>
        time >= End ? To
        : time <= Start ? From
        : From + ((To - From) * (time - Start) / (End - Start));

    public Ramp Towards(double to, double start, double end) => new(At(start), to, start, end);
}

/// <summary>What lies on a wound, and what that does to its flow.</summary>
internal sealed class WoundCover(RehearsalWound wound)
{
    private Ramp opening = Ramp.Constant(1);
    private Ramp pressure = Ramp.Constant(0);
    private Ramp clotting = Ramp.Constant(1);

    public RehearsalWound Wound { get; } = wound;
    public PackingGauze? Packing { get; set; }
    public bool IsDressed { get; set; }
    public bool IsPressed { get; set; }

    /// <summary>Opening of the wound under packing that failed; null while it holds.</summary>
    public double? Leak { get; set; }

    public int Attempts { get; set; }

    /// <summary>When the packing fails, in seconds; null where it holds.</summary>
    public double? FailsAt { get; set; }

    /// <summary>When the last packing or dressing was done, in seconds; never, where there is none.</summary>
    public double CoveredAt { get; set; } = double.PositiveInfinity;

    /// <summary>Soaked into what covers it since, mL.</summary>
    public double Soaked { get; set; }

    /// <summary>Of a limb of its own: how far its tourniquet closes the arteries, 0 to 1.</summary>
    public Ramp Tied { get; set; } = Ramp.Constant(0);

    public bool Changes(double time) => opening.Runs(time) || Tied.Runs(time);

    /// <summary>The whole of what lies on it works from <paramref name="end"/> on.</summary>
    public void Settle(ActsConstants k, double start, double end)
    {
        var (o, p, c) = Effect(k);
        opening = opening.Towards(o, start, end);
        pressure = pressure.Towards(p, start, end);
        clotting = clotting.Towards(c, start, end);
    }

    public WoundConditions At(double time)
    {
        var (kind, tied) = (Wound.Limb is null ? Wound.Kind : WoundKind.TrunkArtery, Tied.At(time));
        return WoundConditions.Bleeding(kind, Wound.Bleed) with
        {
            Opening = opening.At(time) * (1 - tied),
            // Behind a tight tourniquet no pressure strains a clot.
            OutsidePressure = tied >= 1 ? BeyondPressure : pressure.At(time),
            ClotRate = clotting.At(time),
        };
    }

    /// <summary>Above any pressure of the arteries, mmHg.</summary>
    private const double BeyondPressure = 400;

    private (double Opening, double Pressure, double Clotting) Effect(ActsConstants k)
    {
        var (o, p, c) = (Packing, IsDressed) switch
        {
            _ when Leak is { } leak => (leak, 0.0, 1.0),
            (PackingGauze.Plain, false) => (k.PlainOpening, k.PlainPressure, k.PlainClotting),
            (PackingGauze.Haemostatic, false) => (k.HaemostaticOpening, k.HaemostaticPressure, k.HaemostaticClotting),
            (PackingGauze.Plain, true) => (k.DressedOpening, k.DressedPressure, k.PlainClotting),
            (PackingGauze.Haemostatic, true) => (k.DressedOpening, k.DressedPressure, k.HaemostaticClotting),
            (_, true) => (k.DressingOpening, k.DressingPressure, 1),
            _ => (1, 0, 1),
        };
        return IsPressed ? (Math.Min(o, k.HandOpening), Math.Max(p, k.HandPressure), Math.Max(c, k.HandClotting)) : (o, p, c);
    }
}
