using NodaTime;

namespace Farhold.App.Signs;

/// <summary>What charts say, in the app's language and the units chosen on this phone.</summary>
public sealed class ChartTexts(Texts texts, Preferences preferences, PhoneClock clock, Instant now) : IChartWords
{
    public string Now => texts.ChartNow;

    public string Mind => texts.SignMental;

    public string Score => texts.ChartScore;

    public string Name(ChartedSign sign) =>
        sign.Range == FieldRange.Systolic ? texts.ChartSystolic : Sign.Measured(sign.Field)!.Name(texts);

    public string Unit(ChartedSign sign) => Scales.Unit(sign.Range, preferences);

    public string Value(ChartedSign sign, double value) =>
        texts.Number(Math.Round(Shown(sign, value), Sign.Measured(sign.Field)!.Decimals));

    public string Change(ChartedSign sign, SignChange change) =>
        change.InPercent
            ? $"{texts.Number(Math.Round(Math.Abs(change.By)))} %"
            : texts.Number(
                Math.Round(Math.Abs(Shown(sign, change.Last) - Shown(sign, change.Reference)), Sign.Measured(sign.Field)!.Decimals)
            );

    public string Limb(LimbPicture limb) =>
        limb.Clock.Loosened() is { } loose ? texts.ChartLoose(texts.Sided(limb.Limb), clock.Show(loose.Latest, now))
        : limb.Clock.Tight == Truth.Met ? texts.ChartTight(texts.Sided(limb.Limb), texts.Elapsed(limb.Clock.SinceFirstTightened))
        : texts.ChartPerhapsTight(texts.Sided(limb.Limb));

    public string MentalState(Mental mental) => texts.MentalWord(mental);

    /// <summary><c>Pulse up 22 %</c>.</summary>
    public string Moved(ChartedSign sign, SignChange change)
    {
        var by = change.InPercent ? Change(sign, change) : $"{Change(sign, change)} {Unit(sign)}";
        return change.By > 0 ? texts.ChartUp(Name(sign), by) : texts.ChartDown(Name(sign), by);
    }

    /// <summary>All that the picture shows, for who can't see it.</summary>
    public string Describe(SignPicture picture) =>
        string.Join(
            ". ",
            [
                texts.ChartSince(clock.Show(picture.From, now)),
                .. picture.Limbs.Select(Limb),
                .. picture.Curves.Select(c => $"{Name(c.Sign)}: {Describe(c)}"),
                .. picture.Minds.IsEmpty ? Array.Empty<string>() : [$"{Mind}: {MentalState(picture.Minds[^1].Value)}"],
                .. picture.Scores.IsEmpty ? Array.Empty<string>() : [$"{Score}: {Range(picture.Scores[^1].Value)}"],
            ]
        ) + ".";

    /// <summary>A score, or from what to what it may be.</summary>
    public static string Range(ScoreBounds score) => score.IsExact ? Say.Number(score.Min) : $"{score.Min} – {score.Max}";

    private string Describe(SignCurve curve)
    {
        var (sign, readings) = (curve.Sign, curve.Readings);
        var last = readings[^1];
        var all = texts.ChartSays(readings.Length, Value(sign, readings.Min(r => r.Value)), Value(sign, readings.Max(r => r.Value)));
        var text = $"{all} {Unit(sign)}, {texts.ChartLast(Value(sign, last.Value), clock.Show(last.When, now))}";
        return curve.Change is { } change ? $"{text}, {Moved(sign, change)}" : text;
    }

    private double Shown(ChartedSign sign, double value) => Scales.Shown(sign.Range, value, preferences);
}
