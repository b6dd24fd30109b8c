using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>What is known of the rest of the casualty: somebody looked, or entries say the same.</summary>
internal static class RestOfCasualty
{
    private static readonly BodyRegion[] Trunk = [BodyRegion.Chest, BodyRegion.Abdomen, BodyRegion.Back, BodyRegion.Pelvis];

    private const double InfantYears = 2;

    public static ImmutableArray<Reading> For(Input input, Scene scene) =>
        input.Name switch
        {
            "bleedingElsewhere" => BleedingElsewhere(scene),
            "trunkWound" => TrunkWound(scene),
            "breathingHard" => LookedOver(scene, p => p.BreathingHard),
            "veryCold" => LookedOver(scene, p => p.VeryCold),
            "bloodThinner" => Medicines.ThinBlood(scene.Casualty.Person)
                ? [InputReadings.Now(scene, true)]
                : [.. LookedOver(scene, p => p.BloodThinner).Select(r => r with { Lasting = true })],
            "rateSilent" => RateSilent(scene) is { } silent ? [InputReadings.Now(scene, silent)] : [],
            "altitudeM" => Altitude(scene),
            _ => throw new System.Diagnostics.UnreachableException(input.Name),
        };

    private static ImmutableArray<Reading> LookedOver(Scene scene, Func<Payload.CasualtyLookedOver, bool?> answer) =>
        Current.Of(
            scene.State.Of(Kind.CasualtyLookedOver),
            scene.Now,
            d => answer(d.As<Payload.CasualtyLookedOver>()) is { } known ? Reading.Of(known, d.When) : null
        );

    /// <summary>
    /// Met by a wound that is not this limb's and bleeds, or that nobody has looked at since it was found or the casualty was looked
    /// over; else as the last look over the casualty says.
    /// </summary>
    private static ImmutableArray<Reading> BleedingElsewhere(Scene scene)
    {
        var looked = LookedOver(scene, p => p.BleedingElsewhere);
        var here = scene.Clock is { Limb: var limb } ? LimbWounds.Treated(limb, scene.State, scene.Now) : WoundNames.None;
        foreach (var wound in Found(scene).Where(w => !here.Contains(w.As<Payload.WoundFound>().Wound)))
        {
            var name = wound.As<Payload.WoundFound>().Wound;
            var checks = Current.Of(
                scene.State.ChecksOf(name),
                scene.Now,
                d => Reading.Of(Wire.Word(d.As<Payload.BleedingChecked>().Bleeding), d.When)
            );
            if (
                checks.Any(c => c.Word == Wire.Word(Bleeding.Active))
                || (checks.IsEmpty && !looked.Any(l => l.Word == "false" && wound.When.Latest <= l.When.Earliest))
            )
                return [InputReadings.Now(scene, true)];
        }

        return looked.IsEmpty ? Everywhere(scene) : looked;
    }

    /// <summary>No bleeding, once every region and every limb without a tourniquet was looked at one by one.</summary>
    private static ImmutableArray<Reading> Everywhere(Scene scene)
    {
        var limbs = Enum.GetValues<Limb>().Where(l => scene.Casualty.Clock(l) is null).Select(l => (Limb?)l);
        var looks = limbs
            .Select(l => Looks(scene, l, null))
            .Concat(Enum.GetValues<BodyRegion>().Select(r => Looks(scene, null, r)))
            .ToArray();
        return looks.Any(l => l.IsEmpty) ? [] : [Oldest(looks)];
    }

    private static ImmutableArray<Reading> TrunkWound(Scene scene)
    {
        var looked = LookedOver(scene, p => p.TrunkWound);
        foreach (var wound in Found(scene))
        {
            var found = wound.As<Payload.WoundFound>();
            if (found.Region is not { } region || !Trunk.Contains(region))
                continue;
            var deep = found.Nature switch
            {
                WoundNature.Burn => false,

                // A graze or a bruise: whoever looked over the casualty since can say that it is no more.
                WoundNature.Other => looked.IsEmpty || looked.Any(l => l.Word == "true" || wound.When.Latest > l.When.Earliest),
                _ => true,
            };
            if (deep)
                return [InputReadings.Now(scene, true)];
        }

        if (!looked.IsEmpty)
            return looked;
        var looks = Trunk.Select(r => Looks(scene, null, r)).ToArray();
        return looks.All(l => !l.IsEmpty && l.All(r => r.Word == Wire.Word(LookFound.Nothing))) ? [Oldest(looks)] : [];
    }

    private static ImmutableArray<Reading> Looks(Scene scene, Limb? limb, BodyRegion? region) =>
        Current.Of(
            scene.State.Of(Kind.RegionLooked),
            scene.Now,
            d =>
                d.As<Payload.RegionLooked>() is var p && p.Limb == limb && p.Region == region
                    ? Reading.Of(Wire.Word(p.Found), d.When)
                    : null
        );

    private static Reading Oldest(IEnumerable<ImmutableArray<Reading>> looks) =>
        Reading.Of(false, looks.SelectMany(l => l).MinBy(r => r.When.Earliest).When);

    private static IEnumerable<Dated> Found(Scene scene) => scene.State.Of(Kind.WoundFound).Where(w => w.When.Earliest <= scene.Now);

    /// <summary>Null where nobody said how old they are.</summary>
    private static bool? RateSilent(Scene scene)
    {
        if (Medicines.HideTheRate(scene.Casualty.Person) || scene.Casualty.BothArmsTied)
            return true;
        return scene.Casualty.Person?.AgeYears is { } age ? age < InfantYears : null;
    }

    private static ImmutableArray<Reading> Altitude(Scene scene)
    {
        var noted = Current.Of(
            scene.State.Of(Kind.PositionNoted),
            scene.Now,
            d => d.As<Payload.PositionNoted>().AltitudeM is { } metres ? Reading.Of(metres, d.When, lasting: true) : null
        );
        return noted.IsEmpty ? [Reading.Of("not-noted", Happened.At(scene.Now), lasting: true)] : noted;
    }
}
