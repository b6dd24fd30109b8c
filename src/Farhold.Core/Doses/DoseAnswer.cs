using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Doses;

/// <summary>What may be said of giving a drug now. A closed family.</summary>
public abstract record DoseAnswer
{
    private DoseAnswer() { }

    /// <summary>Nobody with a name orders it, or the order is not enough for this casualty: no dose is shown.</summary>
    public sealed record AskForAdvice(string Why) : DoseAnswer;

    /// <summary>It must not be given.</summary>
    public sealed record Not(ImmutableArray<string> Because) : DoseAnswer;

    /// <summary>Something it hangs on is not known.</summary>
    public sealed record LookFirst(ImmutableArray<string> What) : DoseAnswer;

    /// <summary>Not yet: not before an instant.</summary>
    public sealed record Wait(Instant Until, string Why) : DoseAnswer;

    /// <summary>It may be given.</summary>
    /// <param name="Mg">The dose, mg: the lower end first.</param>
    /// <param name="Portions">What that is in each form it comes in, rounded down to what can be measured.</param>
    /// <param name="NotBefore">When the next one may be given at the earliest, if this one is given now.</param>
    /// <param name="GivenDayMg">In the last 24 hours, as much as may have been given, mg.</param>
    /// <param name="ByMassKg">The mass that the dose or the most in a day hangs on; null where they are the same for any mass.</param>
    public sealed record Give(
        Regimen Regimen,
        Between Mg,
        ImmutableArray<Portion> Portions,
        Instant NotBefore,
        double GivenDayMg,
        Authority By,
        double? ByMassKg
    ) : DoseAnswer
    {
        /// <summary>What it is for.</summary>
        public ImmutableArray<string> For { get; init; } = [];

        /// <summary>What to mind.</summary>
        public ImmutableArray<string> Cautions { get; init; } = [];

        /// <summary>Of the drip that follows, where one does.</summary>
        public double? ThenMgPerHour { get; init; }
    }
}

/// <summary>A dose in one form.</summary>
/// <param name="Mg">What it comes to after rounding down.</param>
/// <param name="Pieces">Of tablets; null for a solution.</param>
/// <param name="Millilitres">Of a solution; null for tablets.</param>
public sealed record Portion(DrugForm Form, double Mg, double? Pieces, double? Millilitres);
