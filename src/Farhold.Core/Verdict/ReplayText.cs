using NodaTime;

namespace Farhold;

/// <summary>A replay as text, a paragraph a turn, written as the turns are found.</summary>
public static class ReplayText
{
    public static void Write(CareRecord record, Protocol protocol, Instant until, IReadOnlyList<Refusal> refused, TextWriter to)
    {
        to.Write($"{VerdictWords.Caution}\n");
        foreach (var line in VerdictWords.Of(protocol))
            to.Write($"{line}\n");
        if (refused.Count > 0)
            to.Write($"THE LOCAL PROTOCOL IS REFUSED; {protocol.Id} {protocol.Version} IS IN FORCE INSTEAD\n");
        to.Write("Judged with all that the record knows now: corrections and late entries count from the time they are about.\n");
        foreach (var turn in Replay.Of(record, protocol, until))
        {
            to.Write($"\n{Say.Time(turn.At)}{(turn.JustAfter ? ", just after" : "")}\n");
            foreach (var cause in turn.Because)
                to.Write($"  because: {cause}\n");
            foreach (var change in turn.After.Since(turn.Before))
                to.Write($"  {change}\n");
        }

        to.Write($"\nUp to {Say.Time(until)}.\n");
    }
}
