namespace Farhold.App.Words;

public sealed partial class Texts
{
    public string AppName => Get();

    public string Practice => Get();

    public string StateLabel => Get();

    public string StripsLabel => Get();

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

    public string Entries(int count) => Counted(count, count);

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

    public string NotStoredTitle(int count) => Counted(count, count);

    public string NotStoredRescued => Get();

    public string NotStoredLost => Get();

    public string NotStoredEntry => Get();

    public string TryAgain => Get();

    public string CopyText => Get();

    public string Copied => Get();

    public string CopyByHand => Get();

    public string ClockBehind(int minutes) => Fill(minutes);

    public string AlsoOpenElsewhere => Get();

    public string OnlyHere(int count) => Counted(count, count);

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

    public string Imported(string alias, int added, int same) => Counted(added, alias, added, same);

    public string ImportedAside(int conflicting, int unreadable) => Fill(conflicting, unreadable);

    public string ImportFailed(string why) => Fill(why);

    public string LossTitle => Get();

    public string LossRecord(string alias, int found, int expected) => Fill(alias, found, expected);

    public string LossAdvice => Get();

    public string LossAccept => Get();

    public string BroughtBack(int entries) => Fill(entries);

    public string UpdateReady => Get();

    public string UpdateWhy => Get();

    public string UpdateForeign => Get();

    public string UpdateStart => Get();

    public string UpdateCasualtyOpen => Get();

    public string UpdateFormOpen => Get();

    public string UpdateOtherTabs => Get();

    public string OfflineTitle => Get();

    public string OfflineReady => Get();

    public string OfflineNotYet => Get();

    public string OfflineUnable => Get();

    public string VersionLabel => Get();

    public string BuildLabel => Get();

    public string BuildUnknown => Get();

    public string VerifyCopy => Get();

    public string Verifying => Get();

    public string VerifiedWhole(int files) => Fill(files);

    public string VerifiedSigned(int files, string keys) => Fill(files, keys);

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

    public string FirstTapTitle => Get();

    public string FirstTapHint => Get();

    public string FirstTapSaving => Get();

    public string FirstTapSaved => Get();

    public string FirstTapStale => Get();

    public string FirstTapBleeding => Get();

    public string FirstTapNotSaved => Get();

    public string FirstTapKept => Get();

    public string FirstTapLost => Get();

    public string FirstTapUndone => Get();

    public string FirstTapUp => Get();

    public string FirstTapGoOn => Get();

    public string PlaceLimbs => Get();

    public string PlaceReminders => Get();

    public string LimbsNone => Get();

    public string LimbTitle(string limb) => Fill(limb);

    public string ClockSinceFirst => Get();

    public string ClockOccluded => Get();

    public string ClockStretch => Get();

    public string ClockFirst => Get();

    public string ClockNext => Get();

    public string InTime(string span, string what) => Fill(span, what);

    public string LimbOn => Get();

    public string LimbAttempts => Get();

    public string LimbInWords => Get();

    public string OutcomeUnderWay => Get();

    public string ResultHeld => Get();

    public string ResultBled => Get();

    public string ResultAbandoned => Get();

    public string LastAttempt(string outcome, string time) => Fill(outcome, time);

    public string AttemptTitle(string limb) => Fill(limb);

    public string AttemptOpen => Get();

    public string AttemptGoOn => Get();

    public string AttemptGoOnWith(string limb) => Fill(limb);

    public string AttemptNoTourniquet => Get();

    public string AttemptLeave => Get();

    public string WatchOpen => Get();

    public string BleedingAgainNow => Get();

    public string TightenNow => Get();

    public string TightNow => Get();

    public string TightNowOf(string tourniquet) => Fill(tourniquet);

    public string TightNowEnds => Get();

    public string TightNowLogs => Get();

    public string NotBleeding => Get();

    public string NotBleedingQuestion => Get();

    public string SeenNone => Get();

    public string SeenOozing => Get();

    public string LeaveOn => Get();

    public string LeaveOnTurned => Get();

    public string LeaveOnTurnedWhat => Get();

    public string ShockWhileWatching => Get();

    public string ShockNotLookedAtSince => Get();

    public string ShockWhileWatchingWhat => Get();

    public string ReasonsInFull(int count) => Fill(count);

    public string LookAgain(int count) => Fill(count);

    public string StepOf(int number, int steps) => Fill(number, steps);

    public string PackedQuestion => Get();

    public string PackedWith(string material) => Fill(material);

    public string HoldLeft => Get();

    public string HoldHandsFree => Get();

    public string HoldReached(string minutes) => Fill(minutes);

    public string HoldLog(string minutes) => Fill(minutes);

    public string HoldPackAgain => Get();

    public string Dressed => Get();

    public string SlackenLookFirst => Get();

    public string SlackenFromNone => Get();

    public string SlackenFromOozing => Get();

    public string SlackenLeft => Get();

    public string SlackenBeat(int beat, int beats) => Fill(beat, beats);

    public string SlackenPace => Get();

    public string SlackenReached => Get();

    public string SlackenLog => Get();

    public string SlackenLogOf(string what) => Fill(what);

    public string SlackenSeveral(int count) => Fill(count);

    public string SlackenSeveralReached(int count) => Fill(count);

    public string OneStillTight(string what) => Fill(what);

    public string SomeStillTight(int count) => Fill(count);

    public string LoggedStillTight(string what, string tight) => Fill(what, tight);

    public string WatchLeft => Get();

    public string WatchReached(string time) => Fill(time);

    public string WatchLastLook => Get();

    public string HeldNone => Get();

    public string HeldOozing => Get();

    public string LastLook(string what, string time) => Fill(what, time);

    public string NoLook => Get();

    public string Abandon => Get();

    public string AbandonWhy => Get();

    public string AbandonTight => Get();

    public string AbandonTightOf(string what) => Fill(what);

    public string AbandonTightAgain => Get();

    public string AbandonStaysSlack => Get();

    public string AbandonTightMissing => Get();

    public string AbandonYes => Get();

    public string NextLookAt(string time) => Fill(time);

    public string NextLookOverdue(string time) => Fill(time);

    public string PeriodUnbroken(string until) => Fill(until);

    public string PeriodEvery(string until, string every) => Fill(until, every);

    public string PeriodAfter(string every) => Fill(every);

    public string StartNoWound => Get();

    public string StartLook => Get();

    public string StartWhich => Get();

    public string StartWound => Get();

    public string StartSteps => Get();

    public string Start => Get();

    public string Insist => Get();

    public string InsistTitle => Get();

    public string InsistQuestion => Get();

    public string InsistNo => Get();

    public string InsistYes => Get();

    public string MayDarken => Get();

    public string SoundLocked => Get();

    public string SoundOff => Get();

    public string DueCount(int count) => Fill(count);

    public string DueNext(string time) => Fill(time);

    public string DueSeen => Get();

    public string DueWhileAsleep(string time) => Fill(time);

    public string DueAtOnce => Get();

    public string DueSince(string time) => Fill(time);

    public string DueNow => Get();

    public string DueAt(string time, string span) => Fill(time, span);

    public string DueNothing => Get();

    public string CannotTitle => Get();

    public string CannotLocked => Get();

    public string CannotWithdraw => Get();

    public string CannotTrust => Get();

    public string CalendarTitle => Get();

    public string CalendarWhy => Get();

    public string CalendarNone => Get();

    public string CalendarAlias(string alias) => Fill(alias);

    public string CalendarOne(string time, string what) => Fill(time, what);

    public string CalendarAll(int count, string time) => Fill(count, time);

    public string CalendarSaved(int count) => Fill(count);

    public string AlertsTitle => Get();

    public string AlertsSound => Get();

    public string AlertsVibration => Get();

    public string AlertsCannotVibrate => Get();

    public string AlertsTry => Get();

    public string AlertsTried => Get();

    public string LocalTitle => Get();

    public string LocalNone => Get();

    public string LocalTake => Get();

    public string LocalTooLarge(long kilobytes) => Fill(kilobytes);

    public string LocalRefused => Get();

    public string LocalRefusedOther => Get();

    public string RefusalLine(int line, int column, string reason) => Fill(line, column, reason);

    public string LocalAuthority(string name, string role, string date) => Fill(name, role, date);

    public string LocalNoAuthority => Get();

    public string RulesBannerLabel => Get();

    public string LocalIsOut => Get();

    public string LocalTakeHow => Get();

    public string LocalOffered => Get();

    public string LocalDecline => Get();

    public string LocalAccept => Get();

    public string LocalUnsigned => Get();

    public string LocalIssuer(string who, long serial, string until) => Fill(who, serial, until);

    public string LocalHash(string digits) => Fill(digits);

    public string LocalExpired => Get();

    public string LocalNotUsed => Get();

    public string EmergencyInUse(string alias) => Fill(alias);

    public string EmergencyEnd => Get();

    public string EmergencyEndQuestion => Get();

    public string EmergencyEndYes => Get();

    public string EmergencyOffer => Get();

    public string EmergencyHow => Get();

    public string EmergencyNoCasualty => Get();

    public string EmergencyFor => Get();

    public string EmergencyReason => Get();

    public string EmergencyUse => Get();

    public string IssuersTitle => Get();

    public string IssuersSpoilt => Get();

    public string IssuersNone => Get();

    public string IssuerDrop(string name) => Fill(name);

    public string IssuerDropQuestion => Get();

    public string IssuerDropYes => Get();

    public string IssuerScan => Get();

    public string IssuerPaste => Get();

    public string IssuerTake => Get();

    public string IssuerCompare => Get();

    public string IssuerCompareHow => Get();

    public string IssuerDiffer => Get();

    public string IssuerMatch => Get();

    public string IssuerRefused => Get();

    public string LocalLoosens => Get();

    public string LocalChanges(int count) => Fill(count);

    public string LocalNotKept => Get();

    public string LocalRemove => Get();

    public string LocalRemoveQuestion => Get();

    public string LocalRemoveYes => Get();

    public string ProtocolShow => Get();

    public string ProtocolTitle => Get();

    public string ProtocolClock => Get();

    public string ProtocolWindow => Get();

    public string ProtocolLimit => Get();

    public string ProtocolSoon => Get();

    public string ProtocolForbids => Get();

    public string ProtocolRequires => Get();

    public string ProtocolAwaits => Get();

    public string ProtocolHard => Get();

    public string ProtocolLeast(string span) => Fill(span);

    public string ProtocolLeastWith(string span, string material) => Fill(span, material);

    public string ProtocolWatch => Get();

    public string ProtocolTasks => Get();

    public string ProtocolFresh => Get();

    public string ProtocolSources => Get();

    public string TaskOnce(string span) => Fill(span);

    public string TaskEvery(string span) => Fill(span);

    public string TaskEveryUnstable(string span, string unstable) => Fill(span, unstable);

    public string TaskUnstable(string unstable) => Fill(unstable);

    public string KnownRead => Get();

    public string KnownReadSecond => Get();

    public string KnownMemory => Get();

    public string KnownDesign => Get();

    public string KnownCommon => Get();

    public string KnownLocal => Get();
}
