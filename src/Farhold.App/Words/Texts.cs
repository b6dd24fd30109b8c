namespace Farhold.App.Words;

/// <summary>Every text on the screens, by key: a property, or a method where something is filled in.</summary>
/// <remarks>
/// Made from <c>Texts.xx.json</c>, one file a language (docs/texts.md): what is asked for and not there fails the build. English is
/// compiled in, the others are fetched when they are chosen (docs/decisions/languages.md).
/// </remarks>
public sealed partial class Texts
{
    private static readonly Lazy<Texts> English = new(() => In("en"));

    /// <summary>The sentences that go into a record as they are: in English, so that it is the same whatever the screen says.</summary>
    public Texts Recorded => Language == "en" ? this : English.Value;

    /// <summary>Says everything in English from here on, which is always at hand.</summary>
    /// <returns>True, as <see cref="Take"/> where it was taken.</returns>
    public bool TakeEnglish() => Language == "en" || Take("en", English.Value.words);

    /// <summary>What is filled in may come from a record or a file: nothing of it turns the writing or controls anything.</summary>
    private static partial string Shown(string value) => Plain.Line(value);
}
