namespace Farhold.Hub;

/// <param name="AppFolder">The published app: the folder that holds index.html.</param>
/// <param name="Listen">Addresses, divided by semicolons.</param>
internal sealed record HubOptions(string AppFolder, string Listen)
{
    public const string Help = """
        Serves the field app.
          --app FOLDER   the published app (the folder with index.html); default: app beside this program
          --urls ADDR    where to listen, such as http://127.0.0.1:5080; several divided by ';'
        FARHOLD_LISTEN names the address where --urls does not. Without either only this machine is served.
        Phones need https to keep the app offline; put a certificate in front, or use the address localhost.
        """;

    private const string Loopback = "http://127.0.0.1:5080";

    /// <summary>Null, with the reason on standard error, if an argument is unknown or the folder holds no app.</summary>
    public static HubOptions? From(string[] args, Func<string, string?> environment)
    {
        var app = Path.Combine(AppContext.BaseDirectory, "app");
        var listen = environment("FARHOLD_LISTEN") is { Length: > 0 } named ? named : Loopback;
        for (var i = 0; i < args.Length; i += 2)
        {
            if (args[i] is not ("--app" or "--urls") || i + 1 == args.Length)
                return Refuse($"'{args[i]}' is no option with a value here; --help lists them.");
            if (args[i] == "--app")
                app = args[i + 1];
            else
                listen = args[i + 1];
        }
        return File.Exists(Path.Combine(app, "index.html"))
            ? new HubOptions(Path.GetFullPath(app), listen)
            : Refuse($"There is no app in {app}: index.html is missing. ./run publishes it.");
    }

    private static HubOptions? Refuse(string reason)
    {
        Console.Error.WriteLine(reason);
        return null;
    }
}
