using System.Diagnostics;
using System.Runtime.Versioning;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests;

/// <summary>What ./run asks of dotnet, told by a stand-in for it: building the app once more would take a minute.</summary>
[UnsupportedOSPlatform("windows")]
public class RunScriptTests
{
    [Fact]
    public async Task Run_hands_the_hub_the_published_folder_in_full_from_wherever_it_is_called()
    {
        var elsewhere = Directory.CreateTempSubdirectory();
        var standIn = Path.Combine(elsewhere.FullName, "dotnet");
        await File.WriteAllTextAsync(standIn, "#!/bin/sh\n[ \"$1\" = run ] && printf '%s\\n' \"$@\"\nexit 0\n", TestContext.Current.CancellationToken);
        File.SetUnixFileMode(standIn, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        var start = new ProcessStartInfo(Path.Combine(Published.Root, "run"), ["--urls", "http://127.0.0.1:1"])
        {
            RedirectStandardOutput = true, WorkingDirectory = elsewhere.FullName,
        };
        start.Environment["PATH"] = elsewhere.FullName + ":" + Environment.GetEnvironmentVariable("PATH");
        using var run = Process.Start(start)!;
        var asked = (await run.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken)).Split('\n');
        await run.WaitForExitAsync(TestContext.Current.CancellationToken);
        elsewhere.Delete(recursive: true);

        Assert.Equal(0, run.ExitCode);
        Assert.Equal(Path.Combine(Published.Root, "artifacts", "publish", "Farhold.App", "release", "wwwroot"), asked[Array.IndexOf(asked, "--app") + 1]);
        Assert.Contains("http://127.0.0.1:1", asked);
    }

    /// <summary>Where nobody can be asked; the stand-in installs nothing.</summary>
    [Fact]
    public async Task Test_names_what_is_missing_before_it_installs_it_and_fails_where_it_can_not()
    {
        var elsewhere = Directory.CreateTempSubdirectory();
        var standIn = Path.Combine(elsewhere.FullName, "apt-get");
        await File.WriteAllTextAsync(standIn, "#!/bin/sh\nexit 1\n", TestContext.Current.CancellationToken);
        File.SetUnixFileMode(standIn, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        var start = new ProcessStartInfo(Path.Combine(Published.Root, "test")) { RedirectStandardOutput = true, RedirectStandardInput = true };
        start.Environment["PATH"] = elsewhere.FullName + ":" + Environment.GetEnvironmentVariable("PATH");
        start.Environment["FARHOLD_CHROMIUM"] = Path.Combine(elsewhere.FullName, "none");
        using var test = Process.Start(start)!;
        test.StandardInput.Close();
        var text = await test.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var said = text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        await test.WaitForExitAsync(TestContext.Current.CancellationToken);
        elsewhere.Delete(recursive: true);

        Assert.Equal(1, test.ExitCode);
        Assert.StartsWith("Missing, and needed by tests: chromium", said[0], StringComparison.Ordinal);
        Assert.Contains("apt-get install --no-install-recommends chromium", said[0], StringComparison.Ordinal);
        Assert.Equal("0 passed, 1 failed", said[^1]);
    }
}
