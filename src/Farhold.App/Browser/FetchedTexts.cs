namespace Farhold.App.Browser;

/// <summary>What came of a language's file.</summary>
/// <param name="KeysMark">Of the keys in their order; of another build it is another.</param>
/// <param name="Lines">One a key, placeholders without their names.</param>
public sealed record FetchedTexts(string KeysMark, string[] Lines)
{
    /// <summary>What the core says in it, as <c>Translation.Add</c> takes it; null: it can't be had, and is said in English.</summary>
    public string? Core { get; init; }
}
