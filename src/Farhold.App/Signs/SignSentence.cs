namespace Farhold.App.Signs;

/// <summary>The change of the signs that matters most, in a sentence; only what a rule of the warning signs says.</summary>
public static class SignSentence
{
    /// <summary>Inputs that are the course of a sign, by the sign.</summary>
    private static readonly (Input Course, ChartedSign Sign)[] Courses =
    [
        (LongInput.HeartRateCourse, ChartedSign.All[0]),
        (LongInput.RespiratoryRateCourse, ChartedSign.All[1]),
        (LongInput.SystolicCourse, ChartedSign.All[2]),
        (LongInput.Spo2Course, ChartedSign.All[3]),
        (LongInput.PainCourse, ChartedSign.All[5]),
    ];

    /// <summary>Of the first rule that is met and rests on signs; null where none is.</summary>
    public static string? For(CareRecord record, Judgement picture, SignPicture charted, ChartTexts words, Texts texts)
    {
        var found = WarningSigns
            .Of(record, picture.Rules, picture.At)
            .FirstOrDefault(f => f.State == Truth.Met && Met(f).Any(i => i.IsSign || i == LongInput.ShockNow || CourseOf(i) is not null));
        if (found is null)
            return null;
        var moved = Met(found)
            .Select(CourseOf)
            .OfType<ChartedSign>()
            .Distinct()
            .Select(s => Moved(s, found, charted, words, texts))
            .ToArray();
        var where = found.Limb is { } limb ? $"{texts.Sided(limb)}: " : "";
        return (moved.Length > 0 ? string.Join("; ", moved) + ". " : "") + where + found.Rule.Text;
    }

    private static IEnumerable<Input> Met(WarningFinding found) =>
        found.Trace.Leaves.Where(l => l.State == Truth.Met).SelectMany(l => l.Condition.Inputs);

    private static ChartedSign? CourseOf(Input input) => Array.Find(Courses, c => c.Course == input).Sign;

    /// <summary>By how much, where the change that the chart marks goes the way the rule says.</summary>
    private static string Moved(ChartedSign sign, WarningFinding found, SignPicture charted, ChartTexts words, Texts texts)
    {
        var rising = found
            .Trace.Leaves.Where(l => l.State == Truth.Met && l.Condition.Inputs.Any(i => CourseOf(i) == sign))
            .Any(l => l.Used.Any(u => u.Value == Wire.Word(SignCourse.Rising)));
        var change = charted.Curves.FirstOrDefault(c => c.Sign == sign)?.Change;
        return change is not null && change.By > 0 == rising ? words.Moved(sign, change)
            : rising ? texts.ChartRising(words.Name(sign))
            : texts.ChartFalling(words.Name(sign));
    }
}
