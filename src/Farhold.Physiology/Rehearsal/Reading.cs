using System.Collections.Immutable;

namespace Farhold.Physiology.Rehearsal;

/// <summary>A number that somebody logged.</summary>
/// <param name="Happened">When they say it was taken, in seconds since the start.</param>
/// <param name="Written">When they logged it.</param>
public sealed record LoggedNumber(LookKind Kind, double Value, double Happened, double Written);

/// <summary>One look in three layers: what was true, what was shown, what was logged; each differs for its own reason.</summary>
/// <param name="Logged">Null where nobody logged it.</param>
public sealed record Reading(Look Look, double Truth, double Shown, LoggedNumber? Logged)
{
    /// <summary>Of the look: shown less true.</summary>
    public double LookError => Shown - Truth;

    /// <summary>Of the log: logged less shown. Null where nobody logged it.</summary>
    public double? LogError => Logged is null ? null : Logged.Value - Shown;

    /// <summary>How late the time is that was logged, in seconds; below 0 it is too early.</summary>
    public double? TimeError => Logged is null ? null : Logged.Happened - Look.ReadyAt;

    /// <summary>From the end of the look to the entry, in seconds.</summary>
    public double? Delay => Logged is null ? null : Logged.Written - Look.ReadyAt;

    /// <summary>Looks that showed a number, each with the first entry of its kind between it and the next one.</summary>
    /// <remarks>An entry that no look comes before is left over: somebody logged what they never looked at.</remarks>
    public static (ImmutableArray<Reading> Readings, ImmutableArray<LoggedNumber> NeverLooked) Join(
        IEnumerable<TruthEvent> truth,
        IEnumerable<LoggedNumber> logged
    )
    {
        var left = logged.OrderBy(l => l.Written).ToList();
        var looked = truth
            .OfType<TruthEvent.Looked>()
            .Where(l => l is { Shown: Rehearsal.Shown.Number, Truth: Rehearsal.Shown.Number })
            .ToArray();
        var readings = ImmutableArray.CreateBuilder<Reading>(looked.Length);
        foreach (var one in looked)
        {
            var next = looked.FirstOrDefault(l => l.At > one.At && l.Look.Kind == one.Look.Kind)?.At ?? double.PositiveInfinity;
            var entry = left.Find(l => l.Kind == one.Look.Kind && l.Written >= one.At && l.Written < next);
            if (entry is not null)
                left.Remove(entry);
            readings.Add(new(one.Look, ((Rehearsal.Shown.Number)one.Truth).Value, ((Rehearsal.Shown.Number)one.Shown).Value, entry));
        }

        return (readings.ToImmutable(), [.. left]);
    }
}
