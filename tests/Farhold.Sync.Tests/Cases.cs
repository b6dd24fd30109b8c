namespace Farhold.Sync.Tests;

/// <summary>How many cases a law gets: <c>FARHOLD_CASES</c> is a percentage.</summary>
internal static class Cases
{
    public static int Of(int usual) => Scaled(usual, 100);

    /// <summary>The same for a law that takes long: a quarter of them where nothing is said.</summary>
    public static int Long(int usual) => Scaled(usual, 25);

    private static int Scaled(int usual, int unsaid) =>
        Math.Max(1, usual * (int.TryParse(Environment.GetEnvironmentVariable("FARHOLD_CASES"), out var percent) ? percent : unsaid) / 100);
}
