namespace Farhold.Physiology.Body;

internal partial struct Physique
{
    public Physique(ModelConstants k, Person person)
    {
        var (c, f) = (k.Circulation, k.Fluids);
        Mass = person.MassKg;
        Surface = 0.007184 * ExactMath.Pow(person.MassKg, 0.425) * ExactMath.Pow(100 * person.HeightM, 0.725);
        var cube = person.HeightM * person.HeightM * person.HeightM;
        BloodVolume =
            person.Sex == Sex.Male
                ? 1000 * ((0.3669 * cube) + (0.03219 * Mass) + 0.6041)
                : 1000 * ((0.3561 * cube) + (0.03308 * Mass) + 0.1833);
        Scale = BloodVolume / c.ReferenceBloodVolume;
        HeartRate = person.HeartRate;
        ArterialPressure = person.ArterialPressure;
        Output = c.CardiacIndex * Surface / 60;
        StrokeVolume = 60 * Output / HeartRate;
        VenousCompliance = c.VenousCompliance * Scale;
        ArterialCompliance = c.ArterialCompliance * Output / c.ReferenceOutput;
        var older = Math.Max(person.AgeYears - c.StiffeningAge, 0);
        PulseCompliance = StrokeVolume / c.PulsePressure * Math.Max(c.StiffeningFloor, 1 - (c.StiffeningPerYear * older));
        PeripheralVenousResistance = c.PeripheralVenousDrop / Output;
        LimbFlow = c.LimbShare * Output;
        LimbCompliance = c.LimbCompliance * Scale;
        LimbUnstressedVolume = c.LimbUnstressedVolume * Scale;
        LimbInflowConductance = LimbFlow / (ArterialPressure - c.LimbPressure);
        LimbOutflowConductance = LimbFlow / (c.LimbPressure - c.CentralVenousPressure);
        SystemicConductance = (Output - LimbFlow) / (ArterialPressure - c.CentralVenousPressure);
        ArterialUnstressedVolume = c.ArterialUnstressedVolume * Scale;
        var arterial = ArterialUnstressedVolume + (ArterialCompliance * ArterialPressure);
        var limb = LimbUnstressedVolume + (LimbCompliance * c.LimbPressure);
        VenousUnstressedVolume = BloodVolume - arterial - limb - (VenousCompliance * c.CentralVenousPressure);
        VenousToneVolume = c.VenousToneVolume * Scale * person.VenousToneFactor;
        HumoralToneVolume = c.HumoralToneVolume * Scale;
        FailureVolume = c.FailureVolume * Scale;
        var maximal = k.Heart.MaximalRateAtBirth - (k.Heart.MaximalRatePerYear * person.AgeYears);
        HeartRateReserve = ((k.Heart.ReflexCeiling * maximal) - HeartRate) * person.HeartRateReserveFactor;
        // Only a drawn reserve can come near the second limit.
        var reached = Math.Min(HeartRate + HeartRateReserve, k.Heart.VariedCeiling * maximal);
        HeartRateCeiling = (reached * (1 - (k.Heart.BetaCeilingLoss * person.BetaBlockade))) + k.Heart.CeilingMargin;
        RestingRate = HeartRate * (1 - (k.Heart.BetaRestLoss * person.BetaBlockade));
        ReflexRemaining = 1 - (k.Heart.BetaReflexLoss * person.BetaBlockade);
        Filling = 1 - ExactMath.Exp(-(c.CentralVenousPressure + c.CollapsePressure) / k.Heart.StarlingPressure);
        var beats = HeartRate / k.Heart.ShortDiastoleRate;
        Diastole = 1 + (beats * beats * beats * (beats * beats * beats));
        ViscosityAtRest = 1 + (k.Vessels.ViscosityPerHaematocrit * person.Haematocrit);
        ResistanceGain = k.Vessels.ResistanceGain * person.ResistanceFactor;
        Haemoglobin = k.Oxygen.HaemoglobinPerHaematocrit * person.Haematocrit;
        OxygenContentAtRest = (k.Oxygen.PerHaemoglobin * Haemoglobin * k.Oxygen.Saturation) + k.Oxygen.Dissolved;
        var limit = k.Brain.AutoregulationLimit / ArterialPressure;
        var eighth = limit * limit * (limit * limit);
        PerfusionAtRest = 1 / Math.Sqrt(Math.Sqrt(Math.Sqrt(1 + (eighth * eighth))));
        PlasmaVolume = BloodVolume - (person.Haematocrit * BloodVolume);
        Filtration = f.Filtration / 60 * (Mass / 75) * person.FiltrationFactor;
        Lymph = f.Lymph / 60 * (Mass / 75);
        InterstitialVolume = f.InterstitialVolume * Mass;
        InterstitialCompliance = f.InterstitialCompliance * (Mass / 75);
        var oncotic = Oncotic(f, f.PlasmaProtein) - Oncotic(f, f.InterstitialProtein);
        var capillary = f.InterstitialPressure + (f.Reflection * oncotic) + (Lymph / Filtration);
        var venules = c.CentralVenousPressure + (PeripheralVenousResistance * Output);
        CapillaryShare = (capillary - venules) / (ArterialPressure - venules);
        var protein = f.InterstitialProtein * (1 - f.Excluded);
        ProteinDiffusion = ((Lymph * protein) - ((1 - f.Reflection) * Lymph * f.PlasmaProtein)) / (f.PlasmaProtein - f.InterstitialProtein);
        Urine = f.Urine * Mass / 3600;
        Insensible = f.Insensible * Mass / 3600;
        OxygenUse = k.Oxygen.RestingUse * Mass / 60;
        LactateVolume = k.Lactate.Volume * Mass;
        LactateClearance = k.Lactate.Clearance * Mass / 60;
        LactateMade = LactateClearance * k.Lactate.Resting / (k.Lactate.HalfClearance + k.Lactate.Resting);
        PotassiumVolume = k.Potassium.Volume * Mass;
        CoreHeat = k.Heat.CoreShare * Mass * k.Heat.Capacity;
        ShellHeat = k.Heat.ShellShare * Mass * k.Heat.Capacity;
        ClotSlowing = 1 - (k.Clotting.AnticoagulantLoss * person.Anticoagulation);
        DepressorStrength = person.DepressorStrength;
        DebtThreshold = person.DebtThreshold;
        ReflexGain = person.ReflexGain;
    }

    /// <summary>Pressure that holds water in, by protein in g/mL.</summary>
    private static double Oncotic(FluidsConstants f, double protein)
    {
        var p = 100 * protein;
        return p * (f.OncoticFirst + (p * (f.OncoticSecond + (p * f.OncoticThird))));
    }

    /// <summary>The casualty at rest, before the injury.</summary>
    public readonly Levels AtRest(ModelConstants k)
    {
        var (c, f) = (k.Circulation, k.Fluids);
        var arterial = ArterialUnstressedVolume + (ArterialCompliance * ArterialPressure);
        var limb = LimbUnstressedVolume + (LimbCompliance * c.LimbPressure);
        return new()
        {
            ArterialVolume = arterial,
            LimbVolume = limb,
            VenousVolume = BloodVolume - arterial - limb,
            RedCellVolume = BloodVolume - PlasmaVolume,
            PlasmaProtein = f.PlasmaProtein * PlasmaVolume,
            InterstitialVolume = InterstitialVolume,
            InterstitialProtein = f.InterstitialProtein * (1 - f.Excluded) * InterstitialVolume,
            ClottingFactor = PlasmaVolume,
            SympatheticActivity = k.Reflexes.RestingActivity,
            Lactate = k.Lactate.Resting,
            Potassium = k.Potassium.Resting,
            LimbTemperature = k.Limb.Temperature,
            CoreTemperature = k.Heat.CoreTemperature,
            ShellTemperature = k.Heat.ShellTemperature,
            CerebralSupply = 1,
        };
    }
}
