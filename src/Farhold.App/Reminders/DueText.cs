using NodaTime;

namespace Farhold.App.Reminders;

/// <summary>A due task in one line: when, which limb, and the protocol's own sentence.</summary>
public static class DueText
{
    public static string Of(DueTask due, Instant judged, Instant now, PhoneClock clock, Texts texts)
    {
        var when = due switch
        {
            { AtOnce: true } => texts.DueAtOnce,
            _ when due.At < judged && VerdictWords.IsLate(due, now) => texts.DueSince(clock.Show(due.At, now)),
            _ when due.At > now => texts.DueAt(clock.Show(due.At, now), Say.Duration(due.At - now)),
            _ => texts.DueNow,
        };
        return $"{when}{(due.Limb is { } limb ? $", {texts.Within(limb)}" : "")}: {due.Said(clock.Zone)}";
    }
}
