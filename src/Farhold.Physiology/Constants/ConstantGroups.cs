namespace Farhold.Physiology.Constants;

/// <summary>Volumes, compliances and flows at rest, for a reference adult; they go by blood volume and cardiac output.</summary>
public sealed record CirculationConstants
{
    public required double CardiacIndex { get; init; }
    public required double CentralVenousPressure { get; init; }
    public required double ReferenceBloodVolume { get; init; }
    public required double ReferenceOutput { get; init; }
    public required double VenousCompliance { get; init; }
    public required double ArterialCompliance { get; init; }
    public required double PulsePressure { get; init; }
    public required double StiffeningAge { get; init; }
    public required double StiffeningPerYear { get; init; }
    public required double StiffeningFloor { get; init; }
    public required double PeripheralVenousDrop { get; init; }
    public required double ArterialUnstressedVolume { get; init; }
    public required double LimbShare { get; init; }
    public required double LimbCompliance { get; init; }
    public required double LimbUnstressedVolume { get; init; }
    public required double LimbPressure { get; init; }
    public required double VenousToneVolume { get; init; }
    public required double HumoralToneVolume { get; init; }
    public required double FailureVolume { get; init; }
    public required double CollapsePressure { get; init; }
    public required double Haematocrit { get; init; }
}

/// <summary>Pump, rate and what weakens them.</summary>
public sealed record HeartConstants
{
    public required double MaximalRateAtBirth { get; init; }
    public required double MaximalRatePerYear { get; init; }
    public required double ReflexCeiling { get; init; }
    public required double VariedCeiling { get; init; }
    public required double BetaReflexLoss { get; init; }
    public required double BetaRestLoss { get; init; }
    public required double BetaCeilingLoss { get; init; }
    public required double CeilingMargin { get; init; }
    public required double RatePerShivering { get; init; }
    public required double RatePerAnxiety { get; init; }
    public required double RatePerPain { get; init; }
    public required double RateBelowRest { get; init; }
    public required double RatePerHaemoglobin { get; init; }
    public required double RateDepressorFall { get; init; }
    public required double ColdSlowing { get; init; }
    public required double ColdSlowingBelow { get; init; }
    public required double ColdSlowingFloor { get; init; }
    public required double IschaemiaSlowing { get; init; }
    public required double RateFloor { get; init; }
    public required double ShortDiastoleRate { get; init; }
    public required double AfterloadGain { get; init; }
    public required double AfterloadFloor { get; init; }
    public required double AfterloadCeiling { get; init; }
    public required double PotassiumWeakensFrom { get; init; }
    public required double PotassiumSpan { get; init; }
    public required double AcidHalf { get; init; }
    public required double AcidWidth { get; init; }
    public required double ContractilityGain { get; init; }
    public required double IschaemiaWeakening { get; init; }
    public required double FailureWeakening { get; init; }
    public required double StarlingPressure { get; init; }
}

/// <summary>Sympathetic drive, its slower effectors, and the depressor reflex.</summary>
public sealed record ReflexesConstants
{
    public required double RestingActivity { get; init; }
    public required double PressureWeight { get; init; }
    public required double StrokeVolumeWeight { get; init; }
    public required double PressurePerAnxiety { get; init; }
    public required double PressurePerPain { get; init; }
    public required double FastTime { get; init; }
    public required double VenousTime { get; init; }
    public required double HumoralTime { get; init; }
    public required double DepressorTime { get; init; }
    public required double DepressorPressure { get; init; }
    public required double DepressorWidth { get; init; }
}

/// <summary>Resistance, viscosity and reactive hyperaemia.</summary>
public sealed record VesselsConstants
{
    public required double ResistanceGain { get; init; }
    public required double ResistanceCurve { get; init; }
    public required double ActivationFloor { get; init; }
    public required double HumoralGain { get; init; }
    public required double ViscosityPerHaematocrit { get; init; }
    public required double DepressorDilation { get; init; }
    public required double FailureDilation { get; init; }
    public required double ShiveringDilation { get; init; }
    public required double HyperaemiaMost { get; init; }
    public required double HyperaemiaHalf { get; init; }
}

/// <summary>Carriage, use and debt.</summary>
public sealed record OxygenConstants
{
    public required double HaemoglobinPerHaematocrit { get; init; }
    public required double PerHaemoglobin { get; init; }
    public required double Saturation { get; init; }
    public required double Dissolved { get; init; }
    public required double RestingUse { get; init; }
    public required double UseQ10 { get; init; }
    public required double ExtractionMost { get; init; }
    public required double ExtractionFall { get; init; }
    public required double EnergyPerMillilitre { get; init; }
    public required double RepaymentFrom { get; init; }
    public required double RepaymentSpan { get; init; }
    public required double RepaymentTime { get; init; }
}

/// <summary>Heat made by shivering.</summary>
public sealed record ShiveringConstants
{
    public required double Gain { get; init; }
    public required double ShellBelow { get; init; }
    public required double CoreBelow { get; init; }
    public required double Most { get; init; }
    public required double OxygenReserve { get; init; }
    public required double StopsAtCore { get; init; }
    public required double CoreSpan { get; init; }
    public required double StopsAtSupply { get; init; }
    public required double SupplySpan { get; init; }
    public required double Time { get; init; }
}

/// <summary>Ventilation: carbon dioxide and rate.</summary>
public sealed record BreathingConstants
{
    public required double CarbonDioxide { get; init; }
    public required double CarbonDioxidePerBaseDeficit { get; init; }
    public required double CarbonDioxidePerActivation { get; init; }
    public required double CarbonDioxidePerPain { get; init; }
    public required double CarbonDioxideFloor { get; init; }
    public required double CarbonDioxideCeiling { get; init; }
    public required double Rate { get; init; }
    public required double RatePerActivation { get; init; }
    public required double RatePerBaseDeficit { get; init; }
    public required double RatePerPain { get; init; }
    public required double RatePerAnxiety { get; init; }
    public required double StopsAtSupply { get; init; }
    public required double SupplySpan { get; init; }
}

/// <summary>Cerebral blood flow and consciousness.</summary>
public sealed record BrainConstants
{
    public required double AutoregulationLimit { get; init; }
    public required double FlowPerCarbonDioxide { get; init; }
    public required double CarbonDioxideFloor { get; init; }
    public required double CarbonDioxideCeiling { get; init; }
    public required double ColdComa { get; init; }
    public required double ColdSpan { get; init; }
    public required double Time { get; init; }
}

/// <summary>Flow of blood through the skin.</summary>
public sealed record SkinConstants
{
    public required double ConstrictionPerDegree { get; init; }
    public required double DilationPerDegree { get; init; }
    public required double DilationPerCoreDegree { get; init; }
    public required double ToneConstriction { get; init; }
    public required double RefillTime { get; init; }
    public required double RefillFloor { get; init; }
}

/// <summary>Exchange between plasma and tissue, lymph, urine, and what is drunk.</summary>
public sealed record FluidsConstants
{
    public required double Filtration { get; init; }
    public required double Lymph { get; init; }
    public required double Reflection { get; init; }
    public required double Excluded { get; init; }
    public required double PlasmaProtein { get; init; }
    public required double InterstitialProtein { get; init; }
    public required double InterstitialVolume { get; init; }
    public required double InterstitialPressure { get; init; }
    public required double InterstitialCompliance { get; init; }
    public required double InterstitialCeiling { get; init; }
    public required double LymphPerPressure { get; init; }
    public required double LymphFloor { get; init; }
    public required double LymphCeiling { get; init; }
    public required double OncoticFirst { get; init; }
    public required double OncoticSecond { get; init; }
    public required double OncoticThird { get; init; }
    public required double PrecapillaryGain { get; init; }
    public required double Urine { get; init; }
    public required double UrinePerVolume { get; init; }
    public required double UrinePressure { get; init; }
    public required double UrinePressureWidth { get; init; }
    public required double UrineTone { get; init; }
    public required double UrineHumoral { get; init; }
    public required double Insensible { get; init; }
    public required double InsensibleShare { get; init; }
    public required double AbsorptionTime { get; init; }
    public required double AbsorptionMost { get; init; }
    public required double AbsorptionFrom { get; init; }
    public required double AbsorptionSpan { get; init; }
}

/// <summary>Making, clearing, and the acid that goes with it.</summary>
public sealed record LactateConstants
{
    public required double Resting { get; init; }
    public required double Clearance { get; init; }
    public required double HalfClearance { get; init; }
    public required double Volume { get; init; }
    public required double PerOxygen { get; init; }
    public required double MolarVolume { get; init; }
    public required double PerActivation { get; init; }
    public required double LiverFloor { get; init; }
    public required double BaseDeficit { get; init; }
}

/// <summary>In plasma.</summary>
public sealed record PotassiumConstants
{
    public required double Resting { get; init; }
    public required double Volume { get; init; }
    public required double Return { get; init; }
}

/// <summary>The limb beyond the tourniquet: ischaemia, death of muscle, washout, temperature.</summary>
public sealed record LimbConstants
{
    public required double WashoutTime { get; init; }
    public required double DeadWashoutTime { get; init; }
    public required double IschaemicShare { get; init; }
    public required double LactateMade { get; init; }
    public required double LactateQ10 { get; init; }
    public required double LactateFull { get; init; }
    public required double PotassiumLeak { get; init; }
    public required double PotassiumFull { get; init; }
    public required double MusclePotassium { get; init; }
    public required double DeathTime { get; init; }
    public required double DeathQ10 { get; init; }
    public required double RecoveryTime { get; init; }
    public required double Temperature { get; init; }
    public required double CoolingTime { get; init; }
    public required double CoolingShare { get; init; }
    public required double CoreShare { get; init; }
    public required double WarmingTime { get; init; }
    public required double WarmingMost { get; init; }
}

/// <summary>Clotting factors, clots and what they hold.</summary>
public sealed record ClottingConstants
{
    public required double FactorRecoveryTime { get; init; }
    public required double ClosingTime { get; init; }
    public required double ClosingFlow { get; init; }
    public required double AnticoagulantLoss { get; init; }
    public required double NormalTemperature { get; init; }
    public required double ColdTemperature { get; init; }
    public required double MildColdLoss { get; init; }
    public required double DeepColdStart { get; init; }
    public required double DeepColdLoss { get; init; }
    public required double ColdFloor { get; init; }
    public required double FactorFrom { get; init; }
    public required double FactorSpan { get; init; }
    public required double HoldingPressure { get; init; }
    public required double HoldingFlow { get; init; }
    public required double HoldingExponent { get; init; }
    public required double HoldingFloor { get; init; }
    public required double HoldingCeiling { get; init; }
    public required double HoldingMaturity { get; init; }
    public required double ReferencePressure { get; init; }
    public required double LooseningTime { get; init; }
    public required double MaturingTime { get; init; }
}

/// <summary>How the casualty dies.</summary>
public sealed record DeathConstants
{
    public required double IschaemicPressure { get; init; }
    public required double IschaemiaTime { get; init; }
    public required double IschaemiaRecovery { get; init; }
    public required double DebtWidth { get; init; }
    public required double FailureTime { get; init; }
    public required double ArrestCore { get; init; }
}

/// <summary>Two nodes: core and shell.</summary>
public sealed record HeatConstants
{
    public required double CoreTemperature { get; init; }
    public required double ShellTemperature { get; init; }
    public required double CoreShare { get; init; }
    public required double ShellShare { get; init; }
    public required double Capacity { get; init; }
    public required double RespiratoryLoss { get; init; }
    public required double Conductance { get; init; }
    public required double BloodHeat { get; init; }
    public required double SkinFlow { get; init; }
    public required double WetLoss { get; init; }
    public required double Evaporation { get; init; }
    public required double WetEvaporation { get; init; }
    public required double SweatGain { get; init; }
    public required double SweatAbove { get; init; }
    public required double SweatShellScale { get; init; }
    public required double SweatHeat { get; init; }
    public required double SweatEvaporated { get; init; }
    public required double InfusateHeat { get; init; }
    public required double SourceCoreShare { get; init; }
}

/// <summary>What the outputs read; it does not act back on the state.</summary>
public sealed record SignsConstants
{
    public required double ShockIndexPressureFloor { get; init; }
    public required double SystolicShare { get; init; }
    public required double RadialPulseBelow { get; init; }
    public required double FemoralPulseBelow { get; init; }
    public required double CarotidPulseBelow { get; init; }
    public required double PaleAbove { get; init; }
    public required double ClammyAbove { get; init; }
    public required double ClammyShellBelow { get; init; }
    public required double MottledBelow { get; init; }
    public required double AgonalBelow { get; init; }
    public required double AlertFrom { get; init; }
    public required double VoiceFrom { get; init; }
    public required double PainFrom { get; init; }
    public required double ShiveringShown { get; init; }
    public required double Bicarbonate { get; init; }
    public required double Buffer { get; init; }
    public required double NormalPh { get; init; }
    public required double VanSlykeFactor { get; init; }
    public required double CarbonDioxideSolubility { get; init; }
    public required double CarbonicPk { get; init; }
    public required double ThirstPerBlood { get; init; }
    public required double ThirstPerTissue { get; init; }
}

/// <summary>How long acts take, and what lies on a wound does. Multipliers of dressings are judgement.</summary>
public sealed record ActsConstants
{
    public required double TightenFrom { get; init; }
    public required double TightenTo { get; init; }
    public required double UntrainedMore { get; init; }
    public required double LooseArterial { get; init; }
    public required double PackFrom { get; init; }
    public required double PackTo { get; init; }
    public required double DressTime { get; init; }
    public required double SlackenTime { get; init; }
    public required double PressTime { get; init; }
    public required double DrinkRate { get; init; }
    public required double SaltsOutside { get; init; }
    public required double WaterOutside { get; init; }
    public required double PlainOpening { get; init; }
    public required double PlainPressure { get; init; }
    public required double PlainClotting { get; init; }
    public required double HaemostaticOpening { get; init; }
    public required double HaemostaticPressure { get; init; }
    public required double HaemostaticClotting { get; init; }
    public required double DressedOpening { get; init; }
    public required double DressedPressure { get; init; }
    public required double DressingOpening { get; init; }
    public required double DressingPressure { get; init; }
    public required double HandOpening { get; init; }
    public required double HandPressure { get; init; }
    public required double HandClotting { get; init; }
    public required double HoldHaemostatic { get; init; }
    public required double HoldPlain { get; init; }
    public required double HoldNotNeeded { get; init; }
    public required double SameWound { get; init; }
    public required double FailsWithin { get; init; }
    public required double LeakFrom { get; init; }
    public required double LeakTo { get; init; }
}

/// <summary>How long a look takes, how far off it is, and what is hidden. Errors are even within their bounds.</summary>
public sealed record LooksConstants
{
    public required double PulseTime { get; init; }
    public required double BreathsTime { get; init; }
    public required double CuffTime { get; init; }
    public required double RefillTime { get; init; }
    public required double MentalTime { get; init; }
    public required double BleedingTime { get; init; }
    public required double PulseError { get; init; }
    public required double BreathsError { get; init; }
    public required double CuffError { get; init; }
    public required double RefillError { get; init; }
    public required double CuffSteps { get; init; }
    public required double OozingFrom { get; init; }
    public required double ActiveFrom { get; init; }
    public required double SoakedFrom { get; init; }
}
