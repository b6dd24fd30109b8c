using System.Text;

namespace Farhold.Hub;

/// <summary>What another host has to send with the published app, written from the values that this hub sends.</summary>
internal static class StaticHost
{
    public const string HeadersFile = "_headers",
        NginxFile = "nginx.conf",
        ReadMe = "HEADERS.md";

    /// <summary>The page itself, at the address of the app and at every place of it.</summary>
    private const string Page = "index.html";

    private static readonly string[] Compressed = [".br", ".gz"];

    /// <param name="app">The folder with index.html.</param>
    public static void Write(string app, string target)
    {
        app = Path.GetFullPath(app);
        Directory.CreateDirectory(target);
        File.WriteAllText(Path.Combine(target, HeadersFile), Headers(app));
        File.WriteAllText(Path.Combine(target, NginxFile), Nginx(app));
        File.WriteAllText(Path.Combine(target, ReadMe), Explained(app));
    }

    /// <summary>Addresses of all files that are asked for by name, from the root; their compressed forms are not.</summary>
    public static string[] Addresses(string app) =>
        [
            .. Directory
                .GetFiles(app, "*", SearchOption.AllDirectories)
                .Where(f => !Compressed.Contains(Path.GetExtension(f)))
                .Select(f => "/" + Path.GetRelativePath(app, f).Replace(Path.DirectorySeparatorChar, '/'))
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>An address, then what is sent there, indented.</summary>
    /// <remarks>Every address stands once with all of its headers, so nothing has to be merged.</remarks>
    private static string Headers(string app)
    {
        var text = new StringBuilder();
        foreach (var address in Addresses(app).Prepend("/"))
        {
            var file = address == "/" ? Path.Combine(app, Page) : app + address;
            text.Append(address).Append('\n');
            foreach (var (name, value) in Own(file).Concat(SecurityHeaders.For(app)))
                text.Append("  ").Append(name).Append(": ").Append(value).Append('\n');
        }

        return text.ToString();
    }

    private static (string, string)[] Own(string file) =>
        [("Content-Type", FieldApp.TypeOf(file)), ("Cache-Control", FieldApp.CachingOf(file)), ("Vary", "Accept-Encoding")];

    /// <summary>To be included in a <c>server</c>.</summary>
    /// <remarks>A <c>location</c> with headers of its own loses those outside it, so each has all.</remarks>
    private static string Nginx(string app)
    {
        var security = SecurityHeaders.For(app);
        var text = new StringBuilder(
            "# Included in a server block that has the certificate and, as root, the folder app beside this file.\n"
        );
        text.Append("gzip_static on;\n# brotli_static on;  # where the Brotli module is there; a third of the size is saved\ntypes {\n");
        foreach (var type in Addresses(app).Where(Path.HasExtension).GroupBy(FieldApp.TypeOf).OrderBy(g => g.Key, StringComparer.Ordinal))
            text.Append("    ")
                .Append(type.Key)
                .Append(' ')
                .AppendJoin(' ', type.Select(f => Path.GetExtension(f)[1..]).Distinct().Order(StringComparer.Ordinal))
                .Append(";\n");
        text.Append("}\ndefault_type application/octet-stream;\n");
        Location($"~ \"^/_framework/{FieldApp.Hashed}\"", "$uri =404", FieldApp.ForGood);
        Location("~ \"\\.[^/]+$\"", "$uri =404", FieldApp.AskAgain);
        Location("/", $"$uri /{Page}", FieldApp.AskAgain);
        return text.ToString();

        void Location(string match, string tried, string caching)
        {
            text.Append("location ").Append(match).Append(" {\n    try_files ").Append(tried).Append(";\n");
            foreach (var (name, value) in security.Prepend(("Vary", "Accept-Encoding")).Prepend(("Cache-Control", caching)))
                text.Append("    add_header ").Append(name).Append(" \"").Append(value).Append("\" always;\n");
            text.Append("}\n");
        }
    }

    private static string Explained(string app) =>
        $"""
            # What a host of the field app has to do

            Written by the release from the values of Farhold.Hub ({Product.Version}); do not edit.

            1. Serve `app/` over https at the root of a name of its own. Records belong to that address: another one shows none of them.
            2. Send the headers of `{HeadersFile}`: an address, below it what is sent there. Some hosts read that file as it is, from the
               root of what they serve. `{NginxFile}` says the same to nginx.
            3. An address without an ending is a place of the app: answer it with `index.html` and what stands at `/`. An address with an
               ending that is not there is answered with 404, never with the page.
            4. Every file may be sent compressed: the `.br` or `.gz` beside it, with `Content-Encoding: br` or `gzip` and the type of the
               file itself. Change no byte of a file: phones compare each with its hash.
            5. Put a new version in place in one step, the whole folder at once.

            What every answer carries:

            ```text
            {string.Join('\n', SecurityHeaders.For(app).Select(h => $"{h.Name}: {h.Value}"))}
            ```

            Files with a hash in their name (`/_framework/{FieldApp.Hashed}`) are sent with `Cache-Control: {FieldApp.ForGood}`, all
            others with `Cache-Control: {FieldApp.AskAgain}`.

            """;
}
