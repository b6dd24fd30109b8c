using System.Collections.Immutable;

namespace Farhold.Signs;

/// <summary>One thing that signs taken may tell of, and the reading they give of it.</summary>
/// <remarks>There is one object for each; <see cref="SignState"/> finds the entries that tell of it.</remarks>
internal sealed class SignRead
{
    public static readonly SignRead HeartRate = Number(s => s.HeartRate);
    public static readonly SignRead RespiratoryRate = Number(s => s.RespiratoryRate);
    public static readonly SignRead Spo2 = Number(s => s.Spo2);
    public static readonly SignRead TemperatureC = Number(s => s.TemperatureC);
    public static readonly SignRead CapillaryRefillS = Number(s => s.CapillaryRefillS);
    public static readonly SignRead Pain = Number(s => s.Pain);
    public static readonly SignRead Mental = Word(s => s.Mental);
    public static readonly SignRead RadialPulse = Word(s => s.RadialPulse);
    public static readonly SignRead Dizzy = Flag(s => s.Dizzy);
    public static readonly SignRead Pale = Flag(s => s.Pale);
    public static readonly SignRead Cool = Flag(s => s.Cool);
    public static readonly SignRead Clammy = Flag(s => s.Clammy);

    public static readonly SignRead Systolic = Number(s => s.Systolic);

    /// <summary>Whether there is no way to measure a pressure.</summary>
    public static readonly SignRead NoPressureCuff = Flag(s => s.NoPressureCuff);

    private static readonly ImmutableArray<SignRead> Pulses =
    [
        .. Enum.GetValues<Limb>()
            .Select(limb => Word(s => s.DistalPulse is { } felt && felt.TryGetValue(limb, out var pulse) ? pulse : (DistalPulse?)null)),
    ];

    public static readonly ImmutableArray<SignRead> All =
    [
        HeartRate,
        RespiratoryRate,
        Spo2,
        TemperatureC,
        CapillaryRefillS,
        Pain,
        Mental,
        RadialPulse,
        Dizzy,
        Pale,
        Cool,
        Clammy,
        Systolic,
        NoPressureCuff,
        .. Pulses,
    ];

    private static int made;

    private readonly Func<Payload.SignsTaken, bool> tells;
    private readonly Func<Payload.SignsTaken, Happened, Reading> read;

    private SignRead(Func<Payload.SignsTaken, bool> tells, Func<Payload.SignsTaken, Happened, Reading> read) =>
        (this.tells, this.read, Index) = (tells, read, made++);

    /// <summary>Its place in whatever holds one thing for each.</summary>
    public int Index { get; }

    /// <summary>The pulse below the tourniquet or wound of a limb.</summary>
    public static SignRead DistalPulse(Limb limb) => Pulses[(int)limb];

    /// <summary>Whether an entry of <see cref="Kind.SignsTaken"/> says anything of it.</summary>
    public bool Tells(Dated entry) => tells(entry.As<Payload.SignsTaken>());

    /// <summary>The reading of an entry that tells of it.</summary>
    public Reading Of(Dated entry) => read(entry.As<Payload.SignsTaken>(), entry.When);

    private static SignRead Number(Func<Payload.SignsTaken, double?> of) =>
        new(s => of(s) is not null, (s, when) => Reading.Of(of(s)!.Value, when));

    private static SignRead Flag(Func<Payload.SignsTaken, bool?> of) =>
        new(s => of(s) is not null, (s, when) => Reading.Of(of(s)!.Value, when));

    private static SignRead Word<T>(Func<Payload.SignsTaken, T?> of)
        where T : struct, Enum => new(s => of(s) is not null, (s, when) => Reading.Of(Wire.Word(of(s)!.Value), when));
}
