using System.Runtime.InteropServices;

namespace Farhold.Physiology.Body;

/// <summary>The state of the body, in the order of <see cref="Slots"/>; two more for each wound follow it.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct Levels
{
    public double ArterialVolume;
    public double VenousVolume;
    public double LimbVolume;
    public double RedCellVolume;
    public double PlasmaProtein;
    public double InterstitialVolume;
    public double InterstitialProtein;
    public double ClottingFactor;
    public double SympatheticActivity;
    public double VenousTone;
    public double HumoralTone;
    public double DepressorReflex;
    public double Lactate;
    public double OxygenDebt;
    public double IschaemiaDose;
    public double IrreversibleFailure;
    public double Potassium;
    public double LimbLactate;
    public double LimbPotassium;
    public double DeadMusclePotassium;
    public double LimbDose;
    public double DeadMuscle;
    public double LimbTemperature;
    public double CoreTemperature;
    public double ShellTemperature;
    public double CerebralSupply;
    public double ShiveringHeat;
    public double GutVolume;
    public double UrineVolume;
    public double LostVolume;
}

/// <summary>The state of a wound.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct WoundLevels
{
    public double Clot;
    public double Maturity;
}
