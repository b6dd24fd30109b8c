namespace Farhold.App.Words;

/// <summary>Of drink, drugs and what is in the pack.</summary>
public sealed partial class Texts
{
    public string PackPlaces => Get();

    public string StepLess(string first) => Fill(first);

    public string StepMore(string first) => Fill(first);

    public string AskBackTitle => Get();

    public string AskBackNo => Get();

    public string AskBackYes => Get();

    public string AroundNow(int first, string second, string third) => Counted(first, first, second, third);

    public string AroundPeople => Get();

    public string AroundHeat => Get();

    public string AroundWork => Get();

    public string HeatCool => Get();

    public string HeatWarm => Get();

    public string HeatHot => Get();

    public string HeatUnknown => Get();

    public string WorkRest => Get();

    public string WorkEasy => Get();

    public string WorkHard => Get();

    public string SuppliesTitle => Get();

    public string SuppliesNone => Get();

    public string SuppliesNoHelp => Get();

    public string SuppliesSayHelp => Get();

    public string SuppliesShort => Get();

    public string SuppliesUnsure => Get();

    public string SuppliesEnough => Get();

    public string SuppliesUncounted(int first) => Fill(first);

    public string SuppliesBasis => Get();

    public string SuppliesCount => Get();

    public string CountHow => Get();

    public string CountLog(int first) => Fill(first);

    public string FluidsTitle => Get();

    public string UrineTitle => Get();

    public string UrineUnknown => Get();

    public string UrineShould(string first) => Fill(first);

    public string UrineEnough => Get();

    public string UrineBelow => Get();

    public string UrineNotTold => Get();

    public string UrineMuscle => Get();

    public string SayMass => Get();

    public string FluidSource(string first) => Fill(first);

    public string DrinkOnly => Get();

    public string DrankWater => Get();

    public string DrankMix => Get();

    public string PassedUrine => Get();

    public string Ml(int first) => Fill(first);

    public string NeedOf(string first, string second) => Fill(first, second);

    public string FluidSumsTitle => Get();

    public string FluidSpan => Get();

    public string FluidIn => Get();

    public string FluidOut => Get();

    public string LastHours(int first) => Fill(first);

    public string InAll => Get();

    public string FluidNotCounted => Get();

    public string OtherEntries => Get();

    public string BurnTitle => Get();

    public string BurnHow => Get();

    public string BurnPercent => Get();

    public string BurnSmall(string first) => Fill(first);

    public string BurnTens(string first) => Fill(first);

    public string BurnCheck(string first) => Fill(first);

    public string BurnChild(string first) => Fill(first);

    public string BurnSteer => Get();

    public string BurnNoMass => Get();

    public string BurnSource => Get();

    public string MixTitle => Get();

    public string MixHave => Get();

    public string MixSachet => Get();

    public string MixSaltSugar => Get();

    public string MixNeither => Get();

    public string MixSachetHow => Get();

    public string MixLitres => Get();

    public string Litres(string first) => Fill(first);

    public string MixSpoons(string first, string second) => Fill(first, second);

    public string MixNotMore => Get();

    public string MixNeitherHow => Get();

    public string MixKeeps(int first) => Fill(first);

    public string MixSource => Get();

    public string DripTitle => Get();

    public string DripWho => Get();

    public string DripAmount => Get();

    public string DripOver => Get();

    public string DripSet => Get();

    public string DripRate(string first) => Fill(first);

    public string DripSeconds(string first) => Fill(first);

    public string DripFast => Get();

    public string DripChoose => Get();

    public string DrugsTitle => Get();

    public string DrugsAsk => Get();

    public string DrugsNoOrders => Get();

    public string DrugsGiven => Get();

    public string DrugsNoneGiven => Get();

    public string DrugSumLine(string first, string second, int third) => Counted(third, first, second, third);

    public string DrugsLogOther => Get();

    public string DrugsOthers(string first) => Fill(first);

    public string DrugsSource(string first, string second) => Fill(first, second);

    public string DrugLogGiven(string first) => Fill(first);

    public string DrugMayNow => Get();

    public string DrugNotBefore(string first) => Fill(first);

    public string DrugLookFirst => Get();

    public string DrugNot => Get();
}
