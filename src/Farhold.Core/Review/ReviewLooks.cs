using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Review;

/// <summary>Looks at the casualty: the first whole one, and the times without any for longer than the protocol asks.</summary>
internal static class ReviewLooks
{
    private const string SignsTask = "signs";
    private const string LimbTask = "tourniquet";

    public static IEnumerable<ReviewPoint> Of(ReviewScene scene) =>
        [.. FirstFull(scene), .. Gaps(scene), .. scene.Clocks.SelectMany(c => LimbGaps(c, scene))];

    private static IEnumerable<ReviewPoint> FirstFull(ReviewScene scene)
    {
        var whole = new CasualtyView(scene.State, scene.Rules, scene.Until, []);
        foreach (var entry in scene.Of(Kind.SignsTaken))
            if (whole.At(entry.When.Latest).Looks.NewestFirst.FirstOrDefault() is { Complete: true } look)
            {
                yield return new(ReviewKind.FirstFullLook, look.When, null, [entry.Id]) { SinceTightened = scene.Since(look.When) };
                yield break;
            }
    }

    /// <summary>The usual interval, which is the longer one: in an unstable casualty the protocol asks more often.</summary>
    private static IEnumerable<ReviewPoint> Gaps(ReviewScene scene)
    {
        if (scene.Clocks.IsEmpty || scene.Rules.Protocol.Tasks.FirstOrDefault(t => t.Id == SignsTask) is not { Every: { } every } task)
            return [];
        var start = scene.Clocks.Min(c => c.FirstTightened.Latest);
        return Gaps(ReviewKind.NoSigns, null, start, scene.End, every, [.. Done(task, SignsTask, scene, _ => true)], scene);
    }

    private static IEnumerable<ReviewPoint> LimbGaps(LimbClock clock, ReviewScene scene)
    {
        if (scene.Rules.Protocol.Tasks.FirstOrDefault(t => t.Id == LimbTask) is not { Every: { } every } task)
            return [];
        var name = $"{LimbTask}.{Wire.Word(clock.Limb)}";
        var wounds = LimbWounds.Treated(clock.Limb, scene.State, scene.Until);
        Happened[] done =
        [
            .. Done(
                task,
                name,
                scene,
                p =>
                    p switch
                    {
                        Payload.BleedingChecked b => wounds.Contains(b.Wound),
                        Payload.TourniquetTightened t => t.Limb == clock.Limb,
                        _ => true,
                    }
            ),
        ];
        return clock
            .Stretches.Where(s => s.Stopped == Truth.Met)
            .SelectMany(s => Gaps(ReviewKind.NoLimbCheck, clock.Limb, s.From, Instant.Min(s.To, scene.End), every, done, scene));
    }

    /// <summary>When a task was done, by a tick or by an entry that counts as doing it, in order of time.</summary>
    private static IEnumerable<Happened> Done(CareTask task, string name, ReviewScene scene, Func<Payload, bool> counts) =>
        scene
            .Of(Kind.TaskDone)
            .Where(d => d.As<Payload.TaskDone>().Task == name)
            .Concat(task.DoneBy.SelectMany(scene.Of).Where(d => counts(d.What)))
            .Select(d => d.When)
            .OrderBy(w => w.Latest);

    /// <summary>Where even the least time between two looks is longer; and one point that fits where there is none such.</summary>
    private static IEnumerable<ReviewPoint> Gaps(
        ReviewKind kind,
        Limb? limb,
        Instant from,
        Instant to,
        Duration every,
        Happened[] done,
        ReviewScene scene
    )
    {
        if (to - from <= every)
            yield break;
        var (last, gaps) = (from, 0);
        foreach (var next in done.Where(d => d.Latest > from && d.Earliest < to).Append(Happened.At(to)))
        {
            if (next.Earliest - last > every)
            {
                gaps++;
                yield return new(kind, new(last, next.Earliest), limb, [])
                {
                    SinceTightened = scene.Since(Happened.At(last), limb),
                    Lasting = Elapsed.Exactly(next.Earliest - last),
                    Asked = every,
                    Fits = Truth.NotMet,
                };
            }

            last = Instant.Max(last, next.Latest);
        }

        if (gaps == 0)
            yield return new(kind, new(from, to), limb, []) { Asked = every, Fits = Truth.Met };
    }
}
