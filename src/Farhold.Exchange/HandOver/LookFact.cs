using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>What the last look at one part of the casualty came to.</summary>
public enum LookCame
{
    Clear,
    Found,
    CouldNot,
    NotLooked,
}

/// <summary>A step of the first look, a limb or a region, and what came of the last look at it.</summary>
/// <param name="Step">Null: it is a region or a limb.</param>
/// <param name="Last">Empty where nobody looked; several where it is not known which came last: the worst of them counts.</param>
/// <param name="Against">What the record says elsewhere that does not fit a clear look, or no look at all; null where nothing does.</param>
public sealed record LookFact(string Where, LookStep? Step, LookCame Came, ImmutableArray<Stated> Last, string? Against)
{
    /// <summary>Steps first, in their order, then regions and limbs.</summary>
    public static ImmutableArray<LookFact> All(CareFacts facts) =>
        [
            .. Enum.GetValues<LookStep>().Select(s => Of(s, facts)),
            .. Enum.GetValues<BodyRegion>().Select(r => Of(null, r, facts)),
            .. Enum.GetValues<Limb>().Select(l => Of(l, null, facts)),
        ];

    private static LookFact Of(LookStep step, CareFacts facts)
    {
        var last = facts.Steps.Where(s => s.As<Payload.StepLooked>().Step == step).ToImmutableArray();
        var came = last.Select(s =>
            s.As<Payload.StepLooked>().Found switch
            {
                StepFound.Nothing => LookCame.Clear,
                StepFound.NotLooked => LookCame.CouldNot,
                _ => LookCame.Found,
            }
        );
        return Made(HandOverTexts.FirstLook(Say.Word(step)), step, last, came, () => Contrary(step, facts));
    }

    private static LookFact Of(Limb? limb, BodyRegion? region, CareFacts facts)
    {
        var last = facts
            .Regions.Where(s => s.As<Payload.RegionLooked>() is var p && (p.Limb, p.Region) == (limb, region))
            .ToImmutableArray();
        var came = last.Select(s => s.As<Payload.RegionLooked>().Found == LookFound.Nothing ? LookCame.Clear : LookCame.Found);
        return Made(
            limb is { } l ? Say.Limb(l) : Say.Word(region!.Value),
            null,
            last,
            came,
            () => WoundOn(facts, p => limb is not null ? p.Limb == limb : p.Region == region)
        );
    }

    private static LookFact Made(
        string where,
        LookStep? step,
        ImmutableArray<Stated> last,
        IEnumerable<LookCame> came,
        Func<string?> against
    )
    {
        if (last.IsEmpty)
            return new(where, step, LookCame.NotLooked, [], step is null ? against() : null);
        var all = came.ToArray();
        var worst =
            all.Contains(LookCame.Found) ? LookCame.Found
            : all.Contains(LookCame.CouldNot) ? LookCame.CouldNot
            : LookCame.Clear;
        return new(where, step, worst, last, worst == LookCame.Clear ? against() : null);
    }

    private static string? Contrary(LookStep step, CareFacts facts) =>
        step switch
        {
            LookStep.Bleeding => facts.Wounds.FirstOrDefault(w => w.Bleeds) is { } wound ? HandOverTexts.WoundBleeds(wound.Name)
            : Said("bleedingElsewhere", facts) ? HandOverTexts.BleedingElsewhere
            : null,
            LookStep.Breathing => WoundOn(facts, p => p.Region == BodyRegion.Chest)
                ?? (Said("breathingHard", facts) ? HandOverTexts.BreathingHard : null),
            LookStep.Circulation => facts.Judgement.ShockLastKnown == Truth.Met ? HandOverTexts.SignsOfShock : null,
            LookStep.Cold => Said("veryCold", facts) ? HandOverTexts.VeryCold : null,
            LookStep.Head => WoundOn(facts, p => p.Region == BodyRegion.Head),
            LookStep.Belly => WoundOn(facts, p => p.Region is BodyRegion.Abdomen or BodyRegion.Pelvis or BodyRegion.Back)
                ?? (Said("trunkWound", facts) ? HandOverTexts.TrunkWound : null),
            LookStep.Airway or LookStep.Background => null,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static bool Said(string field, CareFacts facts) => facts.Rest.Single(r => r.Kind.Field == field).Yes;

    private static string? WoundOn(CareFacts facts, Func<Payload.WoundFound, bool> there) =>
        facts.Wounds.FirstOrDefault(w => w.Found.Any(f => there(f.As<Payload.WoundFound>()))) is { } wound
            ? HandOverTexts.WoundThere(wound.Name)
            : null;
}
