using System.Collections.Immutable;

namespace Farhold.Physiology.Body;

/// <summary>One number of the state.</summary>
/// <param name="Unit">1 for a share or an activity.</param>
/// <param name="IsShare">Kept between 0 and 1 after each step; in ordinary use it never leaves that.</param>
public sealed record Slot(string Name, string Meaning, string Unit, bool IsShare = false);

/// <summary>What the numbers of the state are, in their order.</summary>
public static class Slots
{
    /// <summary>How many numbers of the body come before those of the wounds.</summary>
    internal const int BodyCount = 30;

    internal const int WoundCount = 2;

    /// <summary>Of the body.</summary>
    public static readonly ImmutableArray<Slot> Body =
    [
        new(nameof(Levels.ArterialVolume), "blood in the systemic arteries", "mL"),
        new(nameof(Levels.VenousVolume), "blood in systemic and central veins, heart and lungs", "mL"),
        new(nameof(Levels.LimbVolume), "blood in the injured limb beyond the tourniquet", "mL"),
        new(nameof(Levels.RedCellVolume), "red cells of the whole circulation", "mL"),
        new(nameof(Levels.PlasmaProtein), "protein in plasma", "g"),
        new(nameof(Levels.InterstitialVolume), "fluid between cells", "mL"),
        new(nameof(Levels.InterstitialProtein), "protein between cells", "g"),
        new(nameof(Levels.ClottingFactor), "clotting factors, as normal plasma", "mL"),
        new(nameof(Levels.SympatheticActivity), "fast sympathetic activity", "1", true),
        new(nameof(Levels.VenousTone), "sympathetic effect on veins", "1", true),
        new(nameof(Levels.HumoralTone), "slow vasoconstriction by vasopressin and angiotensin", "1", true),
        new(nameof(Levels.DepressorReflex), "vagal and sympatho-inhibitory reflex", "1", true),
        new(nameof(Levels.Lactate), "lactate in blood", "mmol/L"),
        new(nameof(Levels.OxygenDebt), "oxygen missed and not repaid", "mL"),
        new(nameof(Levels.IschaemiaDose), "ischaemia of heart and brain stem; 1 is arrest", "1", true),
        new(nameof(Levels.IrreversibleFailure), "vessels that have failed for good", "1", true),
        new(nameof(Levels.Potassium), "potassium in plasma", "mmol/L"),
        new(nameof(Levels.LimbLactate), "lactate held in the limb", "mmol"),
        new(nameof(Levels.LimbPotassium), "potassium leaked and held in the limb", "mmol"),
        new(nameof(Levels.DeadMusclePotassium), "potassium of dead muscle, not washed out", "mmol"),
        new(nameof(Levels.LimbDose), "ischaemia of the limb, weighted by temperature", "s"),
        new(nameof(Levels.DeadMuscle), "dead share of the limb's muscle", "1", true),
        new(nameof(Levels.LimbTemperature), "muscle of the limb", "°C"),
        new(nameof(Levels.CoreTemperature), "core", "°C"),
        new(nameof(Levels.ShellTemperature), "shell: skin and what lies under it", "°C"),
        new(nameof(Levels.CerebralSupply), "oxygen supply of the brain, filtered; 1 is normal", "1"),
        new(nameof(Levels.ShiveringHeat), "heat made by shivering", "W"),
        new(nameof(Levels.GutVolume), "drunk and not absorbed", "mL"),
        new(nameof(Levels.UrineVolume), "urine made", "mL"),
        new(nameof(Levels.LostVolume), "blood lost", "mL"),
    ];

    /// <summary>Of each wound, after the body's.</summary>
    public static readonly ImmutableArray<Slot> Wound =
    [
        new(nameof(WoundLevels.Clot), "share of the wound that a clot closes", "1", true),
        new(nameof(WoundLevels.Maturity), "maturity of the clot", "1", true),
    ];
}
