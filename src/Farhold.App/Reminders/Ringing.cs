using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Reminders;

/// <summary>What is due, and whether the phone should sound for it.</summary>
public static class Ringing
{
    // Design choices, all of them.
    public static readonly Duration AgainAfter = Duration.FromMinutes(1);
    public static readonly Duration AlarmAgainAfter = Duration.FromSeconds(4);

    /// <summary>Even when seen, what has to be done at once sounds again after this.</summary>
    public static readonly Duration SeenAlarmHolds = Duration.FromMinutes(2);

    /// <summary>Due by its time, or at once. Doubts about the record are due from now on and have no time of their own.</summary>
    public static ImmutableArray<DueTask> Due(Judgement picture) => [.. picture.Due.Where(d => d.AtOnce || d.Overdue)];

    /// <summary>The same thing due at another time is another reminder.</summary>
    public static string Key(DueTask due, Instant judged) => due.At < judged ? $"{due.Task}@{WrittenInstant.Write(due.At)}" : due.Task;

    /// <param name="seen">When each was seen, by <see cref="Key"/>.</param>
    public static ImmutableArray<DueTask> Unseen(Judgement picture, IReadOnlyDictionary<string, Instant> seen, Instant now) =>
        [
            .. Due(picture)
                .Where(d => !seen.TryGetValue(Key(d, picture.At), out var at) || (d.AtOnce && (now - at >= SeenAlarmHolds || now < at))),
        ];

    /// <summary>The signal to give now, or null.</summary>
    /// <param name="last">When one was given last.</param>
    public static Signal? Of(Judgement picture, ImmutableArray<DueTask> unseen, Instant last, Instant now)
    {
        var quiet = now < last ? Duration.MaxValue : now - last;
        return unseen.Any(d => d.AtOnce)
            ? quiet >= AlarmAgainAfter
                ? Signal.Alarm
                : null
            : unseen.Any(d => d.At < picture.At) && quiet >= AgainAfter
                ? Signal.Due
                : null;
    }
}
