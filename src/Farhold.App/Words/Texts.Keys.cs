namespace Farhold.App.Words;

public sealed partial class Texts
{
    public string AppName => Get();

    public string Practice => Get();

    public string StateLabel => Get();

    public string PlacesLabel => Get();

    public string PlaceNow => Get();

    public string PlaceHandOver => Get();

    public string PlaceLog => Get();

    public string ToCasualties => Get();

    public string ToCasualtiesShort => Get();

    public string ClockNow(string time) => Fill(time);

    public string LookDay => Get();

    public string LookNight => Get();

    public string NotFound => Get();

    public string No => Get();

    public string Undo => Get();

    public string Dismiss => Get();

    public string GoOn => Get();

    public string CautionsTitle => Get();

    public string CautionHelp => Get();

    public string CautionTrained => Get();

    public string CautionLocal => Get();

    public string CautionPhone => Get();

    public string CautionShort => Get();

    public string CautionsUnderstood => Get();

    public string NameTitle => Get();

    public string NameLabel => Get();

    public string NameWhy => Get();

    public string NameMissing => Get();

    public string CasualtiesTitle => Get();

    public string NoCasualties => Get();

    public string NewCasualty => Get();

    public string NewPractice => Get();

    public string ThisPhone => Get();

    public string Entries(int count) => Fill(count);

    public string EntriesInRecord => Get();

    public string PracticeWhy => Get();

    public string AliasLabel => Get();

    public string AliasWhy => Get();

    public string AliasDefault(int number) => Fill(number);

    public string OpenRecord => Get();

    public string NoteLabel => Get();

    public string WhenLabel => Get();

    public string WhenNow => Get();

    public string WhenAgo(int minutes) => Fill(minutes);

    public string WhenClock => Get();

    public string WhenBetween => Get();

    public string WhenFrom => Get();

    public string WhenTo => Get();

    public string WhenDayBefore => Get();

    public string WhenMeans(string time) => Fill(time);

    public string WhenMissing => Get();

    public string ClockNotATime => Get();

    public string PadPoint => Get();

    public string PadClear => Get();

    public string PadBack => Get();

    public string PadRange(string min, string max, string unit) => Fill(min, max, unit);

    public string UndoneReason => Get();

    public string NotStoredTitle(int count) => Fill(count);

    public string NotStoredRescued => Get();

    public string NotStoredLost => Get();

    public string NotStoredEntry => Get();

    public string TryAgain => Get();

    public string CopyText => Get();

    public string Copied => Get();

    public string CopyByHand => Get();

    public string ClockBehind(int minutes) => Fill(minutes);

    public string AlsoOpenElsewhere => Get();

    public string OnlyHere(int count) => Fill(count);

    public string LineConflicts => Get();

    public string LineUnreadable => Get();

    public string Withdrawn => Get();

    public string Withdraw => Get();

    public string WithdrawQuestion => Get();

    public string WithdrawYes => Get();

    public string ExportWhy => Get();

    public string ExportPractice => Get();

    public string Export => Get();

    public string Import => Get();

    public string ImportInto => Get();

    public string ImportTooLarge(long megabytes) => Fill(megabytes);

    public string ImportNoRecord(string file) => Fill(file);

    public string ImportRealIntoPractice => Get();

    public string ImportPracticeIntoReal => Get();

    public string Imported(string alias, int added, int same) => Fill(alias, added, same);

    public string ImportedAside(int conflicting, int unreadable) => Fill(conflicting, unreadable);

    public string ImportFailed(string why) => Fill(why);

    public string LossTitle => Get();

    public string LossRecord(string alias, int found, int expected) => Fill(alias, found, expected);

    public string LossAdvice => Get();

    public string LossAccept => Get();

    public string UpdateReady => Get();

    public string UpdateWhy => Get();

    public string UpdateStart => Get();

    public string UpdateCasualtyOpen => Get();

    public string UpdateFormOpen => Get();

    public string UpdateOtherTabs => Get();

    public string OfflineTitle => Get();

    public string OfflineReady => Get();

    public string OfflineNotYet => Get();

    public string OfflineUnable => Get();

    public string BuildLabel => Get();

    public string BuildUnknown => Get();

    public string VerifyCopy => Get();

    public string Verifying => Get();

    public string VerifiedWhole(int files) => Fill(files);

    public string VerifiedBad(int bad, string names) => Fill(bad, names);

    public string StorageTitle => Get();

    public string StorageKept => Get();

    public string StorageMayGo => Get();

    public string StorageRoom(long usedMb, long freeMb) => Fill(usedMb, freeMb);

    public string StorageAsk => Get();

    public string DeviceId(string id) => Fill(id);

    public string SettingsTitle => Get();

    public string LookLabel => Get();

    public string LookNightName => Get();

    public string LookDayName => Get();

    public string TemperatureLabel => Get();

    public string MassLabel => Get();

    public string GlanceAsOf => Get();

    public string GlanceSince => Get();

    public string GlanceLimit => Get();

    public string GlancePassed => Get();
}
