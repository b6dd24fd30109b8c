namespace Farhold.App.Words;

/// <summary>Of the place Sustain.</summary>
public sealed partial class Texts
{
    public string PlaceSustain => Get();

    public string CareDue => Get();

    public string CareNow => Get();

    public string CareCloser => Get();

    public string CareNot => Get();

    public string CareNothingUntil(string what) => Fill(what);

    public string CareLater(int count) => Fill(count);

    public string CareWaits => Get();

    public string CareTwo => Get();

    public string CareWhy => Get();

    public string CareEvery(string what) => Fill(what);

    public string DrankMl(string millilitres) => Fill(millilitres);

    public string LogFluid => Get();

    public string LogUrine => Get();

    public string WarningSignsTitle => Get();

    public string WarningSignsNone => Get();

    public string WarningSignsLook => Get();

    public string WarningSignsOpen(int count) => Fill(count);

    public string ReleaseBefore(string what) => Fill(what);

    public string ReleaseAfter(string what) => Fill(what);

    public string ReleaseWithout(string what) => Fill(what);

    public string ReleaseSince(string what) => Fill(what);

    public string WatchesTitle => Get();

    public string WatchesWhy => Get();

    public string WatchOn(string what, string then) => Fill(what, then);

    public string WatchWith(string what) => Fill(what);

    public string SleepTitle => Get();

    public string SleepOf(string what, string then) => Fill(what, then);

    public string MemberName => Get();

    public string MemberJoins => Get();

    public string MemberLeaves => Get();

    public string MemberLeavesLong(string what) => Fill(what);

    public string NightTitle => Get();

    public string NightNow(string what) => Fill(what);

    public string NightNext(string what, string then) => Fill(what, then);

    public string NightWhat => Get();

    public string NightOfUsual => Get();

    public string NightOfSet => Get();

    public string NightWithoutPlace => Get();

    public string NightOfDaylight => Get();

    public string NightNone => Get();

    public string NightCut(string what) => Fill(what);

    public string NightSet => Get();

    public string NightBy => Get();

    public string NightByClock => Get();

    public string NightByDaylight => Get();

    public string NightNoPlace => Get();

    public string NightBegins => Get();

    public string NightEnds => Get();

    public string NightUsual(string what, string then) => Fill(what, then);
}
