using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>One thing to look for in the rest of the casualty, and where it was last said.</summary>
/// <param name="Latest">Entries of <see cref="Payload.CasualtyLookedOver"/>. Empty: nobody looked. Several: it is not known which came last.</param>
public sealed record RestFact(RestKind Kind, ImmutableArray<Stated> Latest)
{
    /// <summary>In the order in which they are said.</summary>
    public static readonly ImmutableArray<RestKind> Kinds =
    [
        new("bleedingElsewhere", "bleeding elsewhere", p => p.BleedingElsewhere),
        new("trunkWound", "wound or hard blow of the trunk", p => p.TrunkWound),
        new("breathingHard", "breathing hard", p => p.BreathingHard),
        new("veryCold", "very cold", p => p.VeryCold),
        new("bloodThinner", "blood thinner", p => p.BloodThinner),
    ];

    internal static ImmutableArray<RestFact> Every(Source source) =>
        [.. Kinds.Select(k => new RestFact(k, source.Last(Farhold.Records.Kind.CasualtyLookedOver, p => k.Of((Payload.CasualtyLookedOver)p) is not null)))];

    /// <summary><c>yes</c> or <c>no</c>.</summary>
    public string Said(Stated look) => Kind.Of(look.As<Payload.CasualtyLookedOver>()) == true ? "yes" : "no";
}

/// <param name="Field">Its name in the record.</param>
public sealed record RestKind(string Field, string Name, Func<Payload.CasualtyLookedOver, bool?> Of);
