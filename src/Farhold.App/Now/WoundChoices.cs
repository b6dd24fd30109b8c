using System.Collections.Immutable;

namespace Farhold.App.Now;

/// <summary>A wound found, by where it is: bleeding limbs first, then severed ones, then the trunk and head.</summary>
internal sealed class WoundChoices(CareRecord record, Texts texts)
{
    private readonly string name = NewNames.Wound(record);

    public ImmutableArray<QuickGroup> Groups =>
        [
            Limbs(texts.WoundBleeding, WoundNature.Bleeding),
            Limbs(texts.WoundAmputation, WoundNature.Amputation),
            Limbs(texts.WoundPartial, WoundNature.PartialAmputation),
            new(
                texts.WoundElsewhere,
                [
                    .. Enum.GetValues<BodyRegion>()
                        .Select(r => Option(texts.Word(r), new Payload.WoundFound(name, null, r, WoundNature.Bleeding))),
                ]
            ),
        ];

    private QuickGroup Limbs(string label, WoundNature nature) =>
        new(label, [.. Enum.GetValues<Limb>().Select(l => Option(texts.Word(l), new Payload.WoundFound(name, l, null, nature)))]);

    private static QuickOption Option(string text, Payload payload) => new(text, _ => payload);
}
