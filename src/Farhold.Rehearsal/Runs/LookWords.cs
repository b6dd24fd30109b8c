using System.Diagnostics;

namespace Farhold.Rehearsal.Runs;

/// <summary>Looks and what they show as people read it; truth files have the words of <see cref="ShownText"/>.</summary>
internal static class LookWords
{
    public static string Say(LookKind kind) =>
        kind switch
        {
            LookKind.Pulse => RunTexts.LookPulse,
            LookKind.Breaths => RunTexts.LookBreaths,
            LookKind.Pressure => RunTexts.LookPressure,
            LookKind.Refill => RunTexts.LookRefill,
            LookKind.Mental => RunTexts.LookMental,
            LookKind.Bleeding => RunTexts.LookBleeding,
            LookKind.BleedingBelow => RunTexts.LookBleedingBelow,
            LookKind.Wrist => RunTexts.LookWrist,
            LookKind.Skin => RunTexts.LookSkin,
            LookKind.Dizzy => RunTexts.LookDizzy,
            LookKind.Temperature => RunTexts.LookTemperature,
            LookKind.Beyond => RunTexts.LookBeyond,
            _ => throw new UnreachableException(),
        };

    public static string Say(Shown shown) =>
        shown switch
        {
            Shown.Number or Shown.Pressures => ShownText.Write(shown),
            Shown.Says(var yes) => yes ? RunTexts.Yes : RunTexts.No,
            Shown.Skin(var pale, var cool, var clammy) => string.Join(
                ' ',
                pale ? RunTexts.Pale : RunTexts.Rosy,
                cool ? RunTexts.Cool : RunTexts.Warm,
                clammy ? RunTexts.Clammy : RunTexts.Dry
            ),
            Shown.CannotTell => RunTexts.CannotTell,
            _ => Word(ShownText.Write(shown)),
        };

    /// <summary>A word of a truth file or a record.</summary>
    public static string Word(string wire) =>
        Wire.Parse<Bleeding>(wire) is { } bleeding ? Text.Say.Word(bleeding)
        : Wire.Parse<Mental>(wire) is { } mental ? Text.Say.Word(mental)
        : Wire.Parse<RadialPulse>(wire) is { } pulse ? Text.Say.Word(pulse)
        : wire.Replace('-', ' ');
}
