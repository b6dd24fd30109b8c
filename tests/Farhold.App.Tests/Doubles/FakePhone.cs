using NodaTime;

namespace Farhold.App.Tests.Doubles;

internal sealed class FakePhone : IPhone
{
    private readonly Dictionary<string, string> kept = [];

    public event Action? Hidden;

    public IReadOnlyList<string> Languages { get; set; } = ["en"];

    /// <summary>As the page says it of itself.</summary>
    public (string Language, string Direction) Spoken { get; private set; }

    /// <summary>What is fetched of a language; by default its file, as it ships.</summary>
    public Func<string, FetchedTexts?> Files { get; set; } = LanguageFile.Fetched;

    public void Speaks(string language, string direction) => Spoken = (language, direction);

    public Task<FetchedTexts?> TextsAsync(string language) => Task.FromResult(Files(language));

    public DateTimeZone TimeZone { get; init; } = DateTimeZoneProviders.Tzdb["Pacific/Auckland"];

    public double Room { get; set; }

    public bool IsWide { get; set; }

    public bool DocksKeys { get; set; }

    public string Shown { get; private set; } = "";

    public string Copied { get; private set; } = "";

    public string Get(string key) => kept.GetValueOrDefault(key, "");

    public bool Set(string key, string value)
    {
        kept[key] = value;
        return true;
    }

    public void Hide() => Hidden?.Invoke();

    public void Look(string name) => Shown = name;

    /// <summary>How many sheets were opened, and how many of them gave the focus back.</summary>
    public (int Marked, int Back) Focus { get; private set; }

    public void MarkOpener() => Focus = (Focus.Marked + 1, Focus.Back);

    public void BackToOpener() => Focus = (Focus.Marked, Focus.Back + 1);

    /// <summary>How often what was under the finger was replaced.</summary>
    public int Replacements { get; private set; }

    /// <summary>What was scrolled to, in order.</summary>
    public List<string> BroughtUp { get; } = [];

    public void Replaced() => Replacements++;

    public void BringUp(string id) => BroughtUp.Add(id);

    /// <summary>What the phone still does before it is quiet.</summary>
    public Func<Task> Busy { get; set; } = () => Task.CompletedTask;

    public Task QuietAsync() => Busy();

    public Task<bool> CopyAsync(string text)
    {
        Copied = text;
        return Task.FromResult(true);
    }
}
