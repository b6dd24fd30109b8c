using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Doses;

/// <summary>Whether a drug may be given now, and how much. Pure; the same record, protocol and instant give the same answer.</summary>
/// <remarks>
/// A dose needs a local protocol, verified for now, with a named authority that orders the drug. What is unknown never makes a dose: no
/// mass, no
/// age, no word on allergies, no dose. Where a record can be read in several ways the answer that gives less counts.
/// </remarks>
public static class Dosing
{
    public static DoseAnswer Of(Drug drug, CareRecord record, Rulebook rules, Instant now) =>
        Of(drug, record, Judge.At(record, rules, now));

    /// <param name="judged">The record by the rules in force, as of now: judged once for every drug that is asked about.</param>
    public static DoseAnswer Of(Drug drug, CareRecord record, Judgement judged) => Of([drug], record, judged)[0].Answer;

    /// <summary>The same of several drugs, in their order.</summary>
    public static ImmutableArray<(Drug Drug, DoseAnswer Answer)> Of(IEnumerable<Drug> drugs, CareRecord record, Judgement judged)
    {
        var (protocol, now) = (judged.Protocol, judged.At);
        var doubted = record.Readings.Any(state => !Doubt.Unsettled(judged.Doubts, state, now).IsEmpty);
        var readings = record
            .Readings.Select(state => new CasualtyView(state, judged.Rules, now, []))
            .Select(view => (view.State, Screening: new DrugScreening(view)))
            .ToArray();
        return [.. drugs.Select(drug => (drug, Of(drug)))];

        DoseAnswer Of(Drug drug)
        {
            if (protocol.Local is not { Authority: { } authority, Standing: Standing.Verified } local)
                return new DoseAnswer.AskForAdvice(DoseTexts.NobodyAuthorises);
            if (!local.Orders.Contains(drug.Id))
                return new DoseAnswer.AskForAdvice(DoseTexts.NotOrdered(local.Id, drug.Id));
            return doubted
                ? new DoseAnswer.LookFirst([DoseTexts.RecordUnreadable])
                : readings.Select(r => Dosing.Of(drug, r.State, r.Screening.Of(drug), authority, now)).MinBy(Boldness)!;
        }
    }

    /// <summary>Least first: never, on advice, unknown, later, now.</summary>
    private static (int, double) Boldness(DoseAnswer answer) =>
        answer switch
        {
            DoseAnswer.Not => (0, 0),
            DoseAnswer.AskForAdvice => (1, 0),
            DoseAnswer.LookFirst => (2, 0),
            DoseAnswer.Wait wait => (3, -wait.Until.ToUnixTimeSeconds()),
            DoseAnswer.Give give => (4, give.Mg.High),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static DoseAnswer Of(Drug drug, State state, DrugScreen screen, Authority authority, Instant now)
    {
        var opened = CasualtyProfile.At(state, now);
        var history = DoseHistory.Of(drug, state);
        if (screen.Against.Length > 0)
            return new DoseAnswer.Not(screen.Against);
        var (age, mass) = (opened?.AgeYears, opened?.MassKg);
        if (drug.Window is { } window && TooLate(window, state, now) is { } late)
            return late;
        if (screen.OnAdvice.Length > 0)
            return new DoseAnswer.AskForAdvice(string.Join("; ", screen.OnAdvice));
        if (age is { } years && !drug.Regimens.Any(r => r.FitsAge(years)))
            return new DoseAnswer.Not([DoseTexts.NoDoseForAge(drug.Id, Say.Number(years))]);
        string[] unknown = [.. screen.Unknown, .. history.Unreadable.Select(id => DoseTexts.AmountNoMass(id.ToString()))];
        if (age is null)
            return new DoseAnswer.LookFirst([.. unknown.Append(Circumstances.LookForAge(state, now)).Distinct()]);
        if (mass is null)
            return new DoseAnswer.LookFirst([.. unknown.Append(Circumstances.LookForMass(state, now)).Distinct()]);
        if (unknown.Length > 0)
            return new DoseAnswer.LookFirst([.. unknown.Distinct()]);
        return drug.Regimens.FirstOrDefault(r => r.Fits(age.Value, mass.Value)) is { } regimen
            ? Reasoned(Dose(drug, regimen, mass.Value, history, authority, now), screen)
            : new DoseAnswer.Not([DoseTexts.NoDoseForMass(drug.Id, BodyMass.InBothUnits(mass.Value))]);
    }

    private static DoseAnswer Reasoned(DoseAnswer answer, DrugScreen screen) =>
        answer is DoseAnswer.Give give ? give with { For = screen.For, Cautions = screen.Cautions } : answer;

    /// <summary>Injury is taken as the earliest that it, a wound or a tourniquet can have been: the worse side.</summary>
    private static DoseAnswer? TooLate(Duration limit, State state, Instant now)
    {
        return WoundFacts.EarliestInjury(state, now) is not { } since ? new DoseAnswer.LookFirst([DoseTexts.EnterInjury])
            : now - since >= limit ? new DoseAnswer.Not([DoseTexts.TooLate(Say.Duration(now - since), Say.Duration(limit))])
            : null;
    }

    private static DoseAnswer Dose(Drug drug, Regimen regimen, double mass, DoseHistory history, Authority authority, Instant now)
    {
        if (regimen.MostDoses is { } most && history.Doses.Count(d => d.When.Earliest <= now) >= most)
            return new DoseAnswer.Not([regimen.Once ? DoseTexts.GivenOnce : DoseTexts.MostDoses(most)]);
        if (history.Last(now) is { } last && last + regimen.Every > now)
            return new DoseAnswer.Wait(last + regimen.Every, DoseTexts.Apart(Say.Duration(regimen.Every)));
        var dose = regimen.FixedMg ?? new Between(regimen.MgPerKg!.Value.Low * mass, regimen.MgPerKg.Value.High * mass);
        var mostDay = Math.Min(regimen.MostDayMg, (regimen.MostDayMgPerKg ?? double.PositiveInfinity) * mass);
        var high = Math.Min(dose.High, Math.Min(regimen.MostMg, regimen.MostMgPerKg?.High * mass ?? double.PositiveInfinity));
        var low = Math.Min(Math.Min(dose.Low, regimen.MostMgPerKg?.Low * mass ?? double.PositiveInfinity), high);
        if (low > mostDay)
            return new DoseAnswer.Not([DoseTexts.MoreThanDay(DrugUnit.Say(mostDay))]);
        var given = history.DayMg(now);
        if (given + low > mostDay)
            return history.Free(low, mostDay, now) is { } free
                ? new DoseAnswer.Wait(free, DoseTexts.InDay(DrugUnit.Say(given), DrugUnit.Say(mostDay)))
                : new DoseAnswer.Not([DoseTexts.AtMostInDay(DrugUnit.Say(mostDay))]);
        high = Math.Min(high, mostDay - given);
        var portions = drug.Forms.Select(f => DoseRounding.Down(f, low, high)).OfType<Portion>().ToImmutableArray();
        return portions.IsEmpty
            ? new DoseAnswer.Not([DoseTexts.NoFormFits])
            : new DoseAnswer.Give(regimen, new(low, high), portions, now + regimen.Every, given, authority, regimen.ByMass ? mass : null)
            {
                ThenMgPerHour = regimen.Then?.MgPerKgHour * mass,
            };
    }
}
