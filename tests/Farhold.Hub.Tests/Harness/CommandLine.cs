using System.Diagnostics;
using System.Text.Json;

namespace Farhold.Hub.Tests.Harness;

/// <summary>The built command line, asked from outside.</summary>
internal static class CommandLine
{
    public static string Program { get; } =
        Path.Combine(
            Published.Root,
            "artifacts",
            "bin",
            "Farhold.Cli",
            Configuration,
            OperatingSystem.IsWindows() ? "farhold.exe" : "farhold"
        );

    /// <summary>That of these tests: <c>debug</c> or <c>release</c>.</summary>
    private static string Configuration => Path.GetFileName(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory));

    /// <summary>What <c>farhold tell RECORD --json</c> says of this record at this instant.</summary>
    public static async Task<JsonElement> TellAsync(string record, DateTimeOffset at)
    {
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, record);
        var start = new ProcessStartInfo(
            Program,
            [
                "tell",
                file,
                "--json",
                "--at",
                at.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", System.Globalization.CultureInfo.InvariantCulture),
            ]
        )
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var (told, refused) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync();
        File.Delete(file);
        Assert.True(process.ExitCode == 0, await refused);
        using var json = JsonDocument.Parse(await told);
        return json.RootElement.Clone();
    }

    /// <summary>The verdict word of a limb as the app heads it.</summary>
    public static string Head(JsonElement limb) =>
        limb.GetProperty("verdict").GetString() switch
        {
            "leave-on" => "Leave it on",
            "await-help" => "Wait for help",
            "check-first" => "Check first",
            "attempt" => "Make an attempt",
            var other => throw new InvalidOperationException(other),
        };
}
