using System.Collections.Immutable;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>A debrief as plain text: what was to happen, what did, why, one thing to practise, and when.</summary>
public static class DebriefText
{
    public static void Write(Debrief debrief, TextWriter to)
    {
        foreach (var line in Intro(debrief))
            to.Write($"{line}\n");
        foreach (var (title, lines) in Parts(debrief))
        {
            to.Write($"\n{title}\n");
            foreach (var line in lines)
                to.Write($"  {line}\n");
        }
    }

    /// <summary>What it is, and whether it is of the rehearsal as it was.</summary>
    public static IEnumerable<string> Intro(Debrief debrief)
    {
        var scenario = debrief.Session.Scenario;
        yield return DebriefTexts.Caution;
        yield return RunTexts.Scenario(scenario.ShownTitle, scenario.Id, Say.Number(debrief.Session.Seed), Say.Number(scenario.Model));
        foreach (var line in Proof(debrief))
            yield return line;
        if (!scenario.KnownLimits.IsEmpty)
            yield return RunTexts.Limits(string.Join(" ", scenario.KnownLimits));
        yield return RunTexts.Learn(string.Join(", ", scenario.Learn.Select(Practice.Say)));
    }

    /// <summary>What there is to say, each part with its title.</summary>
    public static IEnumerable<(string Title, IEnumerable<string> Lines)> Parts(Debrief debrief)
    {
        yield return (DebriefTexts.PartDelays, debrief.Delays.Select(Line));
        yield return (
            DebriefTexts.PartRemarks,
            debrief.Remarks.IsEmpty
                ? [DebriefTexts.NoRemark]
                : debrief.Remarks.Select(r => $"{DebriefWords.Clock(r.At)}  {Plain.Line(r.Text)}")
        );
        if (!debrief.Catches.IsEmpty)
            yield return (DebriefTexts.PartCatch, debrief.Catches.Select(Line));
        yield return (DebriefTexts.PartSteps, debrief.Steps.Select(Line));
        yield return (DebriefTexts.PartLog, [Line(debrief.Log)]);
        yield return (DebriefTexts.PartCourse, Lines(debrief));
        yield return (
            DebriefTexts.PartNext,
            [
                debrief.OneThing is { } point ? DebriefTexts.OneThing(Practice.Say(point))
                : debrief.Session.IsOver ? DebriefTexts.NothingToPractise
                : DebriefTexts.EndedEarly,
                DebriefTexts.WhenNext,
            ]
        );
    }

    /// <summary>The rehearsal as it was and with one thing otherwise, and how often of so many casualties alike.</summary>
    public static void Write(Debrief debrief, WhatIf change, int redraws, TextWriter to)
    {
        var (same, other) = (debrief.Course, CasualtyCourse.Of(WhatIf.Again(debrief.Session, change)));
        to.Write("\n" + DebriefTexts.WhatIf(change.Title) + "\n");
        foreach (var line in Courses(same, other))
            to.Write($"  {line}\n");
        if (redraws <= 0)
            return;
        var (all, others) = WhatIf.Redrawn(debrief.Session, change, redraws);
        to.Write(DebriefTexts.WhatIfRedraws(Say.Number(redraws)) + "\n");
        foreach (var line in Counts(all, others))
            to.Write($"  {line}\n");
    }

    /// <summary>How often of so many casualties alike, as it was and with one thing otherwise: "in n of 200".</summary>
    /// <param name="other">As many as <paramref name="same"/>.</param>
    public static IEnumerable<string> Counts(IReadOnlyCollection<CasualtyCourse> same, IReadOnlyCollection<CasualtyCourse> other) =>
        new (string What, Func<CasualtyCourse, bool> Of)[]
        {
            (DebriefTexts.WhatIfBled, c => c.BledAgain),
            (DebriefTexts.WhatIfLostMuch, c => c.LostMl > 1_000),
            (DebriefTexts.WhatIfArrested, c => c.Arrested),
        }.Select(m => DebriefTexts.WhatIfOf(m.What, Say.Number(same.Count(m.Of)), Say.Number(same.Count), Say.Number(other.Count(m.Of))));

    /// <summary>Both courses with the same luck.</summary>
    public static IEnumerable<string> Courses(CasualtyCourse same, CasualtyCourse other) =>
        [Line(DebriefTexts.WhatIfSame, same), Line(DebriefTexts.WhatIfOther, other)];

    private static IEnumerable<string> Proof(Debrief debrief)
    {
        var proof = debrief.Proof;
        if (proof.Truth is { } differs)
            yield return DebriefTexts.Changed(Say.Number(differs.Line));
        if (proof.ChangedEntries > 0)
            yield return DebriefTexts.RecordChanged(Say.Number(proof.ChangedEntries));
        if (proof.Trainee is { } count)
            yield return DebriefTexts.Trainee(Say.Number(count));
        else if (!proof.Sealed)
            yield return DebriefTexts.SealBroken;
        if (!debrief.Session.IsOver)
            yield return DebriefTexts.CutOff;
        if (proof.Holds)
            yield return DebriefTexts.Sound;
    }

    private static string Line(Delays d) =>
        DebriefTexts.Delay(
            Say.Limb(d.Limb),
            DebriefWords.Clock(d.Decidable),
            DebriefWords.Clock(d.KnownAt),
            DebriefWords.Clock(d.Begun),
            DebriefWords.Clock(d.LetOut)
        );

    private static string Line(Catch c) =>
        DebriefTexts.CatchLine(
            c.Wound,
            DebriefWords.Clock(c.From),
            DebriefWords.Clock(c.Seen),
            DebriefWords.Clock(c.Tight),
            DebriefWords.Clock(c.Logged)
        );

    private static string Line(StepMark step) =>
        string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{step.Number, 2}  {Practice.Say(step.Point)}: {Mark(step.Shown)}"
        );

    private static string Mark(Truth? shown) =>
        shown switch
        {
            Truth.Met => DebriefTexts.StepYes,
            Truth.NotMet => DebriefTexts.StepNo,
            Truth.Unknown => DebriefTexts.StepOpen,
            _ => DebriefTexts.StepNone,
        };

    private static string Line(LogTruth log) =>
        DebriefTexts.LogLine(
            Say.Number(log.Numbers.Length),
            Say.Number(Math.Round(100 * log.LookError, 1)),
            Say.Number(Math.Round(100 * log.LogError, 1))
        );

    private static IEnumerable<string> Lines(Debrief debrief)
    {
        var course = debrief.Course;
        yield return DebriefTexts.CourseLost(Say.Number(Math.Round(course.LostMl)), Say.Number(Math.Round(course.LowestPressure)));
        if (debrief.Session.Scenario.ModelledLimb is { } limb)
            yield return DebriefTexts.CourseLimb(
                Say.Limb(limb),
                DebriefWords.Span(course.OccludedS),
                Say.Number(Math.Round(100 * course.DeadMuscle)),
                Say.Number(Math.Round(course.HighestPotassium, 1))
            );
        yield return DebriefTexts.CourseCore(Say.Number(Math.Round(course.LowestCore, 1)));
        if (course.OccludedS <= 0)
            yield break;
        var (low, high) = CasualtyCourse.LimbLost(course.OccludedS / 3_600);
        yield return DebriefTexts.CourseChance(
            Say.Number(Math.Round(100 * low)),
            Say.Number(Math.Round(100 * high)),
            CasualtyCourse.Palsy(course.OccludedS / 60) is { } palsy ? Say.Number(Math.Round(100 * palsy)) : "?"
        );
    }

    private static string Line(string name, CasualtyCourse course) =>
        DebriefTexts.WhatIfLine(
            name,
            Say.Number(Math.Round(course.LostMl)),
            Say.Number(Math.Round(course.LowestPressure)),
            course.Arrested ? DebriefTexts.WhatIfDead : DebriefTexts.WhatIfAlive,
            DebriefWords.Span(course.OccludedS)
        );
}
