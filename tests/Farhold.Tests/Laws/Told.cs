using System.Collections.Immutable;

namespace Farhold.Tests.Laws;

/// <summary>Changes to what a record comes to, at the level the verdict uses.</summary>
internal static class Told
{
    /// <summary>The same story, but nobody ever said anything of this input.</summary>
    /// <remarks>
    /// All statements go, not just the last: taking away the newest reading would uncover an older one, which is another
    /// known value and not an unknown one.
    /// </remarks>
    public static State Without(State state, Input input) => State.Of(state.All.Select(d => Silenced(d, input)).OfType<Dated>());

    private static Dated? Silenced(Dated dated, Input input) =>
        (dated.What, input.Name) switch
        {
            (Payload.SignsTaken s, _) => dated with { What = Silenced(s, input.Name) },
            (Payload.CasualtyOpened o, "ageYears") => dated with { What = o with { AgeYears = null } },
            // An express no is an order, not an observation: it is not forgotten.
            (Payload.AdviceReceived { Allows: { IsDefault: false, IsEmpty: false } } a, "oversight") => dated with
            {
                What = a with { Allows = default },
            },
            (Payload.CasualtyLookedOver o, _) => dated with { What = Silenced(o, input.Name) },
            (Payload.RegionLooked, "bleedingElsewhere" or "trunkWound") => null,
            (Payload.PositionNoted p, "altitudeM") => dated with { What = p with { AltitudeM = null } },


            (Payload.WoundFound, "woundNature")
            or
            (Payload.BleedingChecked, "bleeding")
            or
            (Payload.WatchStated, "watchAble")
            or (Payload.HelpExpected, "helpWithin") => null,
            (Payload.SuppliesStated s, "packing") => Supplies.PackingItems.Contains(s.Item) ? null : dated,
            (Payload.SuppliesStated s, "pressureDressing") => s.Item is Supplies.PressureDressing or "elastic-bandage" or "cloth"
                ? null
                : dated,
            _ => dated,
        };

    private static Payload.CasualtyLookedOver Silenced(Payload.CasualtyLookedOver o, string input) =>
        input switch
        {
            "bleedingElsewhere" => o with { BleedingElsewhere = null },
            "trunkWound" => o with { TrunkWound = null },
            "breathingHard" => o with { BreathingHard = null },
            "veryCold" => o with { VeryCold = null },
            "bloodThinner" => o with { BloodThinner = null },
            _ => o,
        };

    public static Payload.SignsTaken Silenced(Payload.SignsTaken s, string input) =>
        input switch
        {
            "heartRate" => s with { HeartRate = null },
            "breathRate" => s with { RespiratoryRate = null },
            "systolic" => s with { Systolic = null, NoPressureCuff = null },
            "spo2" => s with { Spo2 = null },
            "temperatureC" => s with { TemperatureC = null },
            "capillaryRefillS" => s with { CapillaryRefillS = null },
            "mental" => s with { Mental = null },
            "radialPulse" => s with { RadialPulse = null },
            "dizzy" => s with { Dizzy = null },
            "pale" => s with { Pale = null },
            "cool" => s with { Cool = null },
            "clammy" => s with { Clammy = null },
            _ => s,
        };

    /// <summary>The same with every time made an instant somewhere inside what was known of it.</summary>
    /// <param name="fraction">For the n-th statement, where between the ends, 0 to 1.</param>
    public static State Realised(State state, Func<int, double> fraction) =>
        State.Of(
            state.All.Select((d, i) => d with { When = Happened.At(d.When.Earliest + ((d.When.Latest - d.When.Earliest) * fraction(i))) })
        );

    public static ImmutableArray<LimbVerdict> Limbs(State state, Protocol protocol, Instant now) =>
        Judge.Of(state, [], ShippedRules.Book.By(protocol), now).Limbs;
}
