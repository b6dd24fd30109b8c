using System.Collections.Immutable;

namespace Farhold.App.Now;

/// <summary>A tourniquet tightened, limb by limb: again, or another one.</summary>
internal sealed class TightenChoices(CareRecord record, Judgement picture, Texts texts)
{
    private readonly State state = record.Readings[0];
    private readonly string fresh = NewNames.Tourniquet(record);

    public ImmutableArray<QuickGroup> Groups =>
        [
            .. Enum.GetValues<Limb>()
                .Select(limb =>
                {
                    var loose = picture.Observed.FirstOrDefault(w => w.Limb == limb)?.Clock.Tourniquets ?? [];
                    var tight = picture.Limbs.FirstOrDefault(l => l.Limb == limb)?.Clock.Tourniquets ?? [];
                    var another = loose.IsEmpty && tight.IsEmpty ? texts.TightenNew(fresh) : texts.TightenAnother(fresh);
                    return new QuickGroup(
                        texts.Word(limb),
                        [
                            .. tight.Select(t => Option(texts.TightenAgain(t), Retighten.Of(t, limb, state))),
                            .. loose.SelectMany(t => Reasons.Select(r => Option(r.Text(t), Retighten.Of(t, limb, state, r.Why)))),
                            Option(another, new Payload.TourniquetTightened(fresh, limb, Wound: NewNames.WoundFor(limb, state))),
                        ]
                    );
                }),
        ];

    /// <summary>After a loosening it makes a difference: tight again counts as bled unless something else was the reason.</summary>
    private IEnumerable<(Func<string, string> Text, TighteningReason Why)> Reasons =>
        [
            (texts.TightenBled, TighteningReason.Bleeding),
            (texts.TightenPrecaution, TighteningReason.Precaution),
            (texts.TightenReSited, TighteningReason.ReSited),
        ];

    private static QuickOption Option(string text, Payload payload) => new(text, _ => payload);
}
