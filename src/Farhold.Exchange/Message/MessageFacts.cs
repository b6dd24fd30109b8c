using System.Collections.Immutable;
using Farhold.Exchange.HandOver;
using NodaTime;

namespace Farhold.Exchange.Message;

/// <summary>What a short message says of a casualty, most important first.</summary>
/// <remarks>The order is a design choice: what decides about the limb, then what decides about the casualty, then the rest.</remarks>
internal static class MessageFacts
{
    /// <summary>Tourniquets, one a limb: these are never left out.</summary>
    public static ImmutableArray<MessageFact> Tourniquets(CareFacts facts) =>
        [
            .. facts.Limbs.Select(l => new MessageFact.Tourniquet(
                l.Limb,
                l.Tight,
                l.FirstTightened,
                l.Tight == Truth.NotMet && !l.Events.Any(e => e.Disputed) ? l.Observed?.Loosened : null
            )),
        ];

    /// <summary>Everything else. Where entries conflict, nothing is said of the matter but that there is doubt.</summary>
    public static ImmutableArray<MessageFact> Others(CareFacts facts)
    {
        var wounds = facts.Wounds.Where(w => w.Found is [{ Disputed: false }]).Select(Wound).ToArray();
        var bleeds = facts.Wounds.Where(w => Sure(w.LastLook)).Select(Bleeds).ToArray();
        var signs = Signs(facts);
        return
        [
            .. facts.Ended.Where(e => !e.Disputed).TakeLast(1).Select(e => new MessageFact.Ended(e.As<Payload.CareEnded>().How, e.When)),
            .. facts.Cautions.IsEmpty ? (MessageFact[])[] : [new MessageFact.Doubt()],
            .. bleeds.Where(b => b.Bleeding == Bleeding.Active),
            .. wounds.Where(Lost),
            .. (MessageFact[])[new MessageFact.Shock(facts.Judgement.Shock.State)],
            .. signs.Take(1),
            .. Rest(facts),
            .. facts.Limbs.SelectMany(Tried),
            .. Sure(facts.Positions) ? (MessageFact[])[Position(facts.Positions[0])] : [],
            .. facts
                .Help.GroupBy(h => h.As<Payload.HelpExpected>().Care)
                .Select(g => g.ToImmutableArray())
                .Where(Sure)
                .Select(g => Help(g[0])),
            .. facts.Drugs.Where(d => !d.Disputed).Select(Drug),
            .. Who(facts.Person),
            .. facts.Person.Allergies is { } a ? (MessageFact[])[new MessageFact.Allergies(a)] : [],
            .. signs.Skip(1),
            .. wounds.Where(w => !Lost(w)),
            .. bleeds.Where(b => b.Bleeding != Bleeding.Active),
            .. Fluids(facts),
            .. facts.Urine.IsEmpty || !facts.UrineSum.Amount.IsExact || !FieldRange.Millilitres.Holds(facts.UrineSum.Amount.High)
                ? (MessageFact[])[]
                : [new MessageFact.Urine(facts.UrineSum.Amount.High, Span(facts.Urine))],
        ];
    }

    /// <summary>Whether the record holds what no short message ever carries, or what was passed over for being disputed.</summary>
    public static bool MoreInTheLog(CareFacts facts) =>
        !facts.Notes.IsEmpty
        || !facts.Advice.IsEmpty
        || !facts.Contacts.IsEmpty
        || !facts.Questions.IsEmpty
        || !facts.Regions.IsEmpty
        || !facts.Steps.IsEmpty
        || !facts.Injuries.IsEmpty
        || !facts.Moves.IsEmpty
        || !facts.Outcomes.IsEmpty
        || facts.LookedOver.Length > facts.Rest.SelectMany(r => r.Latest).Distinct().Count()
        || !facts.Supplies.IsEmpty
        || !facts.Cautions.IsEmpty
        || facts.Wounds.Any(w => !w.Care.IsEmpty)
        || facts.Limbs.Any(l => l.Events.Length > 1)
        || facts.Signs.Any(s => s.All.Length > s.Latest.Length)
        || facts.Signs.Any(s => s.Kind.Field is "gcs" or "pain" && !s.All.IsEmpty)
        || facts.Limbs.Any(l => !l.DistalPulse.IsEmpty)
        || facts.Person.Medicines is { IsEmpty: false }
        || !facts.Person.Histories.IsEmpty;

    private static bool Sure(ImmutableArray<Stated> last) => last is [{ Disputed: false }];

    private static bool Lost(MessageFact.Wound wound) => wound.Nature is WoundNature.Amputation or WoundNature.PartialAmputation;

    private static MessageFact.Wound Wound(WoundFact wound)
    {
        var found = wound.Found[0].As<Payload.WoundFound>();
        return new(wound.Name, found.Limb, found.Region, found.Nature, wound.Found[0].When);
    }

    private static MessageFact.Bleeds Bleeds(WoundFact wound) =>
        new(wound.Name, wound.LastLook[0].As<Payload.BleedingChecked>().Bleeding, wound.LastLook[0].When);

    /// <summary>The last attempt on a limb, and the last that bled: it shows that the tourniquet is needed.</summary>
    private static IEnumerable<MessageFact> Tried(LimbFact limb)
    {
        var last = limb.Attempts.LastOrDefault();
        var bled = limb.Attempts.LastOrDefault(a => a.Result == AttemptResult.Bled);
        foreach (var attempt in new[] { bled, last }.Distinct())
            if (attempt is not null)
                yield return new MessageFact.Tried(limb.Limb, attempt.Wound, attempt.Result, attempt.Ended ?? attempt.Started);
    }

    /// <summary>The last value of each sign, gathered by look, the newest look first.</summary>
    private static MessageFact.Signs[] Signs(CareFacts facts) =>
        [
            .. facts
                .Signs.Where(s => s.Latest is [{ Of.Disputed: false }])
                .GroupBy(s => s.Latest[0].Of)
                .OrderByDescending(g => g.Key.When.Latest)
                .ThenByDescending(g => g.Key.Id)
                .SelectMany(Look)
                .Where(s => s.Taken != new Payload.SignsTaken()),
        ];

    /// <summary>What decides most first; the rest of the same look as a statement of its own, which may find no room.</summary>
    private static IEnumerable<MessageFact.Signs> Look(IGrouping<Stated, SignFact> look)
    {
        var fields = look.Select(s => s.Kind.Field)
            .ToLookup(f => f is "heartRate" or "breathRate" or "systolic" or "diastolic" or "spo2" or "mental" or "radialPulse");
        foreach (var vital in (bool[])[true, false])
            yield return new(Only(look.Key.As<Payload.SignsTaken>(), [.. fields[vital]]), look.Key.When);
    }

    private static Payload.SignsTaken Only(Payload.SignsTaken s, HashSet<string> fields)
    {
        T? Kept<T>(string field, T? value)
            where T : struct => fields.Contains(field) ? value : null;
        return new()
        {
            HeartRate = Kept("heartRate", s.HeartRate),
            RespiratoryRate = Kept("breathRate", s.RespiratoryRate),
            Systolic = Kept("systolic", s.Systolic),
            Diastolic = Kept("diastolic", s.Diastolic),
            Spo2 = Kept("spo2", s.Spo2),
            OnOxygen = Kept("onOxygen", s.OnOxygen),
            TemperatureC = Kept("temperatureC", s.TemperatureC),
            Mental = Kept("mental", s.Mental),
            RadialPulse = Kept("radialPulse", s.RadialPulse),
            CapillaryRefillS = Kept("capillaryRefillS", s.CapillaryRefillS),
            Dizzy = Kept("dizzy", s.Dizzy),
            Pale = Kept("pale", s.Pale),
            Cool = Kept("cool", s.Cool),
            Clammy = Kept("clammy", s.Clammy),
            NoPressureCuff = s.Systolic is null && s.NoPressureCuff == true ? Kept("systolic", s.NoPressureCuff) : null,
        };
    }

    private static MessageFact.Help Help(Stated stated)
    {
        var help = stated.As<Payload.HelpExpected>();
        return new(help.Likely, help.Earliest, help.Latest, help.Care);
    }

    private static MessageFact.Position Position(Stated stated)
    {
        var at = stated.As<Payload.PositionNoted>();
        return new(Fine(at.Lat), Fine(at.Lon), stated.When);

        static double Fine(double degrees) => Math.Round(degrees, 5);
    }

    /// <summary>What was last seen of the rest of the casualty, gathered by look, the newest look first.</summary>
    private static IEnumerable<MessageFact> Rest(CareFacts facts) =>
        from rest in facts.Rest
        where Sure(rest.Latest)
        group rest.Kind by rest.Latest[0] into look
        orderby look.Key.When.Latest descending, look.Key.Id descending
        let kinds = look.ToArray()
        let seen = look.Key.As<Payload.CasualtyLookedOver>()
        select (MessageFact)
            new MessageFact.Rest(
                new(
                    Kept("bleedingElsewhere", seen, kinds),
                    Kept("trunkWound", seen, kinds),
                    Kept("breathingHard", seen, kinds),
                    Kept("veryCold", seen, kinds),
                    Kept("bloodThinner", seen, kinds)
                ),
                look.Key.When
            );

    private static bool? Kept(string field, Payload.CasualtyLookedOver seen, RestKind[] kinds) =>
        kinds.FirstOrDefault(k => k.Field == field)?.Of(seen);

    private static MessageFact Drug(Stated stated)
    {
        var drug = stated.As<Payload.DrugGiven>();
        return new MessageFact.Drug(drug.Drug, drug.Amount, drug.Unit, drug.Route, stated.When);
    }

    private static IEnumerable<MessageFact> Who(Person person)
    {
        T? Only<T>(ImmutableArray<T> values)
            where T : struct => values is [var one] ? one : null;
        if (!person.Aliases.IsEmpty)
            yield return new MessageFact.Who(
                person.Aliases is [var alias] ? alias : null,
                Only(person.Sexes),
                Only(person.AgesYears),
                Only(person.MassesKg)
            );
    }

    private static IEnumerable<MessageFact> Fluids(CareFacts facts) =>
        facts.Fluids.Any(f => f.Disputed)
            ? []
            : facts
                .Fluids.GroupBy(f => (f.As<Payload.FluidGiven>().Fluid, f.As<Payload.FluidGiven>().Route))
                .Select(g =>
                    (MessageFact)
                        new MessageFact.Given(g.Key.Fluid, g.Sum(f => f.As<Payload.FluidGiven>().Millilitres), g.Key.Route, Span([.. g]))
                )
                .Where(f => FieldRange.Millilitres.Holds(((MessageFact.Given)f).Millilitres));

    /// <summary>From the first to the last.</summary>
    private static Happened Span(ImmutableArray<Stated> all) => new(all.Min(s => s.When.Earliest), all.Max(s => s.When.Latest));
}
