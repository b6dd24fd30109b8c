using System.Collections.Immutable;

namespace Farhold.App.Now;

/// <summary>Help by what it can do, and when it is here at the latest: only that can decide.</summary>
internal sealed class HelpChoices(HelpRange range, Texts texts)
{
    /// <summary>Care: a clinic, or surgery that can take the limb over.</summary>
    public ImmutableArray<QuickGroup> Care =>
        [Of(HelpCare.Surgery, texts.HelpSurgery, texts.HelpSurgeryHint), Of(HelpCare.Clinic, texts.HelpClinic, texts.HelpClinicHint)];

    /// <summary>More people, who decide nothing for the limb.</summary>
    public ImmutableArray<QuickGroup> Hands => [Of(HelpCare.Hands, texts.HelpHands, texts.HelpHandsHint)];

    private QuickGroup Of(HelpCare care, string label, string hint) =>
        new(
            label,
            [.. HelpRange.Hours.Where(range.Holds).Select(h => new QuickOption(texts.LatestIn(label, h), now => range.Of(care, h, now)))],
            Hint: hint
        );
}
