namespace Farhold.WayOut.Pace;

/// <summary>Walking in snow by how deep the boot sinks.</summary>
/// <remarks>
/// Source: cubic read in the abstract "Terrain Coefficients for Predicting Energy Costs of Walking over Snow" (ERDC); speed at equal
/// effort computed from it. The floor of a quarter is an assumption: the cubic grows without end.
/// </remarks>
public static class Snow
{
    public const double SlowestFactor = 0.25;

    public static double EnergyCoefficient(double sinkageCm) =>
        (((((0.0005 * sinkageCm) + 0.0001) * sinkageCm) + 0.1072) * sinkageCm) + 1.2604;

    public static double SpeedFactor(double sinkageCm) =>
        sinkageCm <= 0 ? 1 : Math.Max(SlowestFactor, Effort.SpeedFactor(EnergyCoefficient(sinkageCm)));
}
