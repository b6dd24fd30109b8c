using System.Collections.Immutable;

namespace Farhold.Rehearsal.Pictures;

/// <summary>What the engine said of one limb, by three pairs of eyes, from a time on.</summary>
/// <param name="At">In seconds from the start.</param>
/// <param name="Known">By what had been written down by then; null where nothing is tight.</param>
/// <param name="Hindsight">By all that the record came to hold.</param>
/// <param name="AllSeeing">By the truth.</param>
public sealed record SightTurn(double At, Limb Limb, Verdict? Known, Verdict? Hindsight, Verdict? AllSeeing);

/// <summary>Three pairs of eyes side by side.</summary>
/// <param name="Until">When the rehearsal was over; above 0.</param>
/// <param name="Turns">Limb by limb, in order; the first of each is at 0.</param>
public sealed record SightsPicture(double Until, ImmutableArray<SightTurn> Turns)
{
    public static SightsPicture Of(Debrief debrief)
    {
        var until = Math.Max(1, debrief.Session.Time);
        return new(until, [.. debrief.Session.Scenario.Limbs.SelectMany(limb => Turned(debrief, limb, until))]);
    }

    /// <summary>What one pair of eyes said of a limb, spell by spell.</summary>
    internal IEnumerable<(double From, double To, Verdict? Said)> Spells(Limb limb, Func<SightTurn, Verdict?> of)
    {
        var own = Turns.Where(t => t.Limb == limb).ToArray();
        for (var i = 0; i < own.Length; i++)
        {
            var to = i;
            while (to + 1 < own.Length && of(own[to + 1]) == of(own[i]))
                to++;
            yield return (own[i].At, to + 1 < own.Length ? own[to + 1].At : Until, of(own[i]));
            i = to;
        }
    }

    private static IEnumerable<SightTurn> Turned(Debrief debrief, Limb limb, double until)
    {
        var eyes = new[] { debrief.Known, debrief.Hindsight, debrief.AllSeeing }
            .Select(s => s.First(sight => sight.Limb == limb))
            .ToArray();
        SightTurn? last = null;
        foreach (var at in eyes.SelectMany(e => e.Turns.Select(t => Math.Max(0, t.At))).Prepend(0).Distinct().Order().Where(t => t < until))
        {
            var now = new SightTurn(at, limb, eyes[0].Of(at)?.Verdict, eyes[1].Of(at)?.Verdict, eyes[2].Of(at)?.Verdict);
            if (last is not null && now with { At = last.At } == last)
                continue;
            yield return last = now;
        }
    }
}

/// <summary>What was not known, or too old, and kept the record from a verdict.</summary>
/// <param name="From">In seconds from the start.</param>
/// <param name="Mattered">The truth would have said something else then.</param>
public sealed record OpenSpell(Limb Limb, string Input, double From, double To, bool Mattered);

/// <summary>Bands of ignorance: which inputs were open when, by what had been written down by then.</summary>
/// <param name="Spells">Limb by limb and input by input, in order of time.</param>
public sealed record IgnorancePicture(double Until, ImmutableArray<OpenSpell> Spells)
{
    public static IgnorancePicture Of(Debrief debrief)
    {
        var until = Math.Max(1, debrief.Session.Time);
        return new(
            until,
            [
                .. debrief.Known.SelectMany(known =>
                    known
                        .Turns.SelectMany(t => t.CheckFirst)
                        .Distinct()
                        .SelectMany(input => Open(known, debrief.AllSeeing.First(s => s.Limb == known.Limb), input, until))
                ),
            ]
        );
    }

    /// <summary>In whole turns of what either pair of eyes said.</summary>
    private static IEnumerable<OpenSpell> Open(Sight known, Sight seeing, string input, double until)
    {
        OpenSpell? open = null;
        foreach (var at in known.Turns.Concat(seeing.Turns).Select(t => Math.Max(0, t.At)).Append(0).Append(until).Distinct().Order())
        {
            var isOpen = at < until && known.Of(at) is { } said && said.CheckFirst.Contains(input);
            var matters = isOpen && seeing.Of(at)?.Verdict != known.Of(at)!.Verdict;
            if (open is not null && (!isOpen || matters != open.Mattered))
            {
                yield return open with
                {
                    To = at,
                };
                open = null;
            }

            if (isOpen)
                open ??= new(known.Limb, input, at, at, matters);
        }
    }
}
