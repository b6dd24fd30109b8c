namespace Farhold;

/// <summary>Every field name that an entry can carry, in no particular order; wire names are the camel-case ones.</summary>
internal enum Field
{
    Id,
    Happened,
    Recorded,
    By,
    Kind,
    Alias,
    Sex,
    AgeYears,
    MassKg,
    Allergies,
    Medicines,
    History,
    Wound,
    Limb,
    Region,
    Nature,
    Note,
    Tourniquet,
    Place,
    Make,
    Material,
    Minutes,
    Dressing,
    Bleeding,
    Outcome,
    HeartRate,
    BreathRate,
    Systolic,
    Diastolic,
    Spo2,
    TemperatureC,
    Mental,
    Gcs,
    Dizzy,
    Pale,
    Cool,
    Clammy,
    RadialPulse,
    CapillaryRefillS,
    Pain,
    DistalPulse,
    OnOxygen,
    Eye,
    Verbal,
    Motor,
    NoPressureCuff,
    Able,
    Item,
    Count,
    Drug,
    Amount,
    Unit,
    Route,
    Fluid,
    Millilitres,
    Task,
    Likely,
    Earliest,
    Latest,
    Basis,
    Plan,
    From,
    Text,
    Allows,
    Target,
    Replace,
    Reason,
    How,
    To,
}

internal static class Fields
{
    private static readonly string[] Wires = [.. Enum.GetNames<Field>().Select(n => char.ToLowerInvariant(n[0]) + n[1..])];

    private static readonly Utf8Names Names = new(Wires);

    public static int Total => Wires.Length;

    public static string Wire(Field field) => Wires[(int)field];

    public static int IndexOf(ReadOnlySpan<byte> name) => Names.IndexOf(name);
}
