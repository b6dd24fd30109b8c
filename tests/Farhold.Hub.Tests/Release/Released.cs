using System.Diagnostics;
using System.Text;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests.Release;

/// <summary>What <c>./release</c> makes. FARHOLD_RELEASE names it; without, it is made once, of the app that all tests use.</summary>
internal static class Released
{
    private static readonly Lazy<string> Once = new(Make);

    public static string Folder => Once.Value;

    public static string Archive(string start) => Assert.Single(Directory.GetFiles(Folder, $"{start}-{Product.Version}*.tar.gz"));

    /// <summary>Unpacks an archive into a new folder; the one folder that is in it.</summary>
    public static string Unpack(string start, string into)
    {
        var ran = Run("tar", into, ["-xzf", Archive(start), "-C", into]);
        Assert.True(ran.ExitCode == 0, ran.Errors);
        return Assert.Single(Directory.GetDirectories(into));
    }

    /// <summary>With nothing of this user's: neither settings nor an installed runtime, unless the caller names it.</summary>
    public static ProcessStartInfo Bare(string program, string home, IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            WorkingDirectory = home,
        };
        start.Environment.Clear();
        start.Environment["HOME"] = home;
        start.Environment["PATH"] = "/usr/bin:/bin";
        return start;
    }

    public static (int ExitCode, string Output, string Errors) Run(string program, string home, string[] arguments, string? runtime = null)
    {
        var start = Bare(program, home, arguments);
        if (runtime is not null)
            start.Environment["DOTNET_ROOT"] = runtime;
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, errors.Result);
    }

    private static string Make()
    {
        if (Environment.GetEnvironmentVariable("FARHOLD_RELEASE") is { Length: > 0 } named)
            return Path.GetFullPath(named);
        using var release = Process.Start(
            new ProcessStartInfo(Path.Combine(Published.Root, "release"), ["--app", Published.Folder]) { RedirectStandardOutput = true }
        )!;
        var said = release.StandardOutput.ReadToEnd();
        release.WaitForExit();
        Assert.True(release.ExitCode == 0, said);
        return Path.Combine(Published.Root, "artifacts", "release");
    }
}
