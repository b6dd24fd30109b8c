using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Drugs;

/// <summary>All of one drug, whatever name of the formulary it went by.</summary>
/// <param name="Drug">As it was first written.</param>
/// <param name="Unit">As written where all are in one; masses in different units are added in mg; other units are never added.</param>
public sealed record DrugSum(string Drug, string Unit, GivenSum Amount)
{
    /// <summary>In the order in which they were first given.</summary>
    public static ImmutableArray<DrugSum> All(CareRecord record, Formulary formulary, Instant now)
    {
        var given = record
            .Readings.SelectMany(r => r.Of(Kind.DrugGiven))
            .Where(d => d.When.Earliest <= now)
            .OrderBy(d => d.When.Latest)
            .ThenBy(d => d.When.Earliest)
            .ThenBy(d => d.Id)
            .Select(d => d.As<Payload.DrugGiven>());
        return [.. given.GroupBy(g => Key(g, formulary)).Select(g => Of(g.Key, [.. g], record, formulary, now))];
    }

    private static DrugSum Of((string, string) key, Payload.DrugGiven[] given, CareRecord record, Formulary formulary, Instant now)
    {
        var one = given.All(g => g.Unit.Trim() == given[0].Unit.Trim());
        return new(
            given[0].Drug,
            one ? given[0].Unit : "mg",
            GivenSum.Of(
                Kind.DrugGiven,
                record,
                now,
                p =>
                    p is Payload.DrugGiven g && Key(g, formulary) == key
                        ? one
                            ? g.Amount
                            : DrugUnit.Milligrams(g.Amount, g.Unit)
                        : null
            )
        );
    }

    private static (string, string) Key(Payload.DrugGiven d, Formulary formulary) =>
        (formulary.Named(d.Drug)?.Id ?? d.Drug.Trim().ToUpperInvariant(), DrugUnit.Milligrams(1, d.Unit) is null ? d.Unit.Trim() : "mg");
}
