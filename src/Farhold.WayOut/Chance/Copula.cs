namespace Farhold.WayOut.Chance;

/// <summary>Numbers that rise and fall together through one shared normal factor, every pair alike.</summary>
/// <remarks>Score of each: √rho · shared + √(1 − rho) · own. Spearman and Kendall by the closed forms for a normal pair.</remarks>
public readonly record struct Copula
{
    /// <exception cref="ArgumentOutOfRangeException">Rho is not within 0 and 1.</exception>
    public Copula(double rho)
    {
        if (!(rho is >= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(rho), rho, "A shared factor takes a correlation from 0 to 1.");
        Rho = rho;
    }

    public double Rho { get; }

    public double Shared => Math.Sqrt(Rho);

    public double Own => Math.Sqrt(1 - Rho);

    public double Spearman => 6 / Math.PI * Math.Asin(Rho / 2);

    public double Kendall => 2 / Math.PI * Math.Asin(Rho);

    public double Score(double shared, double own) => (Shared * shared) + (Own * own);
}
