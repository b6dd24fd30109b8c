using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using Farhold.Hub.Storage;
using Farhold.Hub.Sync;

namespace Farhold.Hub;

/// <param name="AppFolder">The published app: the folder that holds index.html.</param>
/// <param name="Listen">Addresses, divided by semicolons.</param>
/// <param name="Hosts">Names under which it answers besides those of this machine itself and those in <paramref name="Listen"/>.</param>
/// <param name="Local">A local protocol that cards are made by; null: none.</param>
/// <param name="Sync">Whether records are kept here, and where; null: nothing is.</param>
/// <param name="Demo">A folder with invented casualties that a hub without any is filled with; null: none.</param>
/// <param name="Issuers">Files with the codes of those whose signature on it is trusted.</param>
internal sealed record HubOptions(
    string AppFolder,
    string Listen,
    ImmutableArray<string> Hosts = default,
    string? Local = null,
    ImmutableArray<string> Issuers = default,
    SyncOptions? Sync = null,
    string? Demo = null
)
{
    public const string Help = """
        Serves the field app.
          --app FOLDER   the published app (the folder with index.html); default: app beside this program
          --port N       where to listen on this machine, this time only; nothing is remembered
          --urls ADDR    where to listen, such as http://0.0.0.0:5080; several divided by ';'
          --host NAME    a name under which the app is opened, such as farhold.example; may be given several times
          --local FILE   a local protocol that cards are made by, its signature beside it
          --issuer FILE  the code of an issuer whose signature on it is trusted; may be given several times
          --records FOLDER   keeps records of phones in FOLDER, and answers those that are enrolled
          --demo FOLDER  fills a hub that holds no record with the invented casualties of FOLDER, and invites somebody to look at them
          --hub-key FILE the key that records are sealed with; default: hub.key in FOLDER, made there at the first start. Keep a copy
                         elsewhere: without it nobody can read the records
          --store KIND   sqlite (the default: a file in FOLDER) or postgres, which several hubs may share
          --store-settings FILE   how PostgreSQL is reached, such as Host=db;Database=farhold;Username=farhold;Password=…;
                         FARHOLD_STORE holds the same. Never an option by itself: everybody on a machine sees its command lines
          --version      the version, and nothing else
          --static-host FOLDER TARGET   writes what another host of the app in FOLDER has to send into TARGET, and ends
        Without --port and --urls it serves this machine alone, at a port drawn on the first start and kept in
        $XDG_CONFIG_HOME/farhold/port (usually ~/.config/farhold/port): the browser keeps records by address, port included.
        FARHOLD_LISTEN stands for --urls, FARHOLD_HOSTS for --host (several divided by ';').
        Requests under any other name are refused. The names of this machine (localhost, 127.0.0.1, [::1]) always work.
        Phones need https to keep the app offline; put a certificate in front and name it with --host.
        invite FOLDER --help says how somebody is invited; the first owner is, at the console.
        """;

    private static readonly ImmutableArray<string> Named =
    [
        "--app",
        "--urls",
        "--port",
        "--host",
        "--local",
        "--issuer",
        "--records",
        "--demo",
        "--hub-key",
        "--store",
        "--store-settings",
    ];

    /// <summary>Null, with the reason on standard error, if an argument is unknown, the folder has no app or the port is taken.</summary>
    public static HubOptions? From(string[] args, Func<string, string?> environment, LocalPort? local = null)
    {
        var app = Path.Combine(AppContext.BaseDirectory, "app");
        var listen = environment("FARHOLD_LISTEN") is { Length: > 0 } named ? named : null;
        var hosts = (environment("FARHOLD_HOSTS") ?? "")
            .Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .ToList();
        string? protocol = null,
            records = null,
            demo = null,
            key = null,
            store = null,
            settings = null;
        var issuers = new List<string>();
        for (var i = 0; i < args.Length; i += 2)
        {
            if (!Named.Contains(args[i]) || i + 1 == args.Length)
                return Refuse($"'{args[i]}' is no option with a value here; --help lists them.");
            var value = args[i + 1];
            switch (args[i])
            {
                case "--app":
                    app = value;
                    break;
                case "--urls":
                    listen = value;
                    break;
                case "--host":
                    hosts.Add(value);
                    break;
                case "--local":
                    protocol = value;
                    break;
                case "--records":
                    records = Path.GetFullPath(value);
                    break;
                case "--demo":
                    demo = Path.GetFullPath(value);
                    break;
                case "--hub-key":
                    key = Path.GetFullPath(value);
                    break;
                case "--store":
                    store = value;
                    break;
                case "--store-settings":
                    settings = value;
                    break;
                case "--issuer":
                    issuers.Add(value);
                    break;
                default:
                    if (LocalPort.Parse(value) is not { } port)
                        return Refuse($"'{value}' is no port: a number from 1 to {IPEndPoint.MaxPort}.");
                    listen = LocalPort.Address(port);
                    break;
            }
        }

        if (!File.Exists(Path.Combine(app, "index.html")))
            return Refuse($"There is no app in {app}: index.html is missing. ./run publishes it.");
        if (hosts.Find(h => Uri.CheckHostName(h.Trim('[', ']')) is UriHostNameType.Unknown) is { } odd)
            return Refuse($"'{odd}' is no host name: give it without scheme, port and path.");
        var (postgres, wrong) = StoreSettings.Of(store, settings, environment);
        if (wrong is not null)
            return Refuse(wrong);
        if (listen is null)
        {
            var (port, why) = (local ?? LocalPort.OfThisUser(environment)).Choose();
            if (port is not { } chosen)
                return Refuse(why);
            listen = LocalPort.Address(chosen);
        }

        return new HubOptions(
            Path.GetFullPath(app),
            listen,
            [.. hosts],
            protocol,
            [.. issuers],
            records is null ? null : new(records) { KeyFile = key, Postgres = postgres },
            demo
        );
    }

    private static HubOptions? Refuse(string reason)
    {
        Console.Error.WriteLine(reason);
        return null;
    }
}
