using System.Collections.Immutable;

namespace Farhold.App.Care.Forms;

/// <summary>The fields of an entry of signs, as they are corrected.</summary>
internal static class SignFields
{
    public static ImmutableArray<FormField> All { get; } =
    [
        .. Sign.All.Select(s => new FormField.Number(s.Wire, s.Name, s.Range, s.Decimals)),
        EntryForms.Word<Mental>("mental", t => t.SignMental),
        EntryForms.Word<RadialPulse>("radialPulse", t => t.SignRadialPulse),
        new FormField.Flag("dizzy", t => t.SignDizzy), new FormField.Flag("pale", t => t.SignPale),
        new FormField.Flag("cool", t => t.SignCool), new FormField.Flag("clammy", t => t.SignClammy),
        new FormField.Flag("onOxygen", t => t.SignOxygen), new FormField.Flag("noPressureCuff", t => t.NoCuff),
        new FormField.Group("distalPulse", t => t.QuickBeyond,
            [.. Enum.GetValues<Limb>().Select(l => EntryForms.Word<DistalPulse>(Wire.Word(l), _ => Labels.Word(l)))]),
        new FormField.Group("gcs", t => t.SignComaScale,
        [
            EntryForms.Number(FieldRange.Eye, t => t.SignEye), EntryForms.Number(FieldRange.Verbal, t => t.SignVerbal),
            EntryForms.Number(FieldRange.Motor, t => t.SignMotor),
        ]),
    ];
}
