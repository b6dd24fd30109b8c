using NodaTime;

namespace Farhold.Care;

/// <summary>Why a casualty needs more urine than usual.</summary>
public enum KidneyLoad
{
    None,
    Burn,

    /// <summary>Crushed muscle, or a limb long without blood flow.</summary>
    Muscle,
}

public static class KidneyLoads
{
    /// <summary>The heavier one, where a limb was long without blood flow for certain and a burn is on record too.</summary>
    public static KidneyLoad Of(State state, Instant now) =>
        LongTourniquet.At(state, now) == Truth.Met ? KidneyLoad.Muscle
        : HasBurn(state, now) ? KidneyLoad.Burn
        : KidneyLoad.None;

    public static bool HasBurn(State state, Instant now) =>
        state.Of(Kind.WoundFound).Any(w => w.When.Earliest <= now && w.As<Payload.WoundFound>().Nature == WoundNature.Burn);
}

/// <summary>How much urine there should be.</summary>
/// <param name="MlPerHour">Null where it hangs on a mass that is not known.</param>
/// <param name="MlPerKgHour">Null where the target is not by mass.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record UrineTarget(Between? MlPerHour, Between? MlPerKgHour, string Source)
{
    /// <param name="ageYears">Null counts as an adult, from 30 kg on or where the mass is not known either.</param>
    /// <param name="massKg">Null where nobody knows it.</param>
    /// <remarks>
    /// Adults 0.5 mL/kg/h, in trauma up to 1 (JTS nursing guideline); burns 30 to 50 mL/h and children below 30 kg 1 mL/kg/h
    /// (Emergency War Surgery, NATO handbook, chapter III); crushed muscle 100 to 200 mL/h (JTS crush guideline, the lowest of
    /// three published figures), in a child twice the ordinary, 2 mL/kg/h (RCEM); infants up to 2 mL/kg/h (from memory).
    /// </remarks>
    public static UrineTarget Of(double? ageYears, double? massKg, KidneyLoad load) =>
        (ageYears, load) switch
        {
            (< 16, KidneyLoad.Muscle) or (null, KidneyLoad.Muscle) when ageYears is not null || massKg < SameAsAdultKg => OfChildsMuscle(
                massKg
            ),
            (< 1, _) => ByMass(
                1,
                2,
                massKg,
                "children below 30 kg 1 (Emergency War Surgery, NATO handbook, chapter III), infants up to 2 mL/kg/h (from memory)"
            ),
            (< 16, _) when massKg is null => OfChild(null),
            (< 16 or null, _) when massKg is < 30 => OfChild(massKg),
            (_, KidneyLoad.Muscle) => new(new(100, 200), null, "JTS crush guideline, JSOM Fall 2016 p. 98"),
            (_, KidneyLoad.Burn) => new(new(30, 50), null, "burns: Emergency War Surgery, NATO handbook, chapter III"),
            _ => ByMass(0.5, 1, massKg, "JTS nursing guideline: 0.5, in trauma often 0.5 to 1 mL/kg/h"),
        };

    /// <summary>Where twice a child's ordinary target comes to an adult's: no jump at any mass.</summary>
    private const double SameAsAdultKg = 50;

    /// <summary>Twice the ordinary, and up to twice that as in an adult; at 50 kg the adult's.</summary>
    private static UrineTarget OfChildsMuscle(double? massKg) =>
        new(
            massKg is { } kg ? new Between(2 * Math.Min(kg, SameAsAdultKg), 4 * Math.Min(kg, SameAsAdultKg)) : null,
            new Between(2, 4),
            "a child after a long tourniquet: 2 mL/kg/h, twice the ordinary (RCEM); the upper end is a choice of Farhold"
        );

    private static UrineTarget OfChild(double? massKg) =>
        ByMass(1, 1, massKg, "children below 30 kg 1 mL/kg/h (Emergency War Surgery, NATO handbook, chapter III)");

    internal static UrineTarget ByMass(double low, double high, double? massKg, string source) =>
        new(massKg is { } kg ? new Between(low * kg, high * kg) : null, new Between(low, high), source);

    /// <summary>Whether a flow reaches the target: met, not met, or unknown where the ranges overlap.</summary>
    public Truth Reached(UrineFlow flow) =>
        MlPerHour is not { } target ? Truth.Unknown
        : flow.MlPerHour.Low >= target.Low ? Truth.Met
        : flow.MlPerHour.High < target.Low ? Truth.NotMet
        : Truth.Unknown;
}
