using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Doses;

/// <summary>Whether a drug may be given now, and how much. Pure; the same record, protocol and instant give the same answer.</summary>
/// <remarks>
/// A dose needs a local protocol, verified for now, with a named authority that orders the drug. What is unknown never makes a dose: no mass, no
/// age, no word on allergies, no dose. Where a record can be read in several ways the answer that gives less counts.
/// </remarks>
public static class Dosing
{
    public static DoseAnswer Of(Formulary formulary, Drug drug, CareRecord record, Protocol protocol, Instant now) =>
        Of(formulary, drug, record, Judge.At(record, protocol, now));

    /// <param name="judged">The record by the protocol in force, as of now: judged once for every drug that is asked about.</param>
    public static DoseAnswer Of(Formulary formulary, Drug drug, CareRecord record, Judgement judged)
    {
        var (protocol, now) = (judged.Protocol, judged.At);
        if (protocol.Local is not { Authority: { } authority, Standing: Standing.Verified } local)
            return new DoseAnswer.AskForAdvice("no local protocol in force, signed by a trusted issuer, names who authorises drugs");
        if (!local.Orders.Contains(drug.Id))
            return new DoseAnswer.AskForAdvice($"the local protocol {local.Id} does not order {drug.Id}");
        if (Doubted(judged, record, now))
            return new DoseAnswer.LookFirst(["see what can't be read in the record, or is missing from it"]);
        return record.Readings.Select(state => Of(formulary, drug, state, judged, authority)).MinBy(Boldness)!;
    }

    /// <summary>Least first: never, unknown, later, now.</summary>
    private static (int, double) Boldness(DoseAnswer answer) => answer switch
    {
        DoseAnswer.AskForAdvice => (0, 0),
        DoseAnswer.Not => (1, 0),
        DoseAnswer.LookFirst => (2, 0),
        DoseAnswer.Wait wait => (3, -wait.Until.ToUnixTimeSeconds()),
        DoseAnswer.Give give => (4, give.Mg.High),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static bool Doubted(Judgement judged, CareRecord record, Instant now) =>
        record.Readings.Any(state => !Doubt.Unsettled(judged.Doubts, state, now).IsEmpty);

    private static DoseAnswer Of(Formulary formulary, Drug drug, State state, Judgement judged, Authority authority)
    {
        var now = judged.At;
        var opened = CasualtyProfile.At(state, now);
        var history = DoseHistory.Of(drug, state);
        var (against, unknown) = Against(formulary, drug, state, judged, opened, history);
        if (against.Length > 0)
            return new DoseAnswer.Not(against);
        if (opened?.AgeYears is not { } age)
            return new DoseAnswer.LookFirst([.. unknown, Circumstances.LookForAge(state, now)]);
        if (drug.Regimens.FirstOrDefault(r => age >= r.FromYears && age < r.UnderYears) is not { } regimen)
            return new DoseAnswer.Not([$"there is no dose of {drug.Id} for the age of {Say.Number(age)} years"]);
        if (opened.MassKg is not { } mass)
            return new DoseAnswer.LookFirst([.. unknown, Circumstances.LookForMass(state, now)]);
        if (TooLate(regimen, state, now) is { } late)
            return late;
        if (unknown.Length > 0)
            return new DoseAnswer.LookFirst(unknown);
        return Dose(drug, regimen, mass, history, authority, now);
    }

    private static (ImmutableArray<string> Against, ImmutableArray<string> Unknown) Against(
        Formulary formulary, Drug drug, State state, Judgement judged, Payload.CasualtyOpened? opened, DoseHistory history)
    {
        var against = ImmutableArray.CreateBuilder<string>();
        var unknown = ImmutableArray.CreateBuilder<string>();
        if (opened is null || opened.Allergies.IsDefault)
            unknown.Add("ask about allergies, and enter them, or that there are none");
        else if (opened.Allergies.FirstOrDefault(a => Touches(drug, a)) is { } allergy)
            against.Add($"allergy: {allergy}");
        foreach (var warning in drug.Warnings)
        {
            var holds = Circumstances.Of(warning.Circumstance, state, judged);
            if (holds == Truth.Met)
                against.Add(warning.Text);
            else if (holds == Truth.Unknown)
                unknown.Add(Circumstances.Look(warning.Circumstance));
        }

        against.AddRange(Together(formulary, drug, state, judged.At));
        unknown.AddRange(history.Unreadable.Select(id => $"the amount in entry {id} is in no unit of mass: amend it to mg, g or µg"));
        return (against.ToImmutable(), [.. unknown.Distinct()]);
    }

    /// <summary>Another drug of the same group within a day (design: the longest time any of them is given for).</summary>
    private static IEnumerable<string> Together(Formulary formulary, Drug drug, State state, Instant now) =>
        from entry in state.Of(Kind.DrugGiven)
        where entry.When.Earliest <= now && entry.When.Latest > now - Duration.FromHours(24)
        let other = formulary.Named(entry.As<Payload.DrugGiven>().Drug)
        where other is not null && other != drug && drug.Group is not null && other.Group == drug.Group
        select $"{other.Id} was given, which is not given together with {drug.Id}";

    /// <summary>An allergy that names the drug, one of its other names, or its kin.</summary>
    private static bool Touches(Drug drug, string allergy) => drug.Names.Concat(drug.Kin).Prepend(drug.Id)
        .Any(word => allergy.Contains(word, StringComparison.OrdinalIgnoreCase));

    /// <summary>Injury is taken as the earliest a wound or a tourniquet can have been: the worse side.</summary>
    private static DoseAnswer? TooLate(Regimen regimen, State state, Instant now)
    {
        if (regimen.NotAfter is not { } limit)
            return null;
        var injury = state.Of(Kind.WoundFound).Concat(state.Of(Kind.TourniquetTightened))
            .Select(d => (Instant?)d.When.Earliest).Where(t => t <= now).Min();
        return injury is not { } since ? new DoseAnswer.LookFirst(["enter when the injury happened: a wound or the tourniquet"])
            : now - since >= limit ? new DoseAnswer.Not([$"{Say.Duration(now - since)} since injury; never from {Say.Duration(limit)} on"])
            : null;
    }

    private static DoseAnswer Dose(
        Drug drug, Regimen regimen, double mass, DoseHistory history, Authority authority, Instant now)
    {
        if (regimen.MostDoses is { } most && history.Doses.Count(d => d.When.Earliest <= now) >= most)
            return new DoseAnswer.Not([$"{most} doses are the most, and were given"]);
        if (history.Last(now) is { } last && last + regimen.Every > now)
            return new DoseAnswer.Wait(last + regimen.Every, $"at least {Say.Duration(regimen.Every)} between two doses");
        var dose = regimen.FixedMg ?? new Between(regimen.MgPerKg!.Value.Low * mass, regimen.MgPerKg.Value.High * mass);
        var mostDay = Math.Min(regimen.MostDayMg, (regimen.MostDayMgPerKg ?? double.PositiveInfinity) * mass);
        var high = Math.Min(dose.High, regimen.MostMg);
        var low = Math.Min(dose.Low, high);
        if (low > mostDay)
            return new DoseAnswer.Not([$"a dose would be more than the most in 24 hours, {DrugUnit.Say(mostDay)}"]);
        var given = history.DayMg(now);
        if (given + low > mostDay)
            return history.Free(low, mostDay, now) is { } free
                ? new DoseAnswer.Wait(free, $"{DrugUnit.Say(given)} in the last 24 hours, at most {DrugUnit.Say(mostDay)}")
                : new DoseAnswer.Not([$"at most {DrugUnit.Say(mostDay)} in 24 hours"]);
        high = Math.Min(high, mostDay - given);
        var portions = drug.Forms.Select(f => DoseRounding.Down(f, low, high)).OfType<Portion>().ToImmutableArray();
        return portions.IsEmpty
            ? new DoseAnswer.Not(["none of the forms it comes in can be divided into this dose"])
            : new DoseAnswer.Give(regimen, new(low, high), portions, now + regimen.Every, given, authority, regimen.ByMass ? mass : null);
    }
}
