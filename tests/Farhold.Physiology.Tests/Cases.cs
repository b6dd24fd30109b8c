namespace Farhold.Physiology.Tests;

/// <summary>How many cases a law gets: <c>FARHOLD_CASES</c> is a percentage.</summary>
internal static class Cases
{
    public static int Of(int usual) =>
        Math.Max(1, usual * (int.TryParse(Environment.GetEnvironmentVariable("FARHOLD_CASES"), out var percent) ? percent : 100) / 100);
}
