using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;

namespace Farhold.Hub;

/// <summary>The port at which this user's browser finds the app again. Drawn once, then kept in <paramref name="file"/>.</summary>
/// <remarks>
/// Records belong to an origin, and an origin includes the port. A port that others guess or share would share the records with
/// whatever is served there, and another port than last time would hide them: so it is random, kept, and never silently changed.
/// </remarks>
internal sealed class LocalPort(string file, Func<int, bool> isFree)
{
    // Below the ports that systems hand out for a moment (from 32,768 on Linux, 49,152 elsewhere), or it would be taken now and then.
    private const int From = 20_000,
        Below = 32_000,
        Tries = 50;

    public static LocalPort OfThisUser(Func<string, string?> environment) => new(FileOf(environment), IsFree);

    public static string Address(int port) => string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}");

    public static int? Parse(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var port) && port is > 0 and <= IPEndPoint.MaxPort
            ? port
            : null;

    /// <summary>By the XDG base directory specification; relative folders are ignored, as it says.</summary>
    public static string FileOf(Func<string, string?> environment) =>
        Path.Combine(
            environment("XDG_CONFIG_HOME") is { Length: > 0 } named && Path.IsPathRooted(named)
                ? named
                : Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData, Environment.SpecialFolderOption.DoNotVerify),
            "farhold",
            "port"
        );

    /// <summary>The port, or why there is none.</summary>
    public (int? Port, string Why) Choose()
    {
        try
        {
            return File.Exists(file) ? Kept() : Drawn();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (null, $"The port can't be kept in {file}: {e.Message} Name one with --port, always the same: records belong to it.");
        }
    }

    private (int?, string) Kept()
    {
        if (Parse(File.ReadAllText(file).Trim()) is not { } port)
            return (null, $"{file} holds no port. Write the one at which the records are into it, or delete it to draw a new one.");
        return isFree(port)
            ? (port, "")
            : (
                null,
                $"Port {port}, to which this machine's records belong, is taken; the app may be running already at {Address(port)}. "
                    + "End what uses it. --port names another one, where those records are not shown."
            );
    }

    private (int?, string) Drawn()
    {
        for (var i = 0; i < Tries; i++)
        {
            var port = RandomNumberGenerator.GetInt32(From, Below);
            if (!isFree(port))
                continue;
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, port.ToString(CultureInfo.InvariantCulture) + "\n");
            return (port, "");
        }

        return (null, "No free port was found on this machine. Name one with --port.");
    }

    private static bool IsFree(int port)
    {
        using var probe = new TcpListener(IPAddress.Loopback, port);
        try
        {
            probe.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
