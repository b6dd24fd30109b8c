using System.Collections.Immutable;

namespace Farhold.Rehearsal.Runs;

/// <summary>A rehearsal as text, a line each: what the trainee noticed, did and logged. The truth stays out but for its sums.</summary>
public static class RunReport
{
    /// <param name="refused">Deeds of which nothing came, and when, in seconds.</param>
    public static void Write(RehearsalSession session, IEnumerable<(double At, string Why)> refused, TextWriter to)
    {
        var scenario = session.Scenario;
        to.Write($"{RunTexts.Caution}\n");
        to.Write(RunTexts.Scenario(scenario.ShownTitle, scenario.Id, Say.Number(session.Seed), Say.Number(scenario.Model)) + "\n");
        if (!scenario.Learn.IsEmpty)
            to.Write(RunTexts.Learn(string.Join(", ", scenario.Learn.Select(l => Wire.Word(l).Replace('-', ' ')))) + "\n");
        if (!scenario.KnownLimits.IsEmpty)
            to.Write(RunTexts.Limits(string.Join(" ", scenario.KnownLimits)) + "\n");
        to.Write("\n" + Plain.Line(scenario.ShownBriefing) + "\n\n");
        foreach (var (at, _, text) in Lines(session, refused).OrderBy(l => l.At).ThenBy(l => l.Order))
            to.Write($"{Clock(at)}  {Plain.Line(text)}\n");
        var lowest = session.Frames.Where(f => f.At >= 0).Select(f => f.Vitals.MeanArterialPressure).DefaultIfEmpty(0).Min();
        to.Write(
            "\n"
                + RunTexts.Summary(
                    Say.Number(Math.Round(session.Frames.Count == 0 ? 0 : session.Frames[^1].LostMl)),
                    Say.Number(Math.Round(lowest)),
                    Say.Number(session.Record.Count)
                )
                + "\n"
        );
    }

    /// <summary>Hours, minutes and seconds since the start: <c>0:02:30</c>.</summary>
    public static string Clock(double seconds)
    {
        var whole = (long)Math.Floor(Math.Abs(seconds));
        return string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{(seconds < 0 ? "-" : "")}{whole / 3600}:{whole / 60 % 60:00}:{whole % 60:00}"
        );
    }

    private static IEnumerable<(double At, int Order, string Text)> Lines(
        RehearsalSession session,
        IEnumerable<(double At, string Why)> refused
    ) =>
        [
            .. session.Truth.OfType<TruthLine.Began>().Where(b => b.At >= 0).Select(b => (b.At, 0, RunTexts.Began(Act(b.Act)))),
            .. session.Happenings.Select(h => (h.At, 1, h.Text)),
            .. session
                .Record.Where(e => e.Recorded > session.Scenario.Start)
                .Select(e => (session.SecondsAt(e.Recorded), 2, RunTexts.Logged(EntryText.Of(e.Payload)))),
            .. refused.Select(r => (r.At, 3, RunTexts.NothingDone(r.Why))),
        ];

    private static string Act(Act act) => string.Join(' ', ((string?[])[ActFields.Word(act), OfferedActs.On(act)]).OfType<string>());
}
