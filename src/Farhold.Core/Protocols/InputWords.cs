namespace Farhold.Protocols;

/// <summary>Inputs of criteria, and their values, in words: by the name that traces and files give.</summary>
public static class InputWords
{
    private static readonly Dictionary<string, Input> ByName = LongInput.All.ToDictionary(i => i.Name);

    /// <summary><c>heart rate</c>; a name that no input has stays as it is.</summary>
    public static string Name(string input) => ByName.TryGetValue(input, out var known) ? known.Title : input;

    /// <summary><c>128 /min</c>, of a value as the record writes it.</summary>
    public static string Value(string input, string value) =>
        value switch
        {
            "true" => ProtocolTexts.Yes,
            "false" => ProtocolTexts.No,
            var word when char.IsAsciiLetter(word[0]) => word.Replace('-', ' '),
            var number when ByName.TryGetValue(input, out var known) && known.Unit.Length > 0 => $"{number} {known.Unit}",
            var number => number,
        };
}
