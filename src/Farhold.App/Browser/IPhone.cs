using NodaTime;

namespace Farhold.App.Browser;

/// <summary>Small things the phone does: keep a setting, copy a text, change the look.</summary>
public interface IPhone
{
    /// <summary>The app goes out of view, perhaps for good: the last time to put something down.</summary>
    event Action? Hidden;

    /// <summary>The browser's languages as tags, what is wanted most first: <c>de-AT</c>, <c>en</c>.</summary>
    IReadOnlyList<string> Languages { get; }

    /// <summary>Says to the page in which language it is, for readers of screens, and which way it runs.</summary>
    /// <param name="direction"><c>ltr</c> or <c>rtl</c>.</param>
    void Speaks(string language, string direction);

    /// <summary>The texts of a language in the order of their keys, below them the mark of the keys: see <c>Texts.KeysMark</c>.</summary>
    /// <returns>Null where there is no such file, or nobody to fetch it from.</returns>
    Task<FetchedTexts?> TextsAsync(string language);

    /// <summary>Named as in the time-zone database, or as local time if the phone does not say.</summary>
    DateTimeZone TimeZone { get; }

    /// <summary>Empty if never set.</summary>
    string Get(string key);

    /// <summary>False if the phone did not take it.</summary>
    bool Set(string key, string value);

    /// <summary>Width that the place shown has for what it draws, in CSS pixels; 0 before there is one.</summary>
    double Room { get; }

    /// <summary>There is room for two places side by side.</summary>
    bool IsWide { get; }

    /// <summary>The foot of the screen stays in sight, and has room for the keys of a pad.</summary>
    bool DocksKeys { get; }

    void Look(string name);

    /// <summary>Remembers what was pressed last, as what opened the sheet now shown.</summary>
    void MarkOpener();

    /// <summary>
    /// Gives the focus back to what opened the sheet; to the heading of the place if that is gone or says something else by now.
    /// </summary>
    void BackToOpener();

    /// <summary>What is under the finger is being replaced: a hasty second tap must not reach what comes in its place.</summary>
    void Replaced();

    /// <summary>Scrolls to an element by its id, so that it begins at the top of what is seen, and gives its heading the focus.</summary>
    void BringUp(string id);

    Task<bool> CopyAsync(string text);

    /// <summary>
    /// Between two pieces of work of a start: lets touches through, and waits while what was logged before the app was up is
    /// still being written.
    /// </summary>
    Task QuietAsync();
}
