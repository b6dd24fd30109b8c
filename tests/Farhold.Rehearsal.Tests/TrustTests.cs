using Farhold.Tests.Architecture;

namespace Farhold.Rehearsal.Tests;

/// <summary>What is shown of how far a rehearsal can be trusted; the model's own tests hold the table to what the model gives.</summary>
public class TrustTests
{
    [Fact]
    public void Twenty_six_targets_are_shown_each_sign_once_and_in_one_group()
    {
        Assert.Equal(Enumerable.Range(1, 26), Targets.All.Select(t => t.Number).Distinct());
        var grouped = TrustText.Groups().SelectMany(g => g.Targets).ToArray();
        Assert.Equal(Targets.All.Length, grouped.Length);
        Assert.Equal(Targets.All.ToHashSet(), grouped.ToHashSet());
        Assert.All(Targets.All, t => Assert.Equal(t.Fit == TargetFit.NotJudged, t.Accepted.Length == 0));
    }

    /// <summary>The page is made by the tests of the model from the same figures.</summary>
    [Fact]
    public void The_figures_shown_are_those_of_the_page()
    {
        var page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "casualty-model-targets.md"));
        Assert.Contains(
            $"\n{Count(TargetFit.Met)} signs met, {Count(TargetFit.Outside)} outside, {Count(TargetFit.NotJudged)} not judged.\n",
            page,
            StringComparison.Ordinal
        );
        Assert.All(
            Targets.All,
            t =>
                Assert.Contains(
                    $"\n| {t.Number} | {t.Input} | {t.Sign} | {t.Published} | {t.Source} | {t.Accepted} | {t.Found} | ",
                    page,
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void The_long_page_counts_as_the_screen_does()
    {
        var page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "how-far-to-trust.md"));
        Assert.Contains(
            $"26 published targets, {Targets.All.Length} signs ([table](casualty-model-targets.md), made in every run) | "
                + $"{Count(TargetFit.Met)} met, **{Count(TargetFit.Outside)} outside**",
            page,
            StringComparison.Ordinal
        );
        Assert.Contains($"{Count(TargetFit.NotJudged)} not judged |", page, StringComparison.Ordinal);
        var shown = TrustText.Parts().SelectMany(p => p.Lines).ToArray();
        Assert.Contains(
            $"26 published targets, {Targets.All.Length} signs: {Count(TargetFit.Met)} met, {Count(TargetFit.Outside)} outside, "
                + $"{Count(TargetFit.NotJudged)} not judged. Nothing is tuned until it fits.",
            shown
        );
        Assert.Contains(shown, l => l.Contains("proves nothing about a real casualty", StringComparison.Ordinal));
    }

    private static int Count(TargetFit fit) => Targets.All.Count(t => t.Fit == fit);
}
