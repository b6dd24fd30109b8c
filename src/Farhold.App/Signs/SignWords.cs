namespace Farhold.App.Signs;

/// <summary>What has been taken of one part of the signs, in few words; a dash for nothing.</summary>
public static class SignWords
{
    private const string None = "–";

    public static string Of(SignPart part, Payload.SignsTaken signs, Texts texts, Preferences preferences)
    {
        if (part == SignPart.Mind)
            return signs.Mental is { } mental ? texts.MentalWord(mental) : None;
        if (part == SignPart.Wrist)
            return signs.RadialPulse is { } radial ? texts.Word(radial) : None;
        if (part == SignPart.Oxygen)
            return signs.OnOxygen is { } on ? Flag(on, texts) : None;
        if (part == SignPart.Beyond)
            return signs.DistalPulse is { Count: > 0 } beyond ? string.Join(", ", beyond.Select(b => texts.BeyondWord(b.Value))) : None;
        if (part == SignPart.Skin)
            return new[] { signs.Pale, signs.Cool, signs.Clammy, signs.Dizzy }.Count(f => f is not null) is > 0 and var n
                ? texts.SkinDone(n)
                : None;
        if (part.Wire == "systolic")
            return signs.NoPressureCuff == true ? texts.NoCuff
                : signs.Systolic is { } s ? $"{texts.Number(s)}/{(signs.Diastolic is { } d ? texts.Number(d) : None)}"
                : None;
        var sign = Sign.Measured(part.Wire)!;
        return sign.Value(signs) is { } value ? Scales.Text(sign.Range, value, sign.Decimals, preferences, texts) : None;
    }

    private static string Flag(bool flag, Texts texts) => flag ? texts.Yes : texts.NoWord;
}
