namespace Farhold.App.Signs;

/// <param name="Value">Says so where it was never seen.</param>
/// <param name="Stale">Too old to decide by.</param>
public sealed record SignRow(string Name, string Value, Elapsed? Age, bool Stale);

/// <summary>The last of every sign, with its age.</summary>
public static class LatestSigns
{
    public static IEnumerable<SignRow> Rows(State state, Judgement picture, Texts texts, Preferences preferences)
    {
        SignRow Row<T>(string wire, string name, Func<Payload.SignsTaken, T?> sign, Func<T, string> show)
            where T : struct
        {
            if (SignsSeen.Last(state, picture.At, sign) is not { } seen)
                return new(name, texts.NeverSeen, null, false);
            var stale = picture.Protocol.Freshness.TryGetValue(wire, out var fresh) && !seen.IsFreshAt(picture.At, fresh);
            return new(name, show(seen.Value), seen.When.Until(picture.At), stale);
        }

        SignRow Flag(string wire, string name, Func<Payload.SignsTaken, bool?> sign) =>
            Row(wire, name, sign, yes => yes ? texts.Yes : texts.NoWord);

        SignRow Measured(Sign s) => Row(s.Wire, s.Name(texts), s.Value, v => Scales.Text(s.Range, v, s.Decimals, preferences, texts));

        return
        [
            Measured(Sign.All[0]),
            Measured(Sign.All[1]),
            Row("mental", texts.SignMental, s => s.Mental, v => texts.Word(v)),
            Row("radialPulse", texts.SignRadialPulse, s => s.RadialPulse, v => texts.Word(v)),
            Flag("pale", texts.SignPale, s => s.Pale),
            Flag("cool", texts.SignCool, s => s.Cool),
            Flag("clammy", texts.SignClammy, s => s.Clammy),
            Flag("dizzy", texts.SignDizzy, s => s.Dizzy),
            .. Sign.All.Skip(2).Select(Measured),
        ];
    }
}
