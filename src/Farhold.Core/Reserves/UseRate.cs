using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Reserves;

/// <summary>Who is there and what the day is like, as far as use goes.</summary>
/// <param name="People">Of the party, the casualty included; at least 1.</param>
/// <param name="Heat">Null where nobody said.</param>
public sealed record Surroundings(int People, Heat? Heat = null, Work Work = Work.Rest, double WorkHours = WaterNeed.UsualWorkHours)
{
    public int People { get; } =
        People is >= 1 and <= 200 ? People : throw new ArgumentOutOfRangeException(nameof(People), People, "A party is 1 to 200 people.");
}

/// <summary>Pieces of an item used an hour.</summary>
/// <param name="Past">By what was used up to now.</param>
/// <param name="Planned">By what is foreseen, the coming tasks of the care plan among it; null where nothing is.</param>
public sealed record UseRate(Between Past, Between? Planned)
{
    /// <summary>Use before this is not looked back at.</summary>
    private static readonly Duration LongestPast = Duration.FromHours(24);

    /// <summary>What the first minutes took is not spread over less: nobody packs a wound every ten minutes for hours.</summary>
    private static readonly Duration ShortestPast = Duration.FromHours(6);

    /// <summary>
    /// What was used before raises what is foreseen, and never lowers it: who drank too little will not go on so. The least is
    /// raised within what is foreseen only, as the worst hours may be over. Null where neither says anything.
    /// </summary>
    public Between? PerHour =>
        Planned is { } planned ? new(Math.Clamp(Past.Low, planned.Low, planned.High), Math.Max(Past.High, planned.High))
        : Past.High > 0 ? Past
        : null;

    /// <remarks>
    /// The spans looked back over are design. They hang on when care began, never on the uses: one more can't thin out the others.
    /// </remarks>
    /// <param name="plans">The care plan by each reading of the record, in their order.</param>
    internal static UseRate Of(
        KitItem item,
        CareRecord record,
        ImmutableArray<ImmutableArray<PlannedTask>> plans,
        Surroundings around,
        Instant now
    )
    {
        Between? past = null;
        Between? planned = null;
        foreach (var (state, plan) in record.Readings.Zip(plans))
        {
            var opened = state.Of(Kind.CasualtyOpened).Where(o => o.When.Earliest <= now).Select(o => (Instant?)o.When.Latest).Min();
            var over = Duration.Min(LongestPast, Duration.Max(ShortestPast, now - (opened ?? now)));
            var used = ItemUses.Within(item, state, Happened.At(now - over), now);
            var hours = over.TotalHours;
            past = Hull(past, new(used.Low / hours, used.High / hours));
            if (Foreseen(item, state, plan, around, now) is { } foreseen)
                planned = Hull(planned, foreseen);
        }

        return new(past ?? default, planned);
    }

    private static Between Hull(Between? all, Between next) => all is { } known ? Between.Hull(known, next) : next;

    private static Between? Foreseen(KitItem item, State state, ImmutableArray<PlannedTask> plan, Surroundings around, Instant now)
    {
        var tasks = TaskUses.PerHour(item, plan);
        if (item.Water)
        {
            var person = CasualtyProfile.At(state, now);
            var need = WaterNeed.Casualty(person?.AgeYears, person?.MassKg, around.Heat);
            var casualty = new Between(need.Low, Math.Max(need.High, tasks?.High ?? 0)); // what is offered is part of the need
            return casualty + Times(WaterNeed.MlPerHour(around.Heat, around.Work, around.WorkHours), around.People - 1);
        }

        var beside = item.Planned is { } planned
            ? Times(planned.Each, (planned.Per == UsedPer.Person ? around.People : 1) / planned.Every.TotalHours)
            : (Between?)null;
        return (beside, tasks) is ({ } some, { } more) ? some + more : beside ?? tasks;
    }

    private static Between Times(Between range, double factor) => new(range.Low * factor, range.High * factor);
}
