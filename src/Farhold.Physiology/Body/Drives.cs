using System.Runtime.InteropServices;

namespace Farhold.Physiology.Body;

/// <summary><see cref="Conditions"/> as the equations take them. Doubles only: eight are laid side by side.</summary>
[StructLayout(LayoutKind.Sequential)]
internal partial struct Drives
{
    public double AirTemperature;
    public double Insulation; // less for wetness
    public double Evaporation; // W/m²
    public double Warming;
    public double Pain;
    public double Anxiety;
    public double NociceptiveBlock;
    public double ArterialOcclusion;
    public double VenousOcclusion;
    public double Withdrawal;
    public double InfusionRate;
    public double InfusionHaematocrit;
    public double InfusionProtein;
    public double InfusionFactor;
    public double InfusionTemperature;
    public double Drinking;
    public double DrinkOutsideCells;
    public double HeadUp;
}

/// <summary><see cref="WoundConditions"/> as the equations take them.</summary>
[StructLayout(LayoutKind.Sequential)]
internal partial struct WoundDrives
{
    public double Open; // 1, or 0 where there is no wound: then nothing clots and nothing comes loose
    public double Arterial; // 1 or 0
    public double Venous; // 1 or 0
    public double BelowTourniquet; // 1 where a tourniquet cuts the artery off, else 0
    public double Conductance; // as it is covered
    public double OutsidePressure;
    public double ClotRate; // 1/s
    public double HoldingPressure; // that a fresh clot stands
}
