using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Verdicts;

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
        Circumstance.LongTourniquet => Limbs.LongTourniquet.At(state, judged.At),
        Circumstance.Pregnancy => CasualtyProfile.Pregnancy(state, judged.At),
        Circumstance.Child => CasualtyProfile.At(state, judged.At)?.AgeYears is { } age ? Kleene.Of(age < AdultYears) : Truth.Unknown,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What to do to learn an age that is not known: where one is asked back, its question.</summary>
    public static string LookForAge(State state, Instant now) => Asked(state, now, "ageYears") ?? Look(Circumstance.Child);

    public static string LookForMass(State state, Instant now) => Asked(state, now, "massKg") ?? "weigh or estimate the mass, and enter it";

    private static string? Asked(State state, Instant now, string field) =>
        Questions.OfPerson(state, now).LastOrDefault(q => q.Field == field && !q.Settled)?.Text;

    /// <summary>A wound of the head, or a mind that is not clear and nobody has said why.</summary>
    private static Truth HeadInjury(State state, Judgement judged) =>
        Kleene.Of(CasualtyProfile.HasHeadWound(state, judged.At))
            .Or(Latest(state, judged, Input.Mental, r => r.Word == "alert" ? Truth.NotMet : Truth.Unknown));

    /// <summary>Fewer than 10 or more than 30 breaths a minute, or a saturation below 90 % (design).</summary>
    private static Truth BreathingTrouble(State state, Judgement judged)
    {
        var breaths = Latest(state, judged, Input.RespiratoryRate, r => Kleene.Of(r.Low is < 10 or > 30));
        var saturation = Latest(state, judged, Input.Spo2, r => Kleene.Of(r.Low < 90));
        return saturation == Truth.Unknown ? breaths : breaths.Or(saturation);
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
