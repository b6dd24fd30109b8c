using System.Collections.Immutable;

namespace Farhold.App.Now;

/// <summary>Single signs seen at a glance, each an entry of its own.</summary>
internal sealed class SignChoices(Texts texts)
{
    public ImmutableArray<QuickGroup> Groups =>
        [
            new(texts.SignMental, [.. Enum.GetValues<Mental>().Select(m => Option(texts.MentalWord(m), new() { Mental = m }))]),
            new(texts.SignRadialPulse, [.. Enum.GetValues<RadialPulse>().Select(p => Option(texts.Word(p), new() { RadialPulse = p }))]),
            Flag(texts.SignDizzy, f => new() { Dizzy = f }),
            Flag(texts.SignPale, f => new() { Pale = f }),
            Flag(texts.SignCool, f => new() { Cool = f }),
            Flag(texts.SignClammy, f => new() { Clammy = f }),
            new(texts.SignSystolic, [Option(texts.NoCuff, new() { NoPressureCuff = true })]),
        ];

    private QuickGroup Flag(string label, Func<bool, Payload.SignsTaken> of) =>
        new(label, [Option(texts.Yes, of(true)), Option(texts.NoWord, of(false))]);

    private static QuickOption Option(string text, Payload.SignsTaken signs) => new(text, _ => signs);
}
