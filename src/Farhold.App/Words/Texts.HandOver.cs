namespace Farhold.App.Words;

/// <summary>Texts of handing over.</summary>
public sealed partial class Texts
{
    public string HandOverWays => Get();

    public string ReadAloud => Get();

    public string FormChoice => Get();

    public string FormNineLine => Get();

    public string FormRadio => Get();

    public string ShortMessageTitle => Get();

    public string ShortMessageWhy => Get();

    public string ShortMessageParts => Get();

    public string ShortMessageLength(int used, int most) => Fill(used, most);

    public string ShortMessageSend => Get();

    public string ShowCodes => Get();

    public string ShowCodesHow => Get();

    public string ShowCodesPicture => Get();

    public string ShowCodesCount(int entries, int codes) => Counted(entries == 1 && codes == 1 ? 1 : 2, entries, codes);

    public string ShowCodesEasy => Get();

    public string ShowCodesSeen => Get();

    public string TakeMessage => Get();

    public string TakeMessageInto => Get();

    public string TakeMessageHow => Get();

    public string TakeMessageText => Get();

    public string TakeMessageRead => Get();

    public string TakeMessageNone => Get();

    public string TakeMessageRefused(int line, int column, string why) => Fill(line, column, why);

    public string TakeMessageLeftOut(string what) => Fill(what);

    public string TakeMessageAgain => Get();

    public string TakeCodes => Get();

    public string TakeCodesInto => Get();

    public string TakeCodesHow => Get();

    public string TakeCamera => Get();

    public string TakePicture => Get();

    public string TakeWaiting => Get();

    public string TakeProgress(int known, int needed) => Fill(known, needed);

    public string TakeStop => Get();

    public string TakeNoCamera(string why) => Fill(why);

    public string TakeDamaged => Get();

    public string TakeForeign => Get();

    public string TakeNotOurs => Get();

    public string TakeNewCasualty(string alias) => Fill(alias);

    public string TakeKnownCasualty(string alias) => Fill(alias);

    public string TakeSummary(int added, int same) => Counted(added, added, same);

    public string TakeAside(int conflicting, int unreadable) => Fill(conflicting, unreadable);

    public string TakeNothingNew => Get();

    public string TakeNoRecord => Get();

    public string TakeRealIntoPractice => Get();

    public string TakePracticeIntoReal => Get();

    public string TakeMerge => Get();

    public string TakingIn => Get();

    public string TakeAgain => Get();

    public string TakeGoTo(string alias) => Fill(alias);

    public string SignsTable => Get();

    public string PassOnCopy => Get();

    public string PassOnShare => Get();

    public string PassOnCopied => Get();

    public string PassOnNotCopied => Get();

    public string PassOnShared => Get();

    public string PassOnNotShared => Get();

    public string BackToHandOver => Get();

    public string SamePersonAsk => Get();

    public string SamePersonComing => Get();

    public string SamePersonHere => Get();

    public string SamePerson(string alias) => Fill(alias);

    public string AnotherCasualty => Get();

    public string PersonLimb(string limb, string time) => Fill(limb, time);

    public string PersonFemale => Get();

    public string PersonMale => Get();

    public string PersonNoSex => Get();

    public string PersonAge(string years) => Fill(years);

    public string PersonNoAge => Get();

    public string PersonNoLimb => Get();

    public string PersonLast(string time) => Fill(time);

    public string PersonNothing => Get();

    public string PersonNoName => Get();

    public string Unsays(int withdrawn, int amended) => Fill(withdrawn, amended);

    public string UnsaysWithdraws(string was, string reason, string by) => Fill(was, reason, by);

    public string UnsaysCorrects(string was, string becomes, string by) => Fill(was, becomes, by);

    public string UnsaysMore(int more) => Fill(more);

    public string UnsaysWorse => Get();

    public string UnsaidNotAccepted => Get();

    public string TakeBack => Get();

    public string TakeBackMeans => Get();

    public string TakeBackSurely(int count) => Fill(count);

    public string TakeBackNot => Get();

    public string TakenBack => Get();

    public string TakenInTitle => Get();

    public string TakenInBatch(int count, string source, string time) => Fill(count, source, time);

    public string SourceCodes => Get();

    public string SourceMessage => Get();

    public string ImportOther => Get();

    public string ImportReading => Get();

    public string EraseOne(string alias) => Fill(alias);

    public string EraseNotEnded => Get();

    public string EraseWhat(int record) => Fill(record);

    public string EraseKept => Get();

    public string EraseCopyAsk => Get();

    public string EraseCopyChecked => Get();

    public string EraseCopiesChecked => Get();

    public string EraseCopyRefused => Get();

    public string EraseSurely(string alias) => Fill(alias);

    public string EraseAllTitle => Get();

    public string EraseAllWhat(int casualties) => Fill(casualties);

    public string EraseAll => Get();

    public string EraseAllSurely => Get();

    public string KeptLong(int days) => Fill(days);
}
