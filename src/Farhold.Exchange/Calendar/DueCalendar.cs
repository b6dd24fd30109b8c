using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Exchange.Calendar;

/// <summary>The next due things of a casualty as calendar items.</summary>
public static class DueCalendar
{
    /// <summary>Design: more would only be alarms that nobody can withdraw once they no longer hold.</summary>
    public const int Most = 5;

    private static readonly Instant Epoch = Instant.FromUtc(2025, 1, 1, 0, 0);

    /// <summary>What comes next, in order of time; what is due already is left out.</summary>
    /// <param name="casualty">Id of the record, part of every uid.</param>
    /// <param name="alias">Null: nothing in the file names the casualty.</param>
    public static ImmutableArray<CalendarItem> Of(Judgement picture, string casualty, string? alias)
    {
        var sequence = Sequence(picture.At);
        var due = picture.Due.Where(d => d.At > picture.At).Select(d => Item(d.Task, d.At, d.Limb, Plain.Line(d.Text)));
        var clock = picture.Limbs.SelectMany(l =>
            l.Next.Where(n => n.At > picture.At).Select(n => Item($"{n.What}.{Wire.Word(l.Limb)}", n.At, l.Limb, VerdictWords.What(n)))
        );
        return [.. due.Concat(clock).OrderBy(i => i.At).ThenBy(i => i.Uid, StringComparer.Ordinal).Take(Most)];

        CalendarItem Item(string what, Instant at, Limb? limb, string text) =>
            new(
                $"{casualty}.{what}@farhold.invalid",
                sequence,
                at,
                $"{(alias is null ? "" : alias + ": ")}{(limb is { } on ? Say.Limb(on) + ": " : "")}{text}",
                VerdictWords.Caution,
                [Duration.Zero]
            );
    }

    /// <summary>Whole minutes since the start of 2025: a later export always counts as the newer version.</summary>
    internal static int Sequence(Instant at) => (int)Math.Clamp((at - Epoch).TotalMinutes, 0, int.MaxValue);
}
