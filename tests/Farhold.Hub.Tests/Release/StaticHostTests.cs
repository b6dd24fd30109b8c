using System.Text.RegularExpressions;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests.Release;

/// <summary>What another host is told to send is what the hub sends, at every file of the app.</summary>
public sealed partial class StaticHostTests : IAsyncLifetime
{
    private static readonly string[] Told =
    [
        "Content-Type",
        "Cache-Control",
        "Vary",
        "Content-Security-Policy",
        "X-Content-Type-Options",
        "Referrer-Policy",
        "Permissions-Policy",
        "Cross-Origin-Opener-Policy",
        "Cross-Origin-Resource-Policy",
    ];

    private readonly string folder = Directory.CreateTempSubdirectory("farhold-static-").FullName;
    private AppServer server = null!;
    private HttpClient client = null!;

    public async ValueTask InitializeAsync()
    {
        server = await AppServer.StartAsync();
        client = new HttpClient { BaseAddress = new Uri(server.Address) };
        StaticHost.Write(server.Folder, folder);
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await server.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task The_list_of_headers_has_every_file_with_what_the_hub_sends_there()
    {
        var told = Sections(await ReadAsync(StaticHost.HeadersFile));
        Assert.Equal(Addresses().Prepend("/").Order(StringComparer.Ordinal), told.Keys.Order(StringComparer.Ordinal));
        foreach (var (address, headers) in told)
            Assert.Equal(await SentAsync(address), headers);
    }

    [Fact]
    public async Task The_settings_for_nginx_come_to_what_the_hub_sends_at_every_file_and_place()
    {
        var nginx = await ReadAsync(StaticHost.NginxFile);
        var types = TypeLine()
            .Matches(nginx)
            .SelectMany(m => m.Groups["endings"].Value.Split(' ').Select(e => (Ending: "." + e, Type: m.Groups["type"].Value)))
            .ToDictionary(t => t.Ending, t => t.Type);
        var locations = Location().Matches(nginx).ToArray();
        Assert.Equal(3, locations.Length);
        foreach (var address in Addresses().Concat(["/", "/casualty/c1/now", "/no-such.js", "/_framework/no.such0123456789.wasm"]))
        {
            // By nginx's rules: the first pattern that fits, in the order of the file, goes before the prefix "/".
            var chosen =
                locations.FirstOrDefault(l => l.Groups["pattern"] is { Success: true } p && Regex.IsMatch(address, p.Value))
                ?? locations[^1];
            var file = server.Folder + address;
            var found = File.Exists(file);
            var served =
                found ? address
                : chosen.Groups["tried"].Value == "$uri =404" ? null
                : "/index.html";
            var sent = await SentAsync(address);
            if (served is null)
            {
                Assert.False(sent.ContainsKey("Content-Type"), address);
                continue;
            }

            var headers = AddHeader()
                .Matches(chosen.Groups["body"].Value)
                .ToDictionary(m => m.Groups["name"].Value, m => m.Groups["value"].Value);
            headers["Content-Type"] = types.GetValueOrDefault(Path.GetExtension(served), "application/octet-stream");
            Assert.Equal(sent, headers);
        }
    }

    [Fact]
    public async Task The_explanation_names_every_header_of_every_answer()
    {
        var text = await ReadAsync(StaticHost.ReadMe);
        Assert.All(SecurityHeaders.For(server.Folder), h => Assert.Contains($"\n{h.Name}: {h.Value}\n", text, StringComparison.Ordinal));
    }

    private Task<string> ReadAsync(string name) => File.ReadAllTextAsync(Path.Combine(folder, name), TestContext.Current.CancellationToken);

    private IEnumerable<string> Addresses() =>
        Directory
            .GetFiles(server.Folder, "*", SearchOption.AllDirectories)
            .Where(f => !f.EndsWith(".br", StringComparison.Ordinal) && !f.EndsWith(".gz", StringComparison.Ordinal))
            .Select(f => "/" + Path.GetRelativePath(server.Folder, f));

    private async Task<Dictionary<string, string>> SentAsync(string address)
    {
        using var answer = await client.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        return answer
            .Headers.Concat(answer.Content.Headers)
            .Where(h => Told.Contains(h.Key))
            .ToDictionary(h => h.Key, h => string.Join(", ", h.Value));
    }

    private static Dictionary<string, Dictionary<string, string>> Sections(string text)
    {
        var sections = new Dictionary<string, Dictionary<string, string>>();
        foreach (var line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries))
            if (line[0] == '/')
                sections.Add(line, []);
            else if (line.IndexOf(": ", StringComparison.Ordinal) is var colon)
                sections.Last().Value.Add(line[2..colon], line[(colon + 2)..]);
        return sections;
    }

    [GeneratedRegex("^    (?<type>[a-z]+/[^ ]+) (?<endings>[^;]+);$", RegexOptions.Multiline)]
    private static partial Regex TypeLine();

    [GeneratedRegex(
        "^location (~ \"(?<pattern>[^\"]+)\"|/) \\{\n    try_files (?<tried>[^;]+);\n(?<body>.*?)^\\}",
        RegexOptions.Multiline | RegexOptions.Singleline
    )]
    private static partial Regex Location();

    [GeneratedRegex("^    add_header (?<name>[^ ]+) \"(?<value>[^\"]*)\" always;$", RegexOptions.Multiline)]
    private static partial Regex AddHeader();
}
