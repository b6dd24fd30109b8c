using System.Collections.Immutable;
using Farhold.App.Words;

namespace Farhold.App.Care;

/// <summary>Help by what it can do, and when it is here at the latest: only that can decide.</summary>
internal sealed class HelpChoices(HelpRange range, Texts texts)
{
    public ImmutableArray<QuickGroup> Groups =>
    [
        Of(HelpCare.Surgery, texts.HelpSurgery, texts.HelpSurgeryHint),
        Of(HelpCare.Clinic, texts.HelpClinic, texts.HelpClinicHint),
        Of(HelpCare.Hands, texts.HelpHands, texts.HelpHandsHint),
    ];

    private QuickGroup Of(HelpCare care, string label, string hint) => new(
        label,
        [.. HelpRange.Hours.Where(range.Holds).Select(h => new QuickOption(texts.LatestIn(label, h), now => range.Of(care, h, now)))],
        Hint: hint);
}
