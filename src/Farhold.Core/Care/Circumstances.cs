using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Care;

/// <summary>Whether a circumstance holds for a casualty, as far as the record says.</summary>
public static class Circumstances
{
    private const double AdultYears = 16;

    private const string Naloxone = "naloxone";

    /// <summary>What the record has to say for an unknown circumstance to be known.</summary>
    public static string Look(Circumstance circumstance) =>
        circumstance switch
        {
            Circumstance.Shock or Circumstance.ShockThreatens => CareTexts.LookShock,
            Circumstance.HeadInjury => CareTexts.LookHead,
            Circumstance.ReducedConsciousness => CareTexts.LookAlert,
            Circumstance.BreathingTrouble => CareTexts.LookBreaths,
            Circumstance.LongTourniquet => CareTexts.LookTimeOn,
            Circumstance.Pregnancy => CareTexts.LookPregnant,
            Circumstance.Child => CareTexts.LookAge,
            Circumstance.Bleeding => CareTexts.LookBleeding,
            Circumstance.TrunkWound => Input.TrunkWound.Look,
            Circumstance.BloodThinner => CareTexts.LookThinners,
            Circumstance.NothingByMouth => CareTexts.LookMayDrink,
            Circumstance.Unwatched => Input.WatchAble.Look,
            Circumstance.NoNaloxone => CareTexts.LookNaloxone,
            Circumstance.Pain or Circumstance.StrongPain => LongInput.Pain.Look,
            Circumstance.SevereBleeding or Circumstance.Amputation => CareTexts.LookWounds,
            Circumstance.OpenWound => CareTexts.LookSkinBroken,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    public static Truth Of(Circumstance circumstance, CasualtyView casualty) =>
        circumstance switch
        {
            Circumstance.Shock => casualty.Shock.State,
            Circumstance.ShockThreatens => ShockThreatens(casualty),
            Circumstance.HeadInjury => HeadInjury(casualty),
            Circumstance.ReducedConsciousness => Latest(casualty, Input.Mental, r => Kleene.Of(r.Word != "alert")),
            Circumstance.BreathingTrouble => BreathingTrouble(casualty),
            Circumstance.LongTourniquet => Limbs.LongTourniquet.At(casualty.State, casualty.Now),
            Circumstance.Pregnancy => CasualtyProfile.Pregnancy(casualty.State, casualty.Now),
            Circumstance.Child => casualty.Person?.AgeYears is { } age ? Kleene.Of(age < AdultYears) : Truth.Unknown,
            Circumstance.Bleeding => WoundFacts.Bleeding(casualty),
            Circumstance.TrunkWound => Flag(casualty, Input.TrunkWound),
            Circumstance.BloodThinner => BloodThinner(casualty),
            Circumstance.NothingByMouth => NothingByMouth(casualty),
            Circumstance.Unwatched => Flag(casualty, Input.WatchAble).Not(),
            Circumstance.NoNaloxone => NoNaloxone(casualty),
            Circumstance.Pain => Latest(casualty, LongInput.Pain, r => Kleene.Of(r.Low >= 1)),
            Circumstance.StrongPain => Latest(casualty, LongInput.Pain, r => Kleene.Of(r.Low >= 4)),
            Circumstance.SevereBleeding => Kleene.Of(WoundFacts.BledSeverely(casualty.State, casualty.Now)),
            Circumstance.Amputation => Kleene.Of(WoundFacts.Amputation(casualty.State, casualty.Now)),
            Circumstance.OpenWound => WoundFacts.Open(casualty.State, casualty.Now),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>What to do to learn an age that is not known: where one is asked back, its question.</summary>
    public static string LookForAge(State state, Instant now) => Asked(state, now, "ageYears") ?? Look(Circumstance.Child);

    public static string LookForMass(State state, Instant now) => Asked(state, now, "massKg") ?? CareTexts.LookMass;

    private static string? Asked(State state, Instant now, string field) =>
        Questions.OfPerson(state, now).LastOrDefault(q => q.Field == field && !q.Settled)?.Text;

    /// <summary>A wound of the head, or a mind that is not clear and nobody has said why.</summary>
    private static Truth HeadInjury(CasualtyView casualty) =>
        Kleene
            .Of(CasualtyProfile.HasHeadWound(casualty.State, casualty.Now))
            .Or(Latest(casualty, Input.Mental, r => r.Word == "alert" ? Truth.NotMet : Truth.Unknown));

    /// <summary>Fewer than 10 or more than 30 breaths a minute, hard work to breathe, or a saturation below 90 % (design).</summary>
    private static Truth BreathingTrouble(CasualtyView casualty)
    {
        var breaths = Latest(casualty, Input.RespiratoryRate, r => Kleene.Of(r.Low is < 10 or > 30));
        var measured = Latest(casualty, Input.Spo2, r => Kleene.Of(r.Low < 90));
        var hard = Flag(casualty, Input.BreathingHard);
        return new[] { measured, hard }.Where(t => t == Truth.Met).Aggregate(breaths, (t, one) => t.Or(one));
    }

    /// <summary>Shock, a lone soft sign of it, or what leads to it: bleeding, a wound of the trunk, an amputation (design).</summary>
    private static Truth ShockThreatens(CasualtyView casualty) =>
        casualty
            .Shock.State.Or(Kleene.Of(casualty.Soft.Count > 0))
            .Or(WoundFacts.Bleeding(casualty))
            .Or(Flag(casualty, Input.TrunkWound))
            .Or(Kleene.Of(WoundFacts.Amputation(casualty.State, casualty.Now)));

    private static Truth BloodThinner(CasualtyView casualty) =>
        Flag(casualty, Input.BloodThinner) is var looked and not Truth.Unknown
            ? looked
            : Medicines.Takes(casualty.Person, MedicineClass.Anticoagulant).Or(Medicines.Has(casualty.Person, Illness.BleedingDisorder));

    /// <summary>As the task of drinking: not fully alert, shock, vomiting, a wound of belly or chest.</summary>
    private static Truth NothingByMouth(CasualtyView casualty) =>
        Latest(casualty, Input.Mental, r => Kleene.Of(r.Word != "alert"))
            .Or(Flag(casualty, LongInput.ShockNow))
            .Or(Flag(casualty, LongInput.BellyOrChest))
            .Or(Flag(casualty, LongInput.Vomiting));

    private static Truth NoNaloxone(CasualtyView casualty)
    {
        var counts = Current.Of<Reading>(
            casualty.State.Of(Kind.SuppliesStated),
            casualty.Now,
            d =>
                d.As<Payload.SuppliesStated>() is var s && s.Item.Contains(Naloxone, StringComparison.OrdinalIgnoreCase)
                    ? Reading.Of(s.Count, d.When)
                    : null
        );
        return counts.IsEmpty ? Truth.Unknown : Kleene.Of(counts.Any(c => c.Low < 1));
    }

    private static Truth Flag(CasualtyView casualty, Input input) => Latest(casualty, input, r => Kleene.Of(r.Word == "true"));

    /// <summary>By the latest readings, none of them stale by the protocol; unknown where they disagree or there are none.</summary>
    private static Truth Latest(CasualtyView casualty, Input input, Func<Reading, Truth> asks)
    {
        var fresh = casualty.Protocol.Freshness.GetValueOrDefault(
            input.Name,
            casualty.Protocol.CareFreshness.GetValueOrDefault(input.Name, Duration.MaxValue)
        );
        Truth? all = null;
        foreach (var reading in InputReadings.For(input, new(casualty, null, []), fresh))
        {
            var stale = !reading.Lasting && reading.When.Until(casualty.Now).Max > fresh;
            var one = stale || reading.Doubtful ? Truth.Unknown : asks(reading);
            all = Kleene.Agreed(all, reading.Contradicted && one == Truth.NotMet ? Truth.Unknown : one);
        }

        return all ?? Truth.Unknown;
    }
}
