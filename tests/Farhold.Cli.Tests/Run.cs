using System.Diagnostics;
using System.Text;

namespace Farhold.Cli.Tests;

/// <summary>What a run of the built program came to.</summary>
public sealed record Ran(int ExitCode, string Output, string Errors);

/// <summary>Runs the built program from outside, as a script does.</summary>
public static class Run
{
    public static string Demo { get; } = Path.Combine(AppContext.BaseDirectory, "demo", "skarvedal.jsonl");

    private static string Program { get; } = Path.Combine(
        AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "farhold.exe" : "farhold");

    public static Ran Farhold(params string[] arguments) => Fed([], arguments);

    /// <summary>With bytes on standard input.</summary>
    public static Ran Fed(byte[] input, params string[] arguments)
    {
        var start = new ProcessStartInfo(Program, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
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
