using System.Collections.Immutable;

namespace Farhold.Physiology.Body;

/// <summary>What is done to the casualty from outside; holds until it is changed, and changes between two steps only.</summary>
public sealed record Conditions
{
    /// <summary>°C.</summary>
    public double AirTemperature { get; init; } = 26;

    /// <summary>Of clothing and the air around it, m²K/W.</summary>
    public double Insulation { get; init; } = 0.20;

    /// <summary>0 to 1.</summary>
    public double Wetness { get; init; }

    /// <summary>From outside, W.</summary>
    public double Warming { get; init; }

    /// <summary>0 to 10.</summary>
    public double Pain { get; init; }

    /// <summary>0 to 1.</summary>
    public double Anxiety { get; init; }

    /// <summary>How far injured tissue holds the depressor reflex back, 0 to 1.</summary>
    public double NociceptiveBlock { get; init; }

    /// <summary>Of the arteries of the injured limb, 0 to 1.</summary>
    public double ArterialOcclusion { get; init; }

    /// <summary>Of the veins of the injured limb, 0 to 1.</summary>
    public double VenousOcclusion { get; init; }

    /// <summary>Blood drawn off at a fixed rate, as in an experiment, mL/s.</summary>
    public double Withdrawal { get; init; }

    public Infusion Infusion { get; init; } = new();

    /// <summary>mL/s.</summary>
    public double Drinking { get; init; }

    /// <summary>Share of what is drunk that stays outside cells: 0.7 of rehydration salts, 0.33 of water.</summary>
    public double DrinkOutsideCells { get; init; } = 0.7;

    /// <summary>Fall of pressure from heart to brain, mmHg: 0 lying, about 15 half sitting, 25 sitting.</summary>
    public double HeadUp { get; init; }

    /// <summary>One for each wound of the simulation, in their order.</summary>
    public ImmutableArray<WoundConditions> Wounds { get; init; } = [];
}

/// <param name="Rate">mL/s.</param>
/// <param name="Protein">g/mL.</param>
/// <param name="ClottingFactor">As normal plasma, mL/mL.</param>
/// <param name="Temperature">°C.</param>
public sealed record Infusion(
    double Rate = 0,
    double Haematocrit = 0,
    double Protein = 0,
    double ClottingFactor = 0,
    double Temperature = 37
);

public enum WoundKind
{
    LimbArtery,

    /// <summary>Of trunk, groin, armpit or neck, where no tourniquet reaches.</summary>
    TrunkArtery,

    LimbVein,
}

/// <summary>A wound, and what lies on it.</summary>
public sealed record WoundConditions
{
    public WoundKind Kind { get; init; }

    /// <summary>Open, mL/s/mmHg; 0 is no wound.</summary>
    public double Conductance { get; init; }

    /// <summary>Multiplies the conductance: packing and pressure make it smaller.</summary>
    public double Opening { get; init; } = 1;

    /// <summary>On the wound from outside, mmHg.</summary>
    public double OutsidePressure { get; init; }

    /// <summary>Multiplies the rate of clotting.</summary>
    public double ClotRate { get; init; } = 1;

    /// <summary>A wound that first bleeds at a rate in mL/min: from an artery at 92 mmHg, from a vein at 9.</summary>
    public static WoundConditions Bleeding(WoundKind kind, double rate) =>
        new() { Kind = kind, Conductance = rate / 60 / (kind == WoundKind.LimbVein ? 9 : 92) };
}
