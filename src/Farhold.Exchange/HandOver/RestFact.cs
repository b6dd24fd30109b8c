using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>One thing to look for in the rest of the casualty, and where it was last said.</summary>
/// <param name="Latest">Entries of <see cref="Payload.CasualtyLookedOver"/>. Empty: nobody looked. Several: it is not known which came
/// last.</param>
public sealed record RestFact(RestKind Kind, ImmutableArray<Stated> Latest)
{
    /// <summary>In the order in which they are said.</summary>
    public static readonly ImmutableArray<RestKind> Kinds =
    [
        new("bleedingElsewhere", () => HandOverTexts.BleedingElsewhere, p => p.BleedingElsewhere),
        new("trunkWound", () => HandOverTexts.TrunkWound, p => p.TrunkWound),
        new("breathingHard", () => HandOverTexts.BreathingHard, p => p.BreathingHard),
        new("veryCold", () => HandOverTexts.VeryCold, p => p.VeryCold),
        new("bloodThinner", () => HandOverTexts.BloodThinner, p => p.BloodThinner),
    ];

    internal static ImmutableArray<RestFact> Every(Source source) =>
        [
            .. Kinds.Select(k => new RestFact(
                k,
                source.Last(Farhold.Records.Kind.CasualtyLookedOver, p => k.Of((Payload.CasualtyLookedOver)p) is not null)
            )),
        ];

    /// <summary>Seen, by one at least of what may be the last looks.</summary>
    public bool Yes => Latest.Any(l => Kind.Of(l.As<Payload.CasualtyLookedOver>()) == true);

    /// <summary><c>yes</c> or <c>no</c>.</summary>
    public string Said(Stated look) => Kind.Of(look.As<Payload.CasualtyLookedOver>()) == true ? HandOverTexts.Yes : HandOverTexts.No;
}

/// <param name="Field">Its name in the record.</param>
/// <param name="Named">See <see cref="Name"/>.</param>
public sealed record RestKind(string Field, Func<string> Named, Func<Payload.CasualtyLookedOver, bool?> Of)
{
    /// <summary>In words.</summary>
    public string Name => Named();
}
