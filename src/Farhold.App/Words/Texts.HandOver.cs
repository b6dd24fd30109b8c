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

    public string ShowCodesCount(int entries, int codes) => Fill(entries, codes);

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

    public string TakeSummary(int added, int same) => Fill(added, same);

    public string TakeAside(int conflicting, int unreadable) => Fill(conflicting, unreadable);

    public string TakeNothingNew => Get();

    public string TakeNoRecord => Get();

    public string TakeRealIntoPractice => Get();

    public string TakePracticeIntoReal => Get();

    public string TakeMerge => Get();

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
}
