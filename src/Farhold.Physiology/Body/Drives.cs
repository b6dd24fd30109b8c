using System.Runtime.InteropServices;

namespace Farhold.Physiology.Body;

/// <summary><see cref="Conditions"/> as the equations take them. Doubles only: eight are laid side by side.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct Drives
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

    public Drives(ModelConstants k, Conditions from)
    {
        AirTemperature = from.AirTemperature;
        Insulation = from.Insulation * (1 - (k.Heat.WetLoss * from.Wetness));
        Evaporation = k.Heat.Evaporation + (k.Heat.WetEvaporation * from.Wetness);
        Warming = from.Warming;
        Pain = from.Pain;
        Anxiety = from.Anxiety;
        NociceptiveBlock = from.NociceptiveBlock;
        ArterialOcclusion = from.ArterialOcclusion;
        VenousOcclusion = from.VenousOcclusion;
        Withdrawal = from.Withdrawal;
        InfusionRate = from.Infusion.Rate;
        InfusionHaematocrit = from.Infusion.Haematocrit;
        InfusionProtein = from.Infusion.Protein;
        InfusionFactor = from.Infusion.ClottingFactor;
        InfusionTemperature = from.Infusion.Temperature;
        Drinking = from.Drinking;
        DrinkOutsideCells = from.DrinkOutsideCells;
        HeadUp = from.HeadUp;
    }
}

/// <summary><see cref="WoundConditions"/> as the equations take them.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct WoundDrives
{
    public double Open; // 1, or 0 where there is no wound: then nothing clots and nothing comes loose
    public double Arterial; // 1 or 0
    public double Venous; // 1 or 0
    public double BelowTourniquet; // 1 where a tourniquet cuts the artery off, else 0
    public double Conductance; // as it is covered
    public double OutsidePressure;
    public double ClotRate; // 1/s
    public double HoldingPressure; // that a fresh clot stands

    public WoundDrives(ModelConstants k, in Physique p, WoundConditions from)
    {
        var c = k.Clotting;
        Open = from.Conductance > 0 ? 1 : 0;
        Arterial = from.Kind == WoundKind.LimbVein ? 0 : 1;
        Venous = 1 - Arterial;
        BelowTourniquet = from.Kind == WoundKind.LimbArtery ? 1 : 0;
        Conductance = from.Conductance * from.Opening;
        OutsidePressure = from.OutsidePressure;
        ClotRate = from.ClotRate * p.ClotSlowing / c.ClosingTime;
        var flow = Math.Max(Conductance * c.ReferencePressure * 60, 1e-6);
        var held = c.HoldingPressure * ExactMath.Pow(c.HoldingFlow / flow, c.HoldingExponent);
        HoldingPressure = Math.Min(Math.Max(held, c.HoldingFloor), c.HoldingCeiling);
    }
}
