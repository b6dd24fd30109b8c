using Farhold.WayOut.Chance;

namespace Farhold.Study.Chance;

/// <summary>How far a figure can be leaned on.</summary>
public enum Mark
{
    /// <summary>Seen in an abstract, table or page of the source.</summary>
    Read,

    /// <summary>From memory, not looked up again.</summary>
    Memory,

    /// <summary>This project's own judgement.</summary>
    Design,
}

/// <summary>What is held of one number: its law, and where that comes from. A closed family.</summary>
public abstract record Figure
{
    private Figure() { }

    public Mark Mark { get; init; } = Mark.Design;

    public string Source { get; init; } = "";

    /// <summary>Not drawn: one value.</summary>
    public bool IsFixed => this is Fixed;

    public abstract double Mean { get; }

    /// <summary>The value that a share <paramref name="p"/> of draws stays below.</summary>
    /// <param name="p">Between 0 and 1, never either.</param>
    public abstract double Quantile(double p);

    public sealed record Fixed(double Value) : Figure
    {
        public override double Mean => Value;

        public override double Quantile(double p) => Value;
    }

    public sealed record Uniform(double Low, double High) : Figure
    {
        public override double Mean => (Low + High) / 2;

        public override double Quantile(double p) => Low + (p * (High - Low));
    }

    /// <param name="A">At least 0.5, as <see cref="BetaLaw"/> takes it.</param>
    /// <param name="B">The same.</param>
    public sealed record Beta(double A, double B) : Figure
    {
        public override double Mean => A / (A + B);

        public override double Quantile(double p) => BetaLaw.Quantile(p, A, B);
    }

    /// <param name="Sigma">Standard deviation of the logarithm.</param>
    public sealed record LogNormal(double Median, double Sigma) : Figure
    {
        public override double Mean => Median * Math.Exp(Sigma * Sigma / 2);

        public override double Quantile(double p) => Median * Math.Exp(Sigma * NormalLaw.Quantile(p));
    }
}
