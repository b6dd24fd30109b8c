using System.Collections.Immutable;

namespace Farhold.Protocols;

/// <summary>How a value is held against an operand.</summary>
public enum Comparison
{
    Above,
    AtLeast,
    Below,
    AtMost,

    /// <summary>One of several words.</summary>
    In,
}

/// <summary>A limit that depends on age: applies from an age (included) up to another (excluded), in years.</summary>
public sealed record AgeBand(double FromYears, double UnderYears, double Limit);

/// <summary>What a criterion asks, as data.</summary>
public abstract record Condition
{
    private Condition() { }

    /// <summary>What it asks about, as often as it does.</summary>
    public IEnumerable<Input> Inputs =>
        this switch
        {
            All all => all.Parts.SelectMany(p => p.Inputs),
            Any any => any.Parts.SelectMany(p => p.Inputs),
            Not not => not.Part.Inputs,
            Compare compare => [compare.Input],
            OneOf oneOf => [oneOf.Input],
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>Whether the answer may differ from limb to limb.</summary>
    public bool AsksOfLimb =>
        this switch
        {
            All all => all.Parts.Any(static p => p.AsksOfLimb),
            Any any => any.Parts.Any(static p => p.AsksOfLimb),
            Not not => not.Part.AsksOfLimb,
            Compare compare => compare.Input.OfLimb,
            OneOf oneOf => oneOf.Input.OfLimb,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    public sealed record All(ImmutableArray<Condition> Parts) : Condition;

    public sealed record Any(ImmutableArray<Condition> Parts) : Condition;

    public sealed record Not(Condition Part) : Condition;

    /// <summary>Holds one input against a number (durations in seconds).</summary>
    /// <param name="Clock">Name of the clock setting the limit was taken from, if it was.</param>
    /// <param name="Bands">Other limits by age; outside all bands <paramref name="Limit"/> applies.</param>
    /// <param name="Measured">
    /// Counts where it was measured: not met where it never was, and where the last value that got too old did not meet it.
    /// </param>
    public sealed record Compare(
        Input Input,
        Comparison Comparison,
        double Limit,
        string? Clock,
        ImmutableArray<AgeBand> Bands,
        bool Measured = false
    ) : Condition;

    /// <summary>Asks whether one input is one of some words (flags are the words true and false).</summary>
    public sealed record OneOf(Input Input, ImmutableSortedSet<string> Words) : Condition
    {
        /// <summary>Told apart letter by letter, whatever language the machine speaks.</summary>
        public ImmutableSortedSet<string> Words { get; } = Words.WithComparer(StringComparer.Ordinal);
    }
}
