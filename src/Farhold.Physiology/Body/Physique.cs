using System.Runtime.InteropServices;

namespace Farhold.Physiology.Body;

/// <summary>What follows from a person and a model, worked out once. Units are mL, mmHg, s, °C, g, mmol, W, but where said.</summary>
/// <remarks>Nadler 1962 for blood volume, Du Bois 1916 for surface (from memory). Doubles only: eight are laid side by side.</remarks>
[StructLayout(LayoutKind.Sequential)]
internal partial struct Physique
{
    public double Mass; // kg
    public double Surface; // m²
    public double BloodVolume;
    public double Scale; // of volumes, against the reference adult
    public double Output; // mL/s
    public double StrokeVolume;
    public double HeartRate; // 1/min
    public double ArterialPressure;
    public double VenousCompliance;
    public double ArterialCompliance;
    public double PulseCompliance;
    public double PeripheralVenousResistance;
    public double LimbFlow;
    public double LimbCompliance;
    public double LimbUnstressedVolume;
    public double LimbInflowConductance;
    public double LimbOutflowConductance;
    public double SystemicConductance;
    public double ArterialUnstressedVolume;
    public double VenousUnstressedVolume;
    public double VenousToneVolume;
    public double HumoralToneVolume;
    public double FailureVolume;
    public double HeartRateReserve;
    public double HeartRateCeiling;
    public double RestingRate; // with beta-blockade
    public double ReflexRemaining; // share of heart reflexes that beta-blockade leaves
    public double Filling; // 1 − exp(−filling pressure / Starling pressure), at rest
    public double Diastole; // 1 + (rate / 190)^6, at rest
    public double ViscosityAtRest;
    public double ResistanceGain;
    public double Haemoglobin; // g/dL
    public double OxygenContentAtRest; // mL/mL
    public double PerfusionAtRest; // autoregulated share of cerebral flow
    public double PlasmaVolume;
    public double Filtration; // mL/s/mmHg
    public double Lymph; // mL/s
    public double InterstitialVolume;
    public double InterstitialCompliance;
    public double CapillaryShare; // of the drop from arteries to veins
    public double ProteinDiffusion; // mL/s
    public double Urine; // mL/s
    public double Insensible; // mL/s
    public double OxygenUse; // mL/s
    public double LactateVolume; // L
    public double LactateClearance; // mmol/s
    public double LactateMade; // mmol/s
    public double PotassiumVolume; // L
    public double CoreHeat; // J/K
    public double ShellHeat; // J/K
    public double ClotSlowing; // share of the clot rate that anticoagulants leave
    public double DepressorStrength;
    public double DebtThreshold;
    public double ReflexGain;
}
