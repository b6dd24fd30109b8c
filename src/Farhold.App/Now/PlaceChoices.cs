using System.Collections.Immutable;

namespace Farhold.App.Now;

/// <summary>All that can be said of one limb or one region, by two taps from the figure: one on it, one that logs.</summary>
internal sealed class PlaceChoices(QuickSheets sheets, CareRecord record, Judgement picture, Texts texts)
{
    private readonly State state = record.Readings[0];

    public ImmutableArray<QuickGroup> On(Limb limb)
    {
        var wounds = LimbWounds.On(limb, state, picture.At).Select(w => w.As<Payload.WoundFound>().Wound).Distinct().ToArray();
        return
        [
            .. OfLimb(Quick.Tightened, limb),
            .. OfWounds(Quick.Bleeding, wounds),
            new(texts.QuickWound, [.. Enum.GetValues<WoundNature>().Select(n => Found(texts.Word(n), limb, null, n))]),
            .. OfWounds(Quick.Packed, wounds),
            .. OfWounds(Quick.Held, wounds),
            .. OfWounds(Quick.Dressed, wounds),
            .. OfLimb(Quick.Beyond, limb),
            .. OfLimb(Quick.Slackened, limb),
            .. OfLimb(Quick.Removed, limb),
        ];
    }

    public ImmutableArray<QuickGroup> In(BodyRegion region, BodyFace? face)
    {
        var wounds = state
            .Of(Kind.WoundFound)
            .Where(w => w.When.Earliest <= picture.At && w.As<Payload.WoundFound>().Region == region)
            .Select(w => w.As<Payload.WoundFound>().Wound)
            .Distinct()
            .ToArray();
        return
        [
            new(
                texts.RegionSeen,
                [
                    new(texts.RegionClear, _ => new Payload.RegionLooked(null, region, LookFound.Nothing)),
                    Found(texts.RegionWound, null, region, WoundNature.Bleeding, face),
                ],
                Warning: Labels.Sentence(LookQuestions.Control(null, region))
            ),
            .. OfWounds(Quick.Bleeding, wounds),
            .. OfWounds(Quick.Packed, wounds),
            .. OfWounds(Quick.Held, wounds),
            .. OfWounds(Quick.Dressed, wounds),
        ];
    }

    private IEnumerable<QuickGroup> OfLimb(Quick quick, Limb limb) =>
        sheets
            .Of(quick)
            .Groups.Where(g => g.Label == texts.Word(limb) && !g.Options.IsEmpty)
            .Select(g => g with { Label = texts.QuickName(quick) });

    private IEnumerable<QuickGroup> OfWounds(Quick quick, string[] wounds) =>
        wounds.SelectMany(w =>
            sheets
                .Of(quick)
                .Groups.Where(g => g.Label == texts.Wound(w, state))
                .Select(g => g with { Label = wounds.Length == 1 ? texts.QuickName(quick) : $"{texts.QuickName(quick)} {Plain.Line(w)}" })
        );

    private QuickOption Found(string text, Limb? limb, BodyRegion? region, WoundNature nature, BodyFace? face = null)
    {
        var name = NewNames.Wound(record);
        return new(text, _ => new Payload.WoundFound(name, limb, region, nature, Face: face));
    }
}
