using System.Diagnostics;
using System.Runtime.Versioning;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests.Supply;

/// <summary>Scripts of others lie in the repository as built; nobody reads them there, so they are built once more.</summary>
[UnsupportedOSPlatform("windows")]
public sealed class VendoredScriptTests : IDisposable
{
    /// <summary>What tools/vendor/build ends with where npm reaches no registry.</summary>
    private const int Unreachable = 75;

    private readonly string built = Directory.CreateTempSubdirectory("farhold-vendor-").FullName;

    public void Dispose() => Directory.Delete(built, true);

    [Fact]
    public async Task Every_vendored_script_is_byte_for_byte_what_its_package_builds_to()
    {
        using var build = Process.Start(
            new ProcessStartInfo(Path.Combine(Published.Root, "tools", "vendor", "build"), [built]) { RedirectStandardError = true }
        )!;
        var said = await build.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await build.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.SkipWhen(build.ExitCode == Unreachable, $"npm can't reach its registry, so the vendored scripts were not compared. {said}");
        Assert.True(build.ExitCode == 0, said);

        var kept = Path.Combine(Published.Root, "src", "Farhold.App", "wwwroot", "lib");
        Assert.Equal(Scripts(built), Scripts(kept));
        Assert.All(Scripts(kept), s => Assert.Equal(File.ReadAllBytes(Path.Combine(built, s)), File.ReadAllBytes(Path.Combine(kept, s))));
    }

    private static string[] Scripts(string folder) =>
        [.. Directory.GetFiles(folder, "*.js", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(folder, f)).Order()];
}
