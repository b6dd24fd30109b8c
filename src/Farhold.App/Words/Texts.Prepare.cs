namespace Farhold.App.Words;

/// <summary>Of preparing a trip, paper forms and the battery.</summary>
public sealed partial class Texts
{
    public string PrintThis => Get();

    public string NotMeasured => Get();

    public string PrepareTitle => Get();

    public string TripNotKept => Get();

    public string TripState(int first, int second, int third) => Fill(first, second, third);

    public string TripMissing => Get();

    public string TripNotSaid => Get();

    public string TripReady => Get();

    public string TripWhere => Get();

    public string TripRoute => Get();

    public string TripDays => Get();

    public string TripHours => Get();

    public string TripAlarm => Get();

    public string TripAlarmHead => Get();

    public string TripContacts => Get();

    public string TripContactsHead => Get();

    public string TripKit(int first, int second) => Fill(first, second);

    public string TripItem(string first, string second) => Fill(first, second);

    public string TripKitBasis => Get();

    public string TripNext => Get();

    public string TripSheet => Get();

    public string TripSheetHow => Get();

    public string TripLocal => Get();

    public string TripWritten(string first) => Fill(first);

    public string TripPacked => Get();

    public string PartyTitle(int first) => Fill(first);

    public string PartyName => Get();

    public string PartyRole => Get();

    public string PartyAdd => Get();

    public string PartyPractised => Get();

    public string PartyNotPractised => Get();

    public string PartyRemove => Get();

    public string PartyRemoveOf(string first) => Fill(first);

    public string RouteReachTitle => Get();

    public string RouteReachTake => Get();

    public string RouteReachNone => Get();

    public string RouteReachTrack(string first) => Fill(first);

    public string FormsTitle => Get();

    public string FormsHow => Get();

    public string FormsWho => Get();

    public string FormsAdult => Get();

    public string FormsChild => Get();

    public string FormForAdult => Get();

    public string FormForChild(string first) => Fill(first);

    public string FormForUnweighed => Get();

    public string FormCard => Get();

    public string FormLimbs => Get();

    public string FormTime => Get();

    public string FormWhat => Get();

    public string FormGiven => Get();

    public string FormBy => Get();

    public string FormTasks => Get();

    public string FormTasksHow => Get();

    public string FormEvery => Get();

    public string FormEveryOr(string first, string second) => Fill(first, second);

    public string FormAfter(string first) => Fill(first);

    public string BatteryTitle => Get();

    public string BatterySilent => Get();

    public string BatteryCharging(string first) => Fill(first);

    public string BatteryLeft(string first, string second, string third) => Fill(first, second, third);

    public string BatteryAtLeast(string first, string second) => Fill(first, second);

    public string BatterySoon(string first) => Fill(first);

    public string BatteryLooking => Get();

    public string BatteryCold => Get();

    public string SavingOn => Get();

    public string SavingOff => Get();

    public string LookSavingName => Get();
}
