using System.Runtime.InteropServices;

namespace Farhold.Physiology.Body;

/// <summary>What follows from the state at once, without waiting for time to pass.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct Signals
{
    public double BloodVolume;
    public double PlasmaVolume;
    public double Haematocrit;
    public double Haemoglobin; // g/dL
    public double Activation; // of the sympathetic drive above rest, −0.11 to 1
    public double ActivationAbove; // the same, never below 0
    public double ArterialPressure; // mean
    public double VenousPressure; // central
    public double FillingPressure;
    public double BaseDeficit; // mmol/L
    public double ShiveringMultiple; // of resting heat
    public double HeartRate; // 1/min
    public double StrokeVolume;
    public double Output; // mL/s
    public double Resistance; // of all vessels, 1 at rest
    public double Hyperaemia;
    public double LimbPressure;
    public double SystemicFlow;
    public double LimbInflow;
    public double LimbOutflow;
    public double WoundFlow; // of all wounds, mL/s
    public double ArterialLoss; // of that, from arteries
    public double LimbLoss; // of that, from veins of the limb
    public double OxygenContent; // mL/mL
    public double OxygenDelivery; // mL/s
    public double OxygenDemand;
    public double OxygenUse;
    public double DebtRepaid; // mL/s
    public double ShiveringAim; // W
    public double CarbonDioxide; // mmHg
    public double BreathRate; // 1/min
    public double CerebralAim;
    public double SkinFlow; // 1 at rest
    public double Filtration; // out of blood, mL/s
    public double LymphFlow;
    public double ProteinLeak; // out of blood, g/s
    public double PlasmaProtein; // g/mL
    public double LymphProtein; // g/mL
    public double UrineFlow; // mL/s
}
