using NodaTime;

namespace Farhold.App.Parts;

/// <summary>What the button says that logs an entry.</summary>
public static class LogButton
{
    extension(Texts t)
    {
        /// <summary>
        /// On the button that logs: the time, unless it is the moment of pressing, and what is missing while it is not complete.
        /// </summary>
        public string LogAt(string log, HappenedChoice happened, Instant now, PhoneClock clock) =>
            happened is HappenedChoice.AtOnce ? log
            : happened.Resolve(now, clock) is { } at ? t.LogAtTime(log, clock.Show(at, now))
            : t.LogNotYet;
    }
}
