using System.Collections.Immutable;
using Farhold.Physiology.Rehearsal;
using Farhold.Rehearsal.Debriefs;
using Farhold.Rehearsal.Runs;
using Farhold.Rehearsal.Scenarios;

namespace Farhold.App.Rehearse;

/// <summary>What the one who leads sees of a rehearsal. Touched only once the model is loaded.</summary>
internal sealed class LedRun(RehearsalSession session) : ILedRun
{
    public TruthNow Truth
    {
        get
        {
            var (now, scenario) = (session.Present, session.Scenario);
            var v = now.Vitals;
            var confused = v.Consciousness == Farhold.Physiology.Body.Consciousness.Alert && v.Glasgow < ConfusedBelow;
            return new(
                session.EndedBy == EndReason.Arrest,
                v.HeartRate,
                v.SystolicPressure,
                v.DiastolicPressure,
                v.RespiratoryRate,
                v.CapillaryRefill,
                confused ? Wire.Word(Mental.Confused) : Wire.Word(v.Consciousness),
                v.CoreTemperature,
                now.LostMl,
                [.. scenario.Limbs.Select((l, i) => (l, now.Tight[i]))],
                [.. scenario.Wounds.Select((w, i) => (w.Name, now.Flow[i]))]
            );
        }
    }

    public ImmutableArray<OfferedDeed> Deeds =>
        [
            .. OfferedActs
                .For(session.Scenario)
                .Select(a => new OfferedDeed(Word(a), LimbOf(a), LimbOf(a) is null ? OfferedActs.On(a) : null, OfferedActs.Write(a))),
        ];

    public ImmutableArray<ComingEvent> Coming =>
        [
            .. session.Coming.Select(c => new ComingEvent(
                c.Inject.Id,
                c.At is { } at ? session.At(at) : null,
                c.Inject.ShownSay ?? c.Inject.Id.Replace('-', ' ')
            )),
        ];

    public ImmutableArray<Answer> Answers =>
        [.. session.Shown.Select(s => new Answer(session.At(s.At), Wire.Word(s.Kind), s.Wound, ShownText.Write(s.Shown)))];

    public ImmutableArray<(string Sign, string Value)> Overrides => [.. Signs(session.Overrides)];

    public ImmutableArray<string> Objectives => [.. session.Scenario.Learn.Select(Practice.Say)];

    public ImmutableArray<LessonLine> Lines => [.. session.Truth.Where(l => l.At >= 0).SelectMany(Said)];

    public LessonCourse Course
    {
        get
        {
            var course = CasualtyCourse.Of(session);
            return new(course.LostMl, course.LowestPressure, course.OccludedS / 60, course.LowestCore);
        }
    }

    /// <summary>As a look has it.</summary>
    private const double ConfusedBelow = 14.5;

    /// <summary>A deed's word: that of the act, with the gauze of a pack.</summary>
    private static string Word(Act act) =>
        act is Act.Pack { Gauze: PackingGauze.Haemostatic } ? LeadWords.PackHaemostatic : ActFields.Word(act);

    private static Limb? LimbOf(Act act) => OfferedActs.On(act) is { } on ? Wire.Parse<Limb>(on) : null;

    private IEnumerable<LessonLine> Said(TruthLine line) =>
        line switch
        {
            TruthLine.ShowAsked(_, var show) when show == SignOverride.None =>
            [
                new(session.At(line.At), LessonKind.Set, "", null, null, null),
            ],
            TruthLine.ShowAsked(_, var show) => Signs(show)
                .Select(s => new LessonLine(session.At(line.At), LessonKind.Set, s.Sign, null, s.Value, null)),
            _ => Line(line) is { } one ? [one] : [],
        };

    private LessonLine? Line(TruthLine line) =>
        line switch
        {
            TruthLine.ActAsked(_, var asked, var by) => new(
                session.At(line.At),
                LessonKind.Did,
                Word(asked.Act),
                LimbOf(asked.Act),
                LimbOf(asked.Act) is null ? OfferedActs.On(asked.Act) : null,
                by
            ),
            TruthLine.LookAsked(_, var look, var wound, var by) => new(
                session.At(line.At),
                LessonKind.Looked,
                Wire.Word(look),
                null,
                wound,
                by
            ),
            TruthLine.Injected(_, var id) => new(
                session.At(line.At),
                LessonKind.Happened,
                session.Scenario.Injects.FirstOrDefault(i => i.Id == id)?.ShownSay ?? id.Replace('-', ' '),
                null,
                null,
                null
            ),
            TruthLine.Failed(_, var wound) => new(session.At(line.At), LessonKind.BledAgain, "", null, wound, null),
            TruthLine.Arrested => new(session.At(line.At), LessonKind.Arrested, "", null, null, null),
            _ => null,
        };

    private static IEnumerable<(string Sign, string Value)> Signs(SignOverride set) =>
        new (string Look, double? Value)[]
        {
            ("pulse", set.HeartRate),
            ("breaths", set.BreathRate),
            ("pressure", set.Systolic),
            ("refill", set.CapillaryRefillS),
            ("temperature", set.TemperatureC),
        }
            .Where(s => s.Value is not null)
            .Select(s => (s.Look, Say.Number(s.Value!.Value)))
            .Concat(set.Mental is { } mental ? [("mental", Wire.Word(mental))] : []);
}
