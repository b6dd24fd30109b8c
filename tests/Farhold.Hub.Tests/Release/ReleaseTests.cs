using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Runtime.Versioning;
using System.Security.Cryptography;
using System.Text.Json;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests.Release;

/// <summary>Each thing that is handed out, installed in a bare folder and run there.</summary>
[UnsupportedOSPlatform("windows")]
public sealed class ReleaseTests : IDisposable
{
    private static readonly string Record = Path.Combine(Published.Root, "demo", "skarvedal.jsonl");

    private static readonly string[] Tell = ["tell", Record, "--at", "2031-05-04T03:22:00Z"];

    private static readonly string Runtime = Path.GetFullPath(
        Path.Combine(System.Runtime.InteropServices.RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..")
    );

    private readonly string bare = Directory.CreateTempSubdirectory("farhold-release-").FullName;

    public void Dispose() => Directory.Delete(bare, recursive: true);

    [Fact]
    public void The_tool_package_installs_and_answers_as_the_built_program_does()
    {
        var (path, home) = (Path.Combine(bare, "tools"), Directory.CreateDirectory(Path.Combine(bare, "home")).FullName);
        var installed = Released.Run(
            Path.Combine(Runtime, "dotnet"),
            home,
            ["tool", "install", "farhold", "--version", Product.Version, "--tool-path", path, "--source", Released.Folder],
            Runtime
        );
        Assert.True(installed.ExitCode == 0, installed.Output + installed.Errors);
        var farhold = Path.Combine(path, "farhold");
        Assert.Equal(Built(Tell), Released.Run(farhold, home, Tell, Runtime));
        Assert.Equal(0, Released.Run(farhold, home, ["draw", Record, "-o", "leg.png", "--at", "2031-05-04T05:00:00Z"], Runtime).ExitCode);
        Assert.Equal("PNG"u8.ToArray(), File.ReadAllBytes(Path.Combine(home, "leg.png"))[1..4]);
        Assert.Single(Directory.GetFiles(path, "THIRD-PARTY-NOTICES.md", SearchOption.AllDirectories));
    }

    [Fact]
    public void The_single_file_needs_no_runtime_and_answers_as_the_built_program_does()
    {
        var folder = Released.Unpack("farhold", bare);
        Assert.Equal(
            ["LICENSE", "THIRD-PARTY-NOTICES.md", "farhold"],
            Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        var farhold = Path.Combine(folder, "farhold");
        Assert.Equal(Built(Tell), Released.Run(farhold, bare, Tell));
        Assert.StartsWith($"farhold {Product.Version},", Released.Run(farhold, bare, ["--version"]).Output, StringComparison.Ordinal);
        Assert.Equal(0, Released.Run(farhold, bare, ["draw", Record, "-o", "leg.png", "--at", "2031-05-04T05:00:00Z"]).ExitCode);
        Assert.Equal("PNG"u8.ToArray(), File.ReadAllBytes(Path.Combine(bare, "leg.png"))[1..4]);
        Assert.Equal(0, Released.Run(farhold, bare, ["card", Record, "-o", "card.pdf"]).ExitCode);
        Assert.Equal("%PDF"u8.ToArray(), File.ReadAllBytes(Path.Combine(bare, "card.pdf"))[..4]);
    }

    [Fact]
    public async Task The_hub_starts_with_one_command_and_serves_the_app_beside_it()
    {
        var folder = Released.Unpack("farhold-hub", bare);
        var port = FreePort();
        using var hub = Process.Start(Released.Bare(Path.Combine(folder, "Farhold.Hub"), bare, ["--port", $"{port}"]))!;
        try
        {
            Assert.Equal($"Farhold is at http://127.0.0.1:{port}. End with Ctrl+C.", await hub.StandardOutput.ReadLineAsync(Cancelled));
            using var client = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{port}") };
            var page = await File.ReadAllTextAsync(Path.Combine(Published.Folder, "index.html"), Cancelled);
            Assert.Equal(page, await client.GetStringAsync("/casualty/a/now", Cancelled));
            using var record = new ByteArrayContent(await File.ReadAllBytesAsync(Record, Cancelled));
            record.Headers.ContentType = new("application/jsonl");
            using var card = await client.PostAsync("/documents/card", record, Cancelled);
            Assert.Equal((HttpStatusCode.OK, "application/pdf"), (card.StatusCode, card.Content.Headers.ContentType?.MediaType));
        }
        finally
        {
            hub.Kill();
            await hub.WaitForExitAsync(Cancelled);
        }

        Assert.Equal("Farhold " + Product.Version + "\n", Released.Run(Path.Combine(folder, "Farhold.Hub"), bare, ["--version"]).Output);
        Assert.True(File.Exists(Path.Combine(folder, "THIRD-PARTY-NOTICES.md")));
        Assert.True(File.Exists(Path.Combine(folder, "dotnet", "LICENSE.TXT")));
    }

    [Fact]
    public void The_archive_of_the_app_holds_every_published_file_and_every_file_of_the_offline_copy()
    {
        var folder = Released.Unpack("farhold-app", bare);
        var app = Path.Combine(folder, "app");
        Assert.Equal(Files(Published.Folder), Files(app));
        Assert.All(Files(app), f => Assert.Equal(Hash(Path.Combine(Published.Folder, f)), Hash(Path.Combine(app, f))));
        var list = File.ReadAllText(Path.Combine(app, "service-worker-assets.js"));
        using var json = JsonDocument.Parse(list[list.IndexOf('{', StringComparison.Ordinal)..(list.LastIndexOf('}') + 1)]);
        var assets = json
            .RootElement.GetProperty("assets")
            .EnumerateArray()
            .Select(a => (Url: a.GetProperty("url").GetString()!, Hash: a.GetProperty("hash").GetString()))
            .ToArray();
        Assert.NotEmpty(assets);
        Assert.All(assets, a => Assert.Equal(a.Hash, "sha256-" + Convert.ToBase64String(Hash(Path.Combine(app, a.Url)))));
        Assert.True(File.Exists(Path.Combine(folder, "LICENSE")) && File.Exists(Path.Combine(folder, "THIRD-PARTY-NOTICES.md")));
    }

    [Fact]
    public void The_checksums_are_of_everything_that_is_there()
    {
        var sums = File.ReadAllLines(Path.Combine(Released.Folder, "SHA256SUMS")).ToDictionary(l => l[66..], l => l[..64]);
        Assert.Equal(Files(Released.Folder).Except(["SHA256SUMS"]).Order(StringComparer.Ordinal), sums.Keys.Order(StringComparer.Ordinal));
        Assert.All(sums, s => Assert.Equal(s.Value, Convert.ToHexStringLower(Hash(Path.Combine(Released.Folder, s.Key)))));
        Assert.All(sums.Keys, f => Assert.Contains(Product.Version, f, StringComparison.Ordinal));
    }

    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    private static (int, string, string) Built(string[] arguments) =>
        Released.Run(CommandLine.Program, Path.GetTempPath(), arguments, Runtime);

    private static string[] Files(string folder) =>
        [
            .. Directory
                .GetFiles(folder, "*", SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(folder, f))
                .Order(StringComparer.Ordinal),
        ];

    private static byte[] Hash(string file) => SHA256.HashData(File.ReadAllBytes(file));

    private static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }
}
