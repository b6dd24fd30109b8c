using System.Diagnostics;
using Farhold.Tests.Architecture;

namespace Farhold.Hub.Tests.Harness;

/// <summary>The published app, as phones get it. FARHOLD_APP names it; without, it is published once.</summary>
internal static class Published
{
    private static readonly Lazy<string> Once = new(Find);

    public static string Folder => Once.Value;

    public static string Root => Repository.Root;

    /// <summary>A folder that passes for the app where only the hub is looked at: nothing has to be published for it.</summary>
    public static string PageOnly()
    {
        var folder = Directory.CreateTempSubdirectory("farhold-page-").FullName;
        File.WriteAllText(Path.Combine(folder, "index.html"), "<!DOCTYPE html><title>Farhold</title>");
        return folder;
    }

    /// <summary>A copy that a test may change.</summary>
    public static string Copy()
    {
        var copy = Directory.CreateTempSubdirectory("farhold-app-").FullName;
        foreach (var file in Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(copy, Path.GetRelativePath(Folder, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
        return copy;
    }

    private static string Find()
    {
        if (Environment.GetEnvironmentVariable("FARHOLD_APP") is { Length: > 0 } named)
            return Path.GetFullPath(named);
        using var publish = Process.Start(
            new ProcessStartInfo("dotnet", "publish src/Farhold.App -c Release --tl:off -v quiet") { WorkingDirectory = Root }
        )!;
        publish.WaitForExit();
        Assert.Equal(0, publish.ExitCode);
        return Path.Combine(Root, "artifacts/publish/Farhold.App/release/wwwroot");
    }
}
