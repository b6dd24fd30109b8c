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
}
