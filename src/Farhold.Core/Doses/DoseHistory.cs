using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Doses;

/// <summary>What was given of one drug, from the record as it counts now: amended, withdrawn and back-dated entries included.</summary>
/// <param name="Unreadable">Entries whose amount is in no unit of mass.</param>
internal sealed record DoseHistory(ImmutableArray<(Happened When, double Mg)> Doses, ImmutableArray<EntryId> Unreadable)
{
    private static readonly Duration Day = Duration.FromHours(24);

    public static DoseHistory Of(Drug drug, State state)
    {
        var doses = ImmutableArray.CreateBuilder<(Happened, double)>();
        var unreadable = ImmutableArray.CreateBuilder<EntryId>();
        foreach (var entry in state.Of(Kind.DrugGiven))
        {
            var given = entry.As<Payload.DrugGiven>();
            if (!drug.Goes(given.Drug))
                continue;
            if (DrugUnit.Milligrams(given.Amount, given.Unit) is { } mg)
                doses.Add((entry.When, mg));
            else
                unreadable.Add(entry.Id);
        }

        return new(doses.ToImmutable(), unreadable.ToImmutable());
    }

    /// <summary>The latest any of them can have been given, up to now; one known only as a range may have been given just now.</summary>
    public Instant? Last(Instant now) =>
        Doses.Where(d => d.When.Earliest <= now).Select(d => (Instant?)Instant.Min(d.When.Latest, now)).Max();

    public double DayMg(Instant now) => Within(now).Sum(d => d.Mg);

    /// <summary>When enough of the last day's doses are a day old for so much to be allowed again.</summary>
    public Instant? Free(double neededMg, double mostMg, Instant now)
    {
        var within = DayMg(now);
        foreach (var dose in Within(now).OrderBy(d => d.When.Latest))
        {
            within -= dose.Mg;
            if (within + neededMg <= mostMg)
                return Instant.Min(dose.When.Latest, now) + Day;
        }

        return null;
    }

    private IEnumerable<(Happened When, double Mg)> Within(Instant now) =>
        Doses.Where(d => d.When.Earliest <= now && d.When.Latest > now - Day);
}
