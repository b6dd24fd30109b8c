namespace Farhold.Tests.WayOut;

public class SumTests
{
    internal static bool Simulated(CheckRow row) => row["check"].StartsWith("sum_", StringComparison.Ordinal)
        && row["check"] != "sum_normal_correlated" || row["check"] == "daylight_gate";
}
