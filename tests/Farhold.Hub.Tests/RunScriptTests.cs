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
        await File.WriteAllTextAsync(
            standIn,
            "#!/bin/sh\n[ \"$1\" = run ] && printf '%s\\n' \"$@\"\nexit 0\n",
            TestContext.Current.CancellationToken
        );
        File.SetUnixFileMode(standIn, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        var start = new ProcessStartInfo(Path.Combine(Published.Root, "run"), ["--urls", "http://127.0.0.1:1"])
        {
            RedirectStandardOutput = true,
            WorkingDirectory = elsewhere.FullName,
        };
        start.Environment["PATH"] = elsewhere.FullName + ":" + Environment.GetEnvironmentVariable("PATH");
        using var run = Process.Start(start)!;
        var asked = (await run.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken)).Split('\n');
        await run.WaitForExitAsync(TestContext.Current.CancellationToken);
        elsewhere.Delete(recursive: true);

        Assert.Equal(0, run.ExitCode);
        Assert.Equal(
            Path.Combine(Published.Root, "artifacts", "publish", "Farhold.App", "release", "wwwroot"),
            asked[Array.IndexOf(asked, "--app") + 1]
        );
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
        var start = new ProcessStartInfo(Path.Combine(Published.Root, "test"))
        {
            RedirectStandardOutput = true,
            RedirectStandardInput = true,
        };
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

    private const string Green = "echo 'passed A.B.c (1s 002ms)'; echo '  succeeded: 1'; echo '  failed: 0'";

    private const string Unsaid = "failed Farhold.Tests: it ended without saying which test";

    /// <summary>
    /// Of <c>./test fast</c>, with a stand-in for dotnet: what one project says and how it ends, while each other has one green test.
    /// </summary>
    [Theory]
    [InlineData(Green, 1, 0, "    1.0 s  A.B.c")]
    [InlineData("echo 'failed A.B.d (2m 3s)'; echo '  succeeded: 1'; echo '  failed: 1'; exit 2", 1, 1, "failed A.B.d (2m 3s)")]
    [InlineData("kill -9 $$", 0, 1, Unsaid)]
    [InlineData(Green + "; exit 134", 1, 1, Unsaid)]
    [InlineData("echo 'passed A.B.c (1s)'", 0, 1, Unsaid)]
    [InlineData("echo '  succeeded: 0'; echo '  failed: 0'", 0, 1, Unsaid)]
    public async Task Test_is_green_only_where_every_project_says_so(string says, int passed, int failed, string before)
    {
        var others = Directory.GetDirectories(Path.Combine(Published.Root, "tests"), "*.Tests").Length - 2; // nor the browser's
        var elsewhere = Directory.CreateTempSubdirectory();
        var standIn = Path.Combine(elsewhere.FullName, "dotnet");
        var script = $"#!/bin/sh\n[ \"$1\" = test ] || exit 0\nif [ \"$3\" = tests/Farhold.Tests ]; then {says}\nelse {Green}\nfi\n";
        await File.WriteAllTextAsync(standIn, script, TestContext.Current.CancellationToken);
        File.SetUnixFileMode(standIn, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        var start = new ProcessStartInfo(Path.Combine(Published.Root, "test"), ["fast"])
        {
            RedirectStandardOutput = true,
            RedirectStandardInput = true,
        };
        start.Environment["PATH"] = elsewhere.FullName + ":" + Environment.GetEnvironmentVariable("PATH");
        start.Environment["FARHOLD_TEST_LOGS"] = Path.Combine(elsewhere.FullName, "logs");
        using var test = Process.Start(start)!;
        test.StandardInput.Close();
        var said = (await test.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken)).Split(
            '\n',
            StringSplitOptions.RemoveEmptyEntries
        );
        await test.WaitForExitAsync(TestContext.Current.CancellationToken);
        elsewhere.Delete(recursive: true);

        Assert.Equal($"{others + passed} passed, {failed} failed", said[^1]);
        Assert.Equal(before, said[^2]);
        Assert.Equal(failed == 0 ? 0 : 1, test.ExitCode);
    }
}
