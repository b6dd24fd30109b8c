using System.Collections.Immutable;
using NodaTime;

namespace Farhold;

/// <summary>Whether a circumstance holds for a casualty, as far as the record tells.</summary>
public static class Circumstances
{
    private const double AdultYears = 16;

    /// <summary>What the record has to say for an unknown circumstance to be known.</summary>
    public static string Look(Circumstance circumstance) => circumstance switch
    {
        Circumstance.Shock => "take the signs of shock",
        Circumstance.HeadInjury => "look for a head injury",
        Circumstance.ReducedConsciousness => "talk to the casualty: alert and clear?",
        Circumstance.BreathingTrouble => "count the breaths for a full minute",
        Circumstance.LongTourniquet => "settle how long the tourniquet was on",
        Circumstance.Pregnancy => "ask whether she is pregnant, and write \"pregnant\" or \"not pregnant\" into the history",
        Circumstance.Child => "ask or estimate the age",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    public static Truth Of(Circumstance circumstance, State state, Judgement judged) => circumstance switch
    {
        Circumstance.Shock => judged.Shock.State,
        Circumstance.HeadInjury => HeadInjury(state, judged),
        Circumstance.ReducedConsciousness => Latest(state, judged, Input.Mental, r => Kleene.Of(r.Word != "alert")),
        Circumstance.BreathingTrouble => BreathingTrouble(state, judged),
        Circumstance.LongTourniquet => LongTourniquet(state, judged),
        Circumstance.Pregnancy => Pregnancy(state, judged.At),
        Circumstance.Child => Opened(state, judged.At)?.AgeYears is { } age ? Kleene.Of(age < AdultYears) : Truth.Unknown,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>
    /// What the record says of the casualty, on the cautious side where it says several things. An age or a mass that is asked back is
    /// unknown until that is settled.
    /// </summary>
    public static Payload.CasualtyOpened? Opened(State state, Instant now)
    {
        if (Openings.Together(Openings.Of(state, now)) is not { } opened)
            return null;
        var open = Questions.OfPerson(state, now).Where(q => !q.Settled).Select(q => q.Field).ToArray();
        return open.Length == 0 ? opened : opened with
        {
            AgeYears = open.Contains("ageYears") ? null : opened.AgeYears,
            MassKg = open.Contains("massKg") ? null : opened.MassKg,
        };
    }

    /// <summary>What to do to learn an age that is not known: where one is asked back, its question.</summary>
    public static string LookForAge(State state, Instant now) => Asked(state, now, "ageYears") ?? Look(Circumstance.Child);

    public static string LookForMass(State state, Instant now) => Asked(state, now, "massKg") ?? "weigh or estimate the mass, and enter it";

    private static string? Asked(State state, Instant now, string field) =>
        Questions.OfPerson(state, now).LastOrDefault(q => q.Field == field && !q.Settled)?.Text;

    internal static bool HasHeadWound(State state, Instant now) => state.Of(Kind.WoundFound)
        .Any(w => w.When.Earliest <= now && w.As<Payload.WoundFound>().Region == BodyRegion.Head);

    /// <summary>A wound of the head, or a mind that is not clear and nobody has said why.</summary>
    private static Truth HeadInjury(State state, Judgement judged) =>
        Kleene.Of(HasHeadWound(state, judged.At))
            .Or(Latest(state, judged, Input.Mental, r => r.Word == "alert" ? Truth.NotMet : Truth.Unknown));

    /// <summary>Fewer than 10 or more than 30 breaths a minute, or a saturation below 90 % (design).</summary>
    private static Truth BreathingTrouble(State state, Judgement judged)
    {
        var breaths = Latest(state, judged, Input.BreathRate, r => Kleene.Of(r.Low is < 10 or > 30));
        var saturation = Latest(state, judged, Input.Spo2, r => Kleene.Of(r.Low < 90));
        return saturation == Truth.Unknown ? breaths : breaths.Or(saturation);
    }

    private static Truth LongTourniquet(State state, Judgement judged)
    {
        var long_ = Truth.NotMet;
        foreach (var limb in Enum.GetValues<Limb>())
            if (LimbClock.Of(limb, state, judged.At) is { } clock)
                long_ = long_.Or(Kleene.Of(clock.Occluded.Max >= Duration.FromHours(2)));
        return long_;
    }

    /// <summary>Where the casualty is described in several ways, each of them is asked.</summary>
    internal static Truth Pregnancy(State state, Instant now) =>
        Openings.Each(Openings.Of(state, now)).Select(Pregnancy).ToArray() is { Length: > 0 } each
            ? each.Aggregate(Truth.NotMet, (t, one) => t.Or(one)) : Truth.Unknown;

    private static Truth Pregnancy(Payload.CasualtyOpened? opened)
    {
        if (opened is { Sex: Sex.Male } or { AgeYears: < 10 or > 60 })
            return Truth.NotMet;
        var history = opened?.History ?? "";
        if (history.Contains("not pregnant", StringComparison.OrdinalIgnoreCase))
            return Truth.NotMet;
        return history.Contains("pregnant", StringComparison.OrdinalIgnoreCase) ? Truth.Met : Truth.Unknown;
    }

    /// <summary>By the latest readings, none of them stale by the protocol; unknown where they disagree or there are none.</summary>
    private static Truth Latest(State state, Judgement judged, Input input, Func<Reading, Truth> asks)
    {
        var fresh = judged.Protocol.Freshness.GetValueOrDefault(input.Name, Duration.MaxValue);
        Truth? all = null;
        foreach (var reading in InputReadings.For(input, new(new CasualtyView(state, judged.Protocol, judged.At, []), null, []), fresh))
            all = Kleene.Agreed(all, reading.When.Until(judged.At).Max > fresh ? Truth.Unknown : asks(reading));
        return all ?? Truth.Unknown;
    }
}
