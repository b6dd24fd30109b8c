using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Farhold.Text;

/// <summary>
/// Sentences of the files that ship (protocol, warning signs, kit list) as they are shown: in the language that is spoken, where
/// <c>protocols/words</c> has them, by the English sentence itself. A local protocol's own sentence stands in no such file and stays as it
/// was written.
/// </summary>
internal static class RuleTexts
{
    [return: NotNullIfNotNull(nameof(english))]
    public static string? Shown(string? english) => english is null || Translation.None ? english : Translation.Rule(english) ?? english;

    public static ImmutableArray<string> Shown(ImmutableArray<string> english) =>
        Translation.None ? english : [.. english.Select(e => Shown(e))];
}
