using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Signs;

/// <summary>Who the casualty is, as far as the record tells: age, mass, history, and what goes with the body.</summary>
public static class CasualtyProfile
{
    /// <summary>
    /// What the record says of the casualty, on the cautious side where it says several things. An age or a mass that is asked back is
    /// unknown until that is settled.
    /// </summary>
    public static Payload.CasualtyOpened? At(State state, Instant now)
    {
        var questions = Questions.OfPerson(state, now);
        if (Records.Openings.Together(Openings(state, now, questions)) is not { } opened)
            return null;
        var open = questions.Where(q => !q.Settled).Select(q => q.Field).ToArray();
        return open.Length == 0
            ? opened
            : opened with
            {
                AgeYears = open.Contains("ageYears") ? null : opened.AgeYears,
                MassKg = open.Contains("massKg") ? null : opened.MassKg,
            };
    }

    /// <summary>Those known at an instant; a value that is asked back is left out of them.</summary>
    private static ImmutableArray<Payload.CasualtyOpened> Openings(State state, Instant now, ImmutableArray<Question> questions) =>
        [
            .. state
                .Of(Kind.CasualtyOpened)
                .Where(d => d.When.Earliest <= now)
                .Select(d =>
                    d.As<Payload.CasualtyOpened>() is var p && questions.IsEmpty
                        ? p
                        : p with
                        {
                            AgeYears = questions.Questioned(d.Id, "ageYears") ? null : p.AgeYears,
                            MassKg = questions.Questioned(d.Id, "massKg") ? null : p.MassKg,
                        }
                ),
        ];

    /// <summary>The ages that may be the casualty's: one, or as many as are said of it.</summary>
    /// <param name="judged">An age said until then holds for what was seen before it, too.</param>
    internal static ImmutableArray<Reading> Ages(State state, Instant judged, ImmutableArray<Question> questions)
    {
        var ages = ImmutableArray<Reading>.Empty;
        foreach (var entry in state.Of(Kind.CasualtyOpened).Reverse())
        {
            if (entry.When.Earliest > judged || entry.As<Payload.CasualtyOpened>().AgeYears is not { } age || ages.Any(r => r.Low == age))
                continue;
            var question = questions.About(entry.Id, "ageYears");
            if (question is not { Settled: true })
                ages = ages.Add(Reading.Of(age, entry.When, lasting: true) with { Doubtful = question is not null });
        }

        return ages;
    }

    internal static bool HasHeadWound(State state, Instant now) =>
        state.Of(Kind.WoundFound).Any(w => w.When.Earliest <= now && w.As<Payload.WoundFound>().Region == BodyRegion.Head);

    /// <summary>Where the casualty is described in several ways, each of them is asked.</summary>
    internal static Truth Pregnancy(State state, Instant now) =>
        Records.Openings.Each(Openings(state, now, Questions.OfPerson(state, now))).Select(Pregnancy).ToArray() is { Length: > 0 } each
            ? each.Aggregate(Truth.NotMet, (t, one) => t.Or(one))
            : Truth.Unknown;

    private static Truth Pregnancy(Payload.CasualtyOpened? opened)
    {
        if (opened is { Sex: Sex.Male } or { AgeYears: < 10 or > 60 })
            return Truth.NotMet;
        if (opened?.Pregnant is { } stated)
            return stated ? Truth.Met : Truth.NotMet;
        var history = opened?.History ?? "";
        if (history.Contains("not pregnant", StringComparison.OrdinalIgnoreCase))
            return Truth.NotMet;
        return history.Contains("pregnant", StringComparison.OrdinalIgnoreCase) ? Truth.Met : Truth.Unknown;
    }
}
