using System.Collections.Immutable;
using System.Text;

namespace Farhold.App.Services;

/// <summary>A language of the app, under the name that those who speak it give it.</summary>
/// <param name="Tag">As in the name of its file: <c>de</c>.</param>
public sealed record Tongue(string Tag, string Name);

/// <summary>In which language the app speaks: the one chosen on this phone, else the first of the browser's that there is.</summary>
/// <remarks>
/// The texts are changed where they are, since everything that speaks holds the same ones; who draws, draws anew. English is always at
/// hand: it stands in for a language whose file can't be had, or is of another build.
/// </remarks>
public sealed class Language(IPhone phone, Preferences preferences, Texts texts, Background background)
{
    private const string English = "en";

    /// <summary>In the order in which they are offered.</summary>
    public static ImmutableArray<Tongue> All { get; } = [new(English, "English"), new("de", "Deutsch"), new("es", "Español")];

    /// <summary>The app speaks another language now.</summary>
    public event Action? Changed;

    public string Tag => texts.Language;

    /// <summary>No native clinician has read it yet; docs/languages.md says so too.</summary>
    public bool IsUnread => Tag != English;

    private string Wanted =>
        preferences.Language is { Length: > 0 } chosen
            ? chosen
            : phone.Languages.Select(Primary).FirstOrDefault(t => All.Any(l => l.Tag == t)) ?? English;

    /// <summary>Call once, before anything is drawn.</summary>
    public Task StartAsync() => SpeakAsync(Wanted);

    /// <summary>Changes over at once and keeps the choice. Nothing that was entered is touched.</summary>
    /// <returns>False, and nothing changes, where that language can't be had now.</returns>
    public async Task<bool> ChooseAsync(string tag)
    {
        if (!await SpeakAsync(tag))
            return false;
        preferences.Language = tag;
        background.Raise(Changed);
        return true;
    }

    private async Task<bool> SpeakAsync(string tag)
    {
        var fetched = tag == English ? null : await phone.TextsAsync(tag);
        var spoken = tag == English ? texts.TakeEnglish() : fetched is { KeysMark: Texts.KeysMark } && texts.Take(tag, fetched.Lines);
        if (spoken && fetched is { Core: { } core })
            Translation.Add(tag, Encoding.UTF8.GetBytes(core));
        Translation.Speak(Tag);
        phone.Speaks(Tag, texts.Direction);
        return spoken;
    }

    private static string Primary(string tag) => tag.Split('-')[0].ToLowerInvariant();
}
