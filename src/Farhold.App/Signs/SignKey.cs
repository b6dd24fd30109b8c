namespace Farhold.App.Signs;

/// <summary>What the marks of the picture mean; only those that are on it.</summary>
public static class SignKey
{
    public static IEnumerable<string> Lines(SignPicture picture, Texts texts)
    {
        var curves = picture.Curves;
        if (picture.AgeYears is null)
            yield return texts.ChartNoAge;
        else if (curves.Any(c => c.Limits.Usual is not null))
            yield return texts.ChartUsual(texts.Number(picture.AgeYears.Value));
        if (!picture.Scores.IsEmpty || curves.Any(c => c.Limits is not { Low: null, High: null }))
            yield return texts.ChartPast;
        yield return texts.ChartGap(Say.Duration(picture.Gap));
        if (curves.Any(c => !c.NotTaken.IsEmpty))
            yield return texts.ChartNotTaken;
        if (curves.Any(c => c.Readings.Any(r => !r.When.IsInstant)))
            yield return texts.ChartBetween;
        if (curves.Any(c => c.Change is { Marked: true }))
            yield return texts.ChartMark;
        if (!picture.Limbs.IsEmpty)
            yield return texts.ChartLimb;
        if (picture.Minds.Any(m => m.Value != Mental.Alert))
            yield return texts.ChartMind;
        if (picture.Scores.Any(s => !s.Value.IsExact))
            yield return texts.ChartScoreRange;
    }
}
