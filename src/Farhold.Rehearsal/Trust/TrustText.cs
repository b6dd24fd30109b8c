using System.Collections.Immutable;

namespace Farhold.Rehearsal.Trust;

/// <summary>How far a rehearsal can be trusted, in short; <c>docs/how-far-to-trust.md</c> has it whole, with sources.</summary>
public static class TrustText
{
    /// <summary>What there is to say, each part with its title.</summary>
    public static ImmutableArray<(string Title, ImmutableArray<string> Lines)> Parts() =>
        [
            (TrustTexts.PartIsNot, [TrustTexts.ForPractice, TrustTexts.KeptApart, TrustTexts.LeavesOut]),
            (TrustTexts.PartIs, [TrustTexts.Is, TrustTexts.Version(Say.Number(Models.Current.Model))]),
            (
                TrustTexts.PartWrong,
                [
                    TrustTexts.WrongHeart,
                    TrustTexts.WrongAcid,
                    TrustTexts.WrongRefill,
                    TrustTexts.WrongDressing,
                    TrustTexts.WrongMuscle,
                    TrustTexts.WrongShock,
                    TrustTexts.WrongLoose,
                    TrustTexts.WrongOne,
                ]
            ),
            (TrustTexts.PartReview, [TrustTexts.NoClinician, TrustTexts.NoOutsider]),
            (TrustTexts.PartChecked, [Checked(), TrustTexts.NoCourses, TrustTexts.NoOutcomes]),
        ];

    /// <summary>What the columns of a table of targets are.</summary>
    public static ImmutableArray<string> Heads() => [TrustTexts.HeadInput, TrustTexts.HeadPublished, TrustTexts.HeadFound];

    /// <summary>The targets, those that are not met first, each group with its title and how many they are.</summary>
    public static ImmutableArray<(string Title, ImmutableArray<Target> Targets)> Groups() =>
        [
            Group(TargetFit.Outside, TrustTexts.Outside),
            Group(TargetFit.NotJudged, TrustTexts.Unjudged),
            Group(TargetFit.Met, TrustTexts.Met),
        ];

    /// <summary>A target as a row: in the English of its source, below <see cref="Heads"/>.</summary>
    public static ImmutableArray<string> Row(Target target) =>
        [
            $"{target.Number}. {target.Input}: {target.Sign}",
            string.Join("; ", new[] { target.Published, target.Source }.Where(t => t.Length > 0)),
            target.Accepted.Length == 0 ? target.Found : $"{target.Found} ({target.Accepted})",
        ];

    private static string Checked() =>
        TrustTexts.Checked(
            Say.Number(Targets.All.Select(t => t.Number).Distinct().Count()),
            Say.Number(Targets.All.Length),
            Count(TargetFit.Met),
            Count(TargetFit.Outside),
            Count(TargetFit.NotJudged)
        );

    private static string Count(TargetFit fit) => Say.Number(Targets.That(fit).Length);

    private static (string, ImmutableArray<Target>) Group(TargetFit fit, Func<string, string> title) =>
        (title(Count(fit)), Targets.That(fit));
}
