using System.Collections.Immutable;

namespace Farhold.Signs;

/// <summary>Values that can't be believed as they stand: outside what their age allows, or against one another in one look.</summary>
/// <remarks>
/// Alarming and possible is believed. A low value is believed beside a casualty who answers only to pain or to nothing, and a slow
/// refill beside any other sign of poor flow, for there it belongs (design).
/// </remarks>
public static class Implausible
{
    /// <summary>Of the values of one look, whoever entered them.</summary>
    /// <param name="ageYears">Null: not known, or not believed.</param>
    public static ImmutableArray<Objection> Of(Payload.SignsTaken look, double? ageYears)
    {
        var found = new List<Objection>(); // asked of every look of hours at every judgement, and nearly always empty
        AddOutOfBounds(look, ageYears, found);
        Contradictions.Add(look, ageYears, found);
        return found.Count == 0 ? [] : [.. found.DistinctBy(o => (o.Field, o.Against is null))];
    }

    /// <summary>Of age and mass: where they can't both be right, neither is believed.</summary>
    public static ImmutableArray<Objection> Of(Payload.CasualtyOpened person) =>
        person switch
        {
            { AgeYears: > MassBounds.OldestYears and { } age } => [new("ageYears", SignTexts.OddAge(Say.Number(age)))],
            { AgeYears: var age, MassKg: { } mass }
                when MassBounds.Possible(age) is var possible && (mass < possible.Low || mass > possible.High) => Disbelieved(age, mass),
            _ => [],
        };

    private static ImmutableArray<Objection> Disbelieved(double? ageYears, double massKg)
    {
        if (ageYears is not { } age)
            return [new("massKg", SignTexts.OddMass(BodyMass.InBothUnits(massKg)))];
        var text = SignTexts.OddAgeAndMass(Say.Number(age), BodyMass.InBothUnits(massKg));
        return [new("ageYears", text, "massKg"), new("massKg", text, "ageYears")];
    }

    private static void AddOutOfBounds(Payload.SignsTaken look, double? ageYears, List<Objection> found)
    {
        foreach (var sign in Measured)
        {
            if (sign.Of(look) is not { } number)
                continue;
            var bounds = SignBounds.For(sign.Field, ageYears);
            if (number < bounds.Low && !Borne(sign.Field, number, look))
                found.Add(
                    new(sign.Field, sign.Low(Say.Number(number)), BySaying: number > 0 || sign.Field is not ("heartRate" or "breathRate"))
                );
            if (number > bounds.High && !(sign.Field == "capillaryRefillS" && PoorFlow(look)))
                found.Add(new(sign.Field, sign.High(Say.Number(number))));
        }
    }

    private static readonly (
        string Field,
        Func<Payload.SignsTaken, double?> Of,
        Func<string, string> Low,
        Func<string, string> High
    )[] Measured =
    [
        ("heartRate", s => s.HeartRate, n => SignTexts.OddHeartRateLow(n), n => SignTexts.OddHeartRateHigh(n)),
        ("breathRate", s => s.RespiratoryRate, n => SignTexts.OddBreathsLow(n), n => SignTexts.OddBreathsHigh(n)),
        ("systolic", s => s.Systolic, n => SignTexts.OddSystolicLow(n), n => SignTexts.OddSystolicHigh(n)),
        ("diastolic", s => s.Diastolic, n => SignTexts.OddDiastolic(n), n => SignTexts.OddDiastolic(n)),
        ("spo2", s => s.Spo2, n => SignTexts.OddSaturationLow(n), n => SignTexts.OddSaturationHigh(n)),
        ("temperatureC", s => s.TemperatureC, n => SignTexts.OddTemperature(n), n => SignTexts.OddTemperature(n)),
        ("capillaryRefillS", s => s.CapillaryRefillS, n => SignTexts.OddRefillShort(n), n => SignTexts.OddRefillLong(n)),
    ];

    /// <summary>A low value that belongs to a casualty so deep; no pulse and no breath, only to one who answers to nothing.</summary>
    private static bool Borne(string field, double value, Payload.SignsTaken look) =>
        look.Mental switch
        {
            Mental.Unresponsive => true,
            Mental.Pain => value > 0 || field is not ("heartRate" or "breathRate"),
            _ => false,
        };

    private static bool PoorFlow(Payload.SignsTaken look) =>
        look
            is { Mental: not (null or Mental.Alert) }
                or { RadialPulse: RadialPulse.Weak or RadialPulse.Absent }
                or { Pale: true }
                or { Cool: true }
                or { Clammy: true }
                or { Systolic: < 90 };
}
