using System.Diagnostics;
using System.Text;

namespace Farhold.Cli.Tests;

/// <summary>What a run of the built program came to.</summary>
public sealed record Ran(int ExitCode, string Output, string Errors);

/// <summary>Runs the built program from outside, as a script does.</summary>
public static class Run
{
    public static string Demo { get; } = Path.Combine(AppContext.BaseDirectory, "demo", "skarvedal.jsonl");

    private static string Program { get; } =
        Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "farhold.exe" : "farhold");

    /// <summary>Nobody is trusted, whoever runs the tests.</summary>
    private static readonly string Nowhere = Path.Combine(AppContext.BaseDirectory, "no-settings");

    /// <summary>Of the demo.</summary>
    public static string Beside(string name) => Path.Combine(Path.GetDirectoryName(Demo)!, name);

    public static Ran Farhold(params string[] arguments) => Fed([], arguments);

    /// <summary>With a folder of its own for what a user keeps.</summary>
    public static Ran With(string settings, params string[] arguments) => Fed([], settings, arguments);

    /// <summary>With bytes on standard input.</summary>
    public static Ran Fed(byte[] input, params string[] arguments) => Fed(input, Nowhere, arguments);

    private static Ran Fed(byte[] input, string settings, string[] arguments)
    {
        var start = new ProcessStartInfo(Program, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
            Environment = { ["XDG_CONFIG_HOME"] = settings },
        };
        using var process = Process.Start(start)!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        process.StandardInput.BaseStream.Write(input);
        process.StandardInput.Close();
        process.WaitForExit();
        return new(process.ExitCode, output.Result, errors.Result);
    }
}

/// <summary>A directory that goes away with the test.</summary>
public sealed class Scratch : IDisposable
{
    private readonly DirectoryInfo directory = Directory.CreateTempSubdirectory("farhold-");

    public string Path => directory.FullName;

    public string At(string name) => System.IO.Path.Combine(Path, name);

    public string Write(string name, params string[] lines) => Write(name, Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n"));

    public string Write(string name, byte[] bytes)
    {
        File.WriteAllBytes(At(name), bytes);
        return At(name);
    }

    public void Dispose() => directory.Delete(recursive: true);
}
