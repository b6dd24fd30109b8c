namespace Farhold.WayOut.Pace;

/// <summary>A stretch of ground as measured on a map or track: horizontal kilometres, metres climbed and metres lost.</summary>
public readonly record struct Stretch
{
    /// <exception cref="ArgumentOutOfRangeException">A figure is negative or not finite.</exception>
    public Stretch(double distanceKm, double ascentM = 0, double descentM = 0)
    {
        DistanceKm = Checked(distanceKm, nameof(distanceKm));
        AscentM = Checked(ascentM, nameof(ascentM));
        DescentM = Checked(descentM, nameof(descentM));
    }

    public double DistanceKm { get; }

    public double AscentM { get; }

    public double DescentM { get; }

    /// <summary>The climbing part, when ground and height are shared out at one mean gradient; level ground counts as rising.</summary>
    /// <remarks>A choice made here for rules that want one slope; flat parts between steep ones are smoothed away.</remarks>
    public Stretch Rising => new(Math.Max(0, DistanceKm - FallingKm), AscentM);

    /// <summary>The descending part, see <see cref="Rising"/>.</summary>
    public Stretch Falling => new(FallingKm, 0, DescentM);

    /// <summary>Rise over run of a stretch that only rises or only falls; 0 without distance.</summary>
    internal double Slope => DistanceKm > 0 ? (AscentM - DescentM) / (1000 * DistanceKm) : 0;

    /// <summary>Without the two parts, each of which has two parts of its own.</summary>
    public override string ToString() => FormattableString.Invariant($"{DistanceKm} {AscentM} {DescentM}");

    private double FallingKm => DescentM > 0 ? DistanceKm * DescentM / (AscentM + DescentM) : 0;

    private static double Checked(double value, string name) =>
        double.IsFinite(value) && value >= 0
            ? value
            : throw new ArgumentOutOfRangeException(name, value, "A stretch is measured in finite figures from 0.");
}
