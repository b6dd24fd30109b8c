using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Npgsql;

namespace Farhold.Sync.Tests.Hub;

/// <summary>A PostgreSQL of its own for tests: in a temporary folder, at a free port of this machine, with <c>fsync=on</c>.</summary>
/// <remarks>PostgreSQL refuses to run as root; then it runs as the user <c>postgres</c> that its package makes.</remarks>
public sealed class PostgresServer : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("farhold-pg-").FullName;
    private readonly int port = FreePort();
    private int databases;
    private Process? server;

    private static bool AsRoot => Environment.UserName == "root";

    private string Data => Path.Combine(folder, "data");

    public async ValueTask InitializeAsync()
    {
        if (AsRoot)
        {
            await RunAsync("chown", "postgres", folder);
            await RunAsync("chmod", "755", folder);
        }

        await RunAsync([.. Command("initdb", "-D", Data, "-A", "trust", "-U", "farhold", "--no-locale", "-E", "UTF8", "--no-sync")]);
        await StartAsync();
    }

    /// <summary>Starts it, also after <see cref="KillAsync"/>: it recovers what it had committed.</summary>
    public async Task StartAsync()
    {
        server = Process.Start(
            Started([
                .. Command(
                    "postgres",
                    "-D",
                    Data,
                    "-p",
                    port.ToString(CultureInfo.InvariantCulture),
                    "-k",
                    folder,
                    "-c",
                    "listen_addresses=127.0.0.1",
                    "-c",
                    "fsync=on",
                    "-c",
                    "shared_buffers=32MB"
                ),
            ])
        )!;
        _ = server.StandardError.ReadToEndAsync();
        _ = server.StandardOutput.ReadToEndAsync();
        for (var tries = 0; ; tries++)
            try
            {
                await using var connection = new NpgsqlConnection(Connection("postgres") + ";Pooling=false");
                await connection.OpenAsync();
                return;
            }
            catch (NpgsqlException e) when (tries < 300)
            {
                if (server.HasExited)
                    throw new InvalidOperationException($"PostgreSQL ended with {server.ExitCode} instead of starting.", e);
                await Task.Delay(100);
            }
    }

    /// <summary>Ends it at once, as if the machine had lost its power while the disk had not.</summary>
    public async Task KillAsync()
    {
        await SignalAsync("-QUIT");
        await server!.WaitForExitAsync();
    }

    /// <summary>A database with nothing in it.</summary>
    public async Task<string> NewAsync()
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"d{Interlocked.Increment(ref databases)}");
        await using var connection = new NpgsqlConnection(Connection("postgres") + ";Pooling=false");
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand($"create database {name}", connection);
        await command.ExecuteNonQueryAsync();
        return Connection(name);
    }

    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        if (server is { HasExited: false })
            await KillAsync();
        server?.Dispose();
        Directory.Delete(folder, true);
    }

    private string Connection(string database) =>
        string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={port};Database={database};Username=farhold;Timeout=5");

    /// <summary>To the server itself, by the number that it keeps in its folder, and to nothing else.</summary>
    private async Task SignalAsync(string signal)
    {
        var number = (await File.ReadAllLinesAsync(Path.Combine(Data, "postmaster.pid")))[0];
        await RunAsync("kill", signal, number);
    }

    private static IEnumerable<string> Command(string program, params string[] arguments) =>
        [.. AsRoot ? (string[])["setpriv", "--reuid=postgres", "--regid=postgres", "--init-groups"] : [], Find(program), .. arguments];

    /// <summary>Debian keeps the programs of each version apart, and off the path.</summary>
    private static string Find(string program) =>
        (Directory.Exists("/usr/lib/postgresql") ? Directory.GetDirectories("/usr/lib/postgresql") : [])
            .OrderByDescending(d => int.TryParse(Path.GetFileName(d), CultureInfo.InvariantCulture, out var version) ? version : 0)
            .Select(d => Path.Combine(d, "bin"))
            .Concat((Environment.GetEnvironmentVariable("PATH") ?? "").Split(':'))
            .Select(d => Path.Combine(d, program))
            .FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException($"There is no {program}: apt-get install --no-install-recommends postgresql.");

    private static ProcessStartInfo Started(string[] command)
    {
        var start = new ProcessStartInfo(command[0])
        {
            WorkingDirectory = "/",
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var argument in command.Skip(1))
            start.ArgumentList.Add(argument);
        start.Environment["LC_ALL"] = "C";
        return start;
    }

    private static async Task RunAsync(params string[] command)
    {
        using var process = Process.Start(Started(command))!;
        var (said, wrong) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{command[0]} ended with {process.ExitCode}: {await wrong} {await said}");
    }

    private static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }
}
