namespace Farhold.Tests.Architecture;

/// <summary>The checkout that these tests were built from.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    /// <summary>In the folders of sources, not those of what is built from them.</summary>
    public static IEnumerable<string> Files(string pattern) =>
        Directory
            .GetDirectories(Root)
            .Where(d => Path.GetFileName(d) is var name && name != "artifacts" && !name.StartsWith('.'))
            .SelectMany(d => Directory.GetFiles(d, pattern, SearchOption.AllDirectories))
            .Where(f => !f.Contains("node_modules", StringComparison.Ordinal));

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Farhold.slnx")))
            folder = folder.Parent ?? throw new DirectoryNotFoundException("Farhold.slnx is in no folder above the tests.");
        return folder.FullName;
    }
}
