using System.Runtime.InteropServices;
using static Farhold.Physiology.Arithmetic.Scalar;

namespace Farhold.Physiology.Body;

/// <summary>The right-hand side: how fast each number of the state changes, by state and conditions.</summary>
/// <remarks>
/// Beat-averaged: arteries, veins and one injured limb; one sympathetic drive; Starling and lymph; oxygen debt; two nodes of heat; clots.
/// Structure after Guyton, Ursino 1998, Heldt 2004 (reflexes), Xie and Bert, Dongaonkar 2009 (exchange), Crowell and Smith 1964 (oxygen
/// debt), Gagge (heat), Petrasek 1994 (muscle), Sondeen 2003 (rebleeding). Constants: <c>models/1.json</c>. The build makes
/// <c>EquationsOfLanes</c>, for eight casualties at once, from this text: so only doubles, and what <see cref="Scalar"/> offers.
/// </remarks>
internal static class Equations
{
    public static void Derivatives(
        ModelConstants k,
        in Physique p,
        in Drives d,
        ReadOnlySpan<WoundDrives> wounds,
        ReadOnlySpan<double> state,
        Span<double> rates,
        out Signals a
    )
    {
        var body = Slots.BodyCount;
        ref readonly var s = ref MemoryMarshal.Cast<double, Levels>(state[..body])[0];
        var clots = MemoryMarshal.Cast<double, WoundLevels>(state[body..]);
        ref var rate = ref MemoryMarshal.Cast<double, Levels>(rates[..body])[0];
        var clotRates = MemoryMarshal.Cast<double, WoundLevels>(rates[body..]);

        a = default;
        Blood(k, p, s, ref a);
        Heart(k, p, d, s, ref a);
        Vessels(k, p, d, s, ref a);
        for (var i = 0; i < wounds.Length; i++)
            Wound(k, p, wounds[i], d, s, clots[i], ref a, ref clotRates[i]);
        Oxygen(k, p, s, ref a);
        Brain(k, p, d, s, ref a);
        Fluids(k, p, s, ref a);

        Volumes(k, p, d, s, a, ref rate);
        Reflexes(k, p, d, s, a, ref rate);
        Limb(k, p, d, s, a, ref rate);
        Chemistry(k, p, s, a, ref rate);
        Heat(k, p, d, s, a, ref rate);
    }

    private static void Blood(ModelConstants k, in Physique p, in Levels s, ref Signals a)
    {
        var c = k.Circulation;
        a.BloodVolume = s.ArterialVolume + s.VenousVolume + s.LimbVolume;
        a.PlasmaVolume = a.BloodVolume - s.RedCellVolume;
        a.Haematocrit = s.RedCellVolume / a.BloodVolume;
        a.Haemoglobin = k.Oxygen.HaemoglobinPerHaematocrit * a.Haematocrit;
        a.Activation = (s.SympatheticActivity - k.Reflexes.RestingActivity) / (1 - k.Reflexes.RestingActivity);
        a.ActivationAbove = Positive(a.Activation);
        a.ArterialPressure = Positive(s.ArterialVolume - p.ArterialUnstressedVolume) / p.ArterialCompliance;
        double working = 1 - s.IrreversibleFailure;
        double unstressed =
            p.VenousUnstressedVolume
            - (p.VenousToneVolume * s.VenousTone * (1 - s.DepressorReflex) * working)
            - (p.HumoralToneVolume * s.HumoralTone * working)
            + (p.FailureVolume * s.IrreversibleFailure);
        double stressed = s.VenousVolume - unstressed;
        a.VenousPressure = stressed / p.VenousCompliance;
        // Veins collapse: the pressure falls ever more slowly towards its floor.
        if (Any(stressed < 0))
        {
            double collapsed = c.CollapsePressure * (Exp(Min(stressed, 0) / (p.VenousCompliance * c.CollapsePressure)) - 1);
            a.VenousPressure = Select(stressed < 0, collapsed, a.VenousPressure);
        }

        a.FillingPressure = a.VenousPressure + c.CollapsePressure;
        a.BaseDeficit = k.Lactate.BaseDeficit * (s.Lactate - k.Lactate.Resting);
        a.ShiveringMultiple = s.ShiveringHeat / (k.Oxygen.EnergyPerMillilitre * p.OxygenUse);
    }

    private static void Heart(ModelConstants k, in Physique p, in Drives d, in Levels s, ref Signals a)
    {
        var h = k.Heart;
        double reflex = p.ReflexRemaining;
        double x = a.ActivationAbove;
        double rate =
            p.RestingRate
            + (h.RatePerShivering * reflex * a.ShiveringMultiple)
            + (((h.RatePerAnxiety * d.Anxiety) + (h.RatePerPain * d.Pain)) * reflex)
            + Select(a.Activation > 0, p.HeartRateReserve * reflex * (x * Sqrt(x)), h.RateBelowRest * a.Activation)
            + (h.RatePerHaemoglobin * reflex * Positive(p.Haemoglobin - a.Haemoglobin));
        rate = Min(rate, p.HeartRateCeiling) - (h.RateDepressorFall * s.DepressorReflex);
        rate = rate * Clamp(1 - (h.ColdSlowing * (h.ColdSlowingBelow - s.CoreTemperature)), h.ColdSlowingFloor, 1);
        rate = rate * (1 - (h.IschaemiaSlowing * (s.IschaemiaDose * s.IschaemiaDose)));
        a.HeartRate = Max(rate, h.RateFloor);

        double beats = a.HeartRate / h.ShortDiastoleRate;
        double cube = beats * beats * beats;
        double diastole = p.Diastole / (1 + (cube * cube));
        double afterload = Clamp(
            1 - (h.AfterloadGain * (a.ArterialPressure - p.ArterialPressure) / p.ArterialPressure),
            h.AfterloadFloor,
            h.AfterloadCeiling
        );
        double potassium = 1 - Clamp((s.Potassium - h.PotassiumWeakensFrom) / h.PotassiumSpan, 0, 1);
        double acid = 1 / (1 + Exp((a.BaseDeficit - h.AcidHalf) / h.AcidWidth));
        double contractility =
            (1 + (h.ContractilityGain * x * reflex))
            * (1 - (h.IschaemiaWeakening * Clamp(s.IschaemiaDose, 0, 1)))
            * (1 - (h.FailureWeakening * s.IrreversibleFailure))
            * potassium
            * acid;
        double filling = (1 - Exp(-a.FillingPressure / h.StarlingPressure)) / p.Filling;
        a.StrokeVolume = p.StrokeVolume * contractility * diastole * afterload * filling;
        a.Output = a.StrokeVolume * a.HeartRate / 60;
    }

    private static void Vessels(ModelConstants k, in Physique p, in Drives d, in Levels s, ref Signals a)
    {
        var v = k.Vessels;
        double viscosity = (1 + (v.ViscosityPerHaematocrit * a.Haematocrit)) / p.ViscosityAtRest;
        double tone = (1 + v.ResistanceCurve) * a.Activation / (Max(a.Activation, v.ActivationFloor) + v.ResistanceCurve);
        double working = 1 - s.IrreversibleFailure;
        a.Resistance =
            (1 + (p.ResistanceGain * tone * (1 - s.DepressorReflex) * working) + (v.HumoralGain * s.HumoralTone * working))
            * viscosity
            * (1 - (v.DepressorDilation * s.DepressorReflex))
            * (1 - (v.FailureDilation * s.IrreversibleFailure));
        double conductance = p.SystemicConductance / a.Resistance * (1 + (v.ShiveringDilation * a.ShiveringMultiple));
        a.Hyperaemia = v.HyperaemiaMost * s.LimbLactate / (s.LimbLactate + v.HyperaemiaHalf);
        a.LimbPressure = (s.LimbVolume - p.LimbUnstressedVolume) / p.LimbCompliance;
        a.SystemicFlow = conductance * (a.ArterialPressure - a.VenousPressure);
        a.LimbInflow =
            p.LimbInflowConductance / a.Resistance * (1 + a.Hyperaemia) * (1 - d.ArterialOcclusion) * (a.ArterialPressure - a.LimbPressure);
        a.LimbOutflow = p.LimbOutflowConductance * (1 - d.VenousOcclusion) * Positive(a.LimbPressure - a.VenousPressure);
    }

    private static void Wound(
        ModelConstants k,
        in Physique p,
        in WoundDrives w,
        in Drives d,
        in Levels s,
        in WoundLevels clot,
        ref Signals a,
        ref WoundLevels rate
    )
    {
        var c = k.Clotting;
        double source = Source(w, d, a);
        double flow = Flow(w, clot, source);
        a.WoundFlow = a.WoundFlow + flow;
        a.ArterialLoss = a.ArterialLoss + (w.Arterial * flow);
        a.LimbLoss = a.LimbLoss + (w.Venous * flow);

        double cold = Select(
            s.CoreTemperature > c.ColdTemperature,
            1 - (c.MildColdLoss * (c.NormalTemperature - s.CoreTemperature)),
            c.DeepColdStart - (c.DeepColdLoss * (c.ColdTemperature - s.CoreTemperature))
        );
        double factors = Clamp(((s.ClottingFactor / a.PlasmaVolume) - c.FactorFrom) / c.FactorSpan, 0, 1);
        double swept = 60 * flow / c.ClosingFlow;
        double closing = w.ClotRate * Clamp(cold, c.ColdFloor, 1) * factors / (1 + (swept * swept));
        double held = w.HoldingPressure * (1 + (c.HoldingMaturity * clot.Maturity));
        double loosening = Positive(source - w.OutsidePressure - held) / c.LooseningTime;
        rate.Clot = w.Open * ((closing * (1 - clot.Clot)) - (loosening * clot.Clot));
        rate.Maturity = w.Open * ((clot.Clot * (1 - clot.Maturity) / c.MaturingTime) - (loosening * clot.Maturity));
    }

    /// <summary>Out of one wound, mL/s.</summary>
    public static double WoundFlow(in WoundDrives w, in Drives d, in WoundLevels clot, in Signals a) => Flow(w, clot, Source(w, d, a));

    /// <summary>Pressure behind a wound, mmHg.</summary>
    private static double Source(in WoundDrives w, in Drives d, in Signals a) =>
        (w.Arterial * (a.ArterialPressure * (1 - (d.ArterialOcclusion * w.BelowTourniquet)))) + (w.Venous * a.LimbPressure);

    private static double Flow(in WoundDrives w, in WoundLevels clot, double source) =>
        w.Conductance * (1 - clot.Clot) * Positive(source - w.OutsidePressure);

    private static void Oxygen(ModelConstants k, in Physique p, in Levels s, ref Signals a)
    {
        var (o, h) = (k.Oxygen, k.Shivering);
        a.OxygenContent = (o.PerHaemoglobin * a.Haemoglobin * o.Saturation) + o.Dissolved;
        a.OxygenDelivery = a.Output * a.OxygenContent;
        double resting = p.OxygenUse * Exp((s.CoreTemperature - k.Heat.CoreTemperature) * k.Q10.Use);
        double extraction = o.ExtractionMost * (1 - (o.ExtractionFall * Clamp(a.Activation, 0, 1)));
        double extracted = extraction * a.OxygenDelivery;
        double cold = Positive(h.ShellBelow - s.ShellTemperature) * Positive(h.CoreBelow - s.CoreTemperature);
        double aim = Min(h.Gain * cold * p.Surface, h.Most * p.OxygenUse * o.EnergyPerMillilitre);
        aim = Min(aim, o.EnergyPerMillilitre * Positive((extracted / h.OxygenReserve) - resting));
        a.ShiveringAim =
            aim
            * Clamp((s.CoreTemperature - h.StopsAtCore) / h.CoreSpan, 0, 1)
            * Clamp((s.CerebralSupply - h.StopsAtSupply) / h.SupplySpan, 0, 1);
        a.OxygenDemand = resting + (s.ShiveringHeat / o.EnergyPerMillilitre);
        double u = extracted / a.OxygenDemand;
        double cube = u * u * u;
        a.OxygenUse = a.OxygenDemand * u / Exp(Log(1 + (cube * cube)) / 6);
        a.DebtRepaid = s.OxygenDebt / o.RepaymentTime * Clamp((u - o.RepaymentFrom) / o.RepaymentSpan, 0, 1);
    }

    private static void Brain(ModelConstants k, in Physique p, in Drives d, in Levels s, ref Signals a)
    {
        var (b, g) = (k.Breathing, k.Brain);
        a.CarbonDioxide = Clamp(
            b.CarbonDioxide
                - (b.CarbonDioxidePerBaseDeficit * a.BaseDeficit)
                - (b.CarbonDioxidePerActivation * a.ActivationAbove)
                - (b.CarbonDioxidePerPain * d.Pain),
            b.CarbonDioxideFloor,
            b.CarbonDioxideCeiling
        );
        a.BreathRate =
            (
                b.Rate
                + (b.RatePerActivation * a.ActivationAbove)
                + (b.RatePerBaseDeficit * a.BaseDeficit)
                + (b.RatePerPain * d.Pain)
                + (b.RatePerAnxiety * d.Anxiety)
            ) * Clamp((s.CerebralSupply - b.StopsAtSupply) / b.SupplySpan, 0, 1);

        double r = Positive(a.ArterialPressure - d.HeadUp) / g.AutoregulationLimit;
        double fourth = r * r * (r * r);
        double perfusion = r / Sqrt(Sqrt(Sqrt(1 + (fourth * fourth))));
        double flow =
            perfusion
            * Clamp(1 + (g.FlowPerCarbonDioxide * (a.CarbonDioxide - b.CarbonDioxide)), g.CarbonDioxideFloor, g.CarbonDioxideCeiling);
        a.CerebralAim =
            Min(1, flow / p.PerfusionAtRest * Sqrt(a.OxygenContent / p.OxygenContentAtRest))
            * Clamp((s.CoreTemperature - g.ColdComa) / g.ColdSpan, 0, 1);

        var skin = k.Skin;
        double colder = Positive(k.Heat.ShellTemperature - s.ShellTemperature);
        double warmer = Positive(s.ShellTemperature - k.Heat.ShellTemperature);
        double fever = Positive(s.CoreTemperature - k.Heat.CoreTemperature);
        a.SkinFlow =
            1
            / (1 + (skin.ConstrictionPerDegree * colder))
            * (1 + (skin.DilationPerDegree * warmer) + (skin.DilationPerCoreDegree * fever))
            * (1 - (skin.ToneConstriction * Clamp(a.Activation, 0, 1)))
            * a.ArterialPressure
            / p.ArterialPressure;
    }

    private static void Fluids(ModelConstants k, in Physique p, in Levels s, ref Signals a)
    {
        var f = k.Fluids;
        a.PlasmaProtein = s.PlasmaProtein / a.PlasmaVolume;
        a.LymphProtein = s.InterstitialProtein / s.InterstitialVolume;
        double interstitialProtein = s.InterstitialProtein / ((1 - f.Excluded) * s.InterstitialVolume);
        double gained = s.InterstitialVolume - p.InterstitialVolume;
        double stretched = gained / p.InterstitialCompliance;
        if (Any(gained > 0))
        {
            double swollen = f.InterstitialCeiling * (1 - Exp(-Positive(gained) / (f.InterstitialCeiling * p.InterstitialCompliance)));
            stretched = Select(gained > 0, swollen, stretched);
        }

        double tissue = f.InterstitialPressure + stretched;
        double venules = a.VenousPressure + (p.PeripheralVenousResistance * a.Output);
        double capillary = venules + (p.CapillaryShare * (a.ArterialPressure - venules) / (1 + (f.PrecapillaryGain * a.ActivationAbove)));
        double held = f.Reflection * (Oncotic(f, a.PlasmaProtein) - Oncotic(f, interstitialProtein));
        a.Filtration = p.Filtration * (capillary - tissue - held);
        a.LymphFlow = p.Lymph * Clamp(1 + (f.LymphPerPressure * (tissue - f.InterstitialPressure)), f.LymphFloor, f.LymphCeiling);
        double carried = Select(a.Filtration > 0, a.PlasmaProtein, interstitialProtein);
        a.ProteinLeak = ((1 - f.Reflection) * a.Filtration * carried) + (p.ProteinDiffusion * (a.PlasmaProtein - interstitialProtein));

        double tone = a.ActivationAbove + (f.UrineHumoral * s.HumoralTone);
        double pressure = 1 / (1 + Exp(-(a.ArterialPressure - f.UrinePressure) / f.UrinePressureWidth));
        double surplus = f.UrinePerVolume * Positive((a.BloodVolume / p.BloodVolume) - 1);
        a.UrineFlow = (p.Urine + surplus) * pressure / (1 + (f.UrineTone * tone));
    }

    /// <summary>Pressure that holds water in, by protein in g/mL.</summary>
    private static double Oncotic(FluidsConstants f, double protein)
    {
        double c = 100 * protein;
        return c * (f.OncoticFirst + (c * (f.OncoticSecond + (c * f.OncoticThird))));
    }

    private static void Volumes(ModelConstants k, in Physique p, in Drives d, in Levels s, in Signals a, ref Levels rate)
    {
        var f = k.Fluids;
        double absorbed =
            Min(s.GutVolume / f.AbsorptionTime, f.AbsorptionMost)
            * Clamp(((a.Output / p.Output) - f.AbsorptionFrom) / f.AbsorptionSpan, 0, 1);
        double lost = a.WoundFlow + d.Withdrawal;
        double plasmaLost = lost * (1 - a.Haematocrit);
        rate.ArterialVolume = a.Output - a.SystemicFlow - a.LimbInflow - a.ArterialLoss;
        rate.VenousVolume =
            a.SystemicFlow
            + a.LimbOutflow
            - a.Output
            + d.InfusionRate
            + a.LymphFlow
            - a.Filtration
            - a.UrineFlow
            + (d.DrinkOutsideCells * absorbed)
            - d.Withdrawal;
        rate.LimbVolume = a.LimbInflow - a.LimbOutflow - a.LimbLoss;
        rate.RedCellVolume = (d.InfusionRate * d.InfusionHaematocrit) - (lost * a.Haematocrit);
        rate.PlasmaProtein =
            (d.InfusionRate * d.InfusionProtein) - (plasmaLost * a.PlasmaProtein) + (a.LymphFlow * a.LymphProtein) - a.ProteinLeak;
        rate.InterstitialVolume = a.Filtration - a.LymphFlow - (f.InsensibleShare * p.Insensible);
        rate.InterstitialProtein = a.ProteinLeak - (a.LymphFlow * a.LymphProtein);
        rate.ClottingFactor =
            (d.InfusionRate * d.InfusionFactor)
            - (plasmaLost * s.ClottingFactor / a.PlasmaVolume)
            + ((p.PlasmaVolume - s.ClottingFactor) / k.Clotting.FactorRecoveryTime);
        rate.GutVolume = d.Drinking - absorbed;
        rate.UrineVolume = a.UrineFlow;
        rate.LostVolume = lost;
    }

    private static void Reflexes(ModelConstants k, in Physique p, in Drives d, in Levels s, in Signals a, ref Levels rate)
    {
        var r = k.Reflexes;
        double aim = p.ArterialPressure + (r.PressurePerAnxiety * d.Anxiety) + (r.PressurePerPain * d.Pain);
        double drive =
            p.ReflexGain
            * ((r.PressureWeight * (1 - (a.ArterialPressure / aim))) + (r.StrokeVolumeWeight * (1 - (a.StrokeVolume / p.StrokeVolume))));
        double resting = (1 - r.RestingActivity) / r.RestingActivity;
        rate.SympatheticActivity = ((1 / (1 + (resting * Exp(-drive)))) - s.SympatheticActivity) / r.FastTime;
        rate.VenousTone = (a.ActivationAbove - s.VenousTone) / r.VenousTime;
        rate.HumoralTone = (a.ActivationAbove - s.HumoralTone) / r.HumoralTime;
        double emptying = 1 / (1 + Exp(-(r.DepressorPressure - a.FillingPressure) / r.DepressorWidth));
        rate.DepressorReflex = ((p.DepressorStrength * (1 - d.NociceptiveBlock) * emptying) - s.DepressorReflex) / r.DepressorTime;
        rate.CerebralSupply = (a.CerebralAim - s.CerebralSupply) / k.Brain.Time;
    }

    private static void Limb(ModelConstants k, in Physique p, in Drives d, in Levels s, in Signals a, ref Levels rate)
    {
        var l = k.Limb;
        double outflow = a.LimbOutflow / p.LimbFlow;
        double inflow = a.LimbInflow / p.LimbFlow;
        double rinsed = outflow / (1 + a.Hyperaemia);
        double washed = s.LimbLactate / l.WashoutTime * rinsed;
        double leaked = s.LimbPotassium / l.WashoutTime * rinsed;
        double freed = s.DeadMusclePotassium / l.DeadWashoutTime * Min(1, outflow);
        double ischaemia = Positive(1 - (inflow / l.IschaemicShare));
        double weighted = ischaemia;
        double made = ischaemia;
        if (Any(ischaemia > 0))
        {
            weighted = ischaemia * Exp((s.LimbTemperature - k.Heat.CoreTemperature) * k.Q10.MuscleDeath);
            made = l.LactateMade * ischaemia * Exp((s.LimbTemperature - l.Temperature) * k.Q10.LimbLactate);
        }

        // Weibull in the dose, with shape 7.
        double dose = s.LimbDose / l.DeathTime;
        double cube = dose * dose * dose;
        rate.DeadMuscle = (1 - s.DeadMuscle) * (7 / l.DeathTime) * (cube * cube) * weighted;
        rate.LimbDose = weighted - ((1 - ischaemia) * s.LimbDose / l.RecoveryTime);
        rate.LimbLactate = (made * (1 - (s.LimbLactate / l.LactateFull))) - washed;
        rate.LimbPotassium = (l.PotassiumLeak / 60 * ischaemia * (1 - (s.LimbPotassium / l.PotassiumFull))) - leaked;
        rate.DeadMusclePotassium = (l.MusclePotassium * rate.DeadMuscle) - freed;
        rate.Potassium = ((leaked + freed) / p.PotassiumVolume) - (k.Potassium.Return / 60 * (s.Potassium - k.Potassium.Resting));

        double cooling = (1 - Min(1, inflow / l.CoolingShare)) / l.CoolingTime;
        double warming = Min(l.WarmingMost, inflow) / l.WarmingTime;
        double outside = d.AirTemperature + (l.CoreShare * (s.CoreTemperature - d.AirTemperature));
        double inside = l.Temperature + (s.CoreTemperature - k.Heat.CoreTemperature);
        rate.LimbTemperature = (cooling * (outside - s.LimbTemperature)) + (warming * (inside - s.LimbTemperature));
        // What is washed out of the limb reaches the blood.
        rate.Lactate = washed;
    }

    private static void Chemistry(ModelConstants k, in Physique p, in Levels s, in Signals a, ref Levels rate)
    {
        var l = k.Lactate;
        double liver = l.LiverFloor + ((1 - l.LiverFloor) * Min(1, a.Output / p.Output));
        double made =
            (p.LactateMade * (1 + (l.PerActivation * a.ActivationAbove))) + (l.PerOxygen * (a.OxygenDemand - a.OxygenUse) / l.MolarVolume);
        double cleared = p.LactateClearance * s.Lactate / (l.HalfClearance + s.Lactate) * liver;
        rate.Lactate = (made - cleared + rate.Lactate) / p.LactateVolume;
        rate.OxygenDebt = a.OxygenDemand - a.OxygenUse - a.DebtRepaid;

        var death = k.Death;
        rate.IschaemiaDose =
            (Positive(1 - (a.ArterialPressure / death.IschaemicPressure)) / death.IschaemiaTime)
            - (s.IschaemiaDose / death.IschaemiaRecovery);
        double debt = (s.OxygenDebt / p.Mass) - p.DebtThreshold;
        rate.IrreversibleFailure = (1 - s.IrreversibleFailure) / (1 + Exp(-debt / death.DebtWidth)) / death.FailureTime;
    }

    private static void Heat(ModelConstants k, in Physique p, in Drives d, in Levels s, in Signals a, ref Levels rate)
    {
        var h = k.Heat;
        double made = k.Oxygen.EnergyPerMillilitre * a.OxygenUse;
        double outward = (h.Conductance + (h.BloodHeat * h.SkinFlow * a.SkinFlow)) * p.Surface * (s.CoreTemperature - s.ShellTemperature);
        double dry = p.Surface * (s.ShellTemperature - d.AirTemperature) / d.Insulation;
        double evaporated = p.Surface * d.Evaporation;
        double hot = Positive(s.CoreTemperature - h.SweatAbove);
        double sweat = hot;
        if (Any(hot > 0))
            sweat =
                h.SweatGain
                * hot
                * Exp(Positive(s.ShellTemperature - h.ShellTemperature) / h.SweatShellScale)
                * p.Surface
                * h.SweatHeat
                * h.SweatEvaporated;
        double infused = d.InfusionRate * h.InfusateHeat * (s.CoreTemperature - d.InfusionTemperature);
        rate.CoreTemperature = (made - (h.RespiratoryLoss * made) - outward - infused + (h.SourceCoreShare * d.Warming)) / p.CoreHeat;
        rate.ShellTemperature = (outward - dry - evaporated - sweat + ((1 - h.SourceCoreShare) * d.Warming)) / p.ShellHeat;
        rate.ShiveringHeat = (a.ShiveringAim - s.ShiveringHeat) / k.Shivering.Time;
    }
}
