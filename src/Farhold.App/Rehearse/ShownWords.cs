using Farhold.Rehearsal.Runs;

namespace Farhold.App.Rehearse;

/// <summary>What a trainee noticed, in words.</summary>
internal static class ShownWords
{
    public static string Say(Happening happening) => Labels.Sentence(happening.Text);

    /// <summary>What a look came to was asked for, and does not interrupt.</summary>
    public static bool IsPressing(Happening happening) => happening.Kind != HappeningKind.Looked;
}
