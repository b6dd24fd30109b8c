namespace Farhold.Physiology.Body;

internal partial struct Drives
{
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

internal partial struct WoundDrives
{
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
