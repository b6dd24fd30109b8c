using Farhold.Hub;
using Farhold.Hub.Storage;

namespace Farhold.Sync.Tests.Hub;

public sealed class StoreSettingsTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("farhold-settings-").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public void Where_nothing_is_said_it_is_sqlite()
    {
        Assert.Equal((null, null), StoreSettings.Of(null, null, _ => "Host=unasked"));
        Assert.Equal((null, null), StoreSettings.Of("sqlite", null, _ => null));
    }

    [Fact]
    public void Settings_come_from_a_file_or_from_the_environment()
    {
        var file = Path.Combine(folder, "settings");
        File.WriteAllText(file, "Host=there\n");
        Assert.Equal(("Host=there", null), StoreSettings.Of("postgres", file, _ => "Host=other"));
        Assert.Equal(("Host=other", null), StoreSettings.Of("postgres", null, name => name == "FARHOLD_STORE" ? "Host=other" : null));
    }

    [Fact]
    public void What_does_not_go_together_is_refused_in_words()
    {
        Assert.Contains("no store", StoreSettings.Of("oracle", null, _ => null).Refusal, StringComparison.Ordinal);
        Assert.Contains("FARHOLD_STORE", StoreSettings.Of("postgres", null, _ => null).Refusal, StringComparison.Ordinal);
        Assert.Contains("can't be read", StoreSettings.Of("postgres", folder, _ => null).Refusal, StringComparison.Ordinal);
        Assert.Contains("--store postgres", StoreSettings.Of(null, "file", _ => null).Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void The_hub_takes_them_as_options_and_prints_none_of_them()
    {
        File.WriteAllText(Path.Combine(folder, "index.html"), "<!DOCTYPE html>");
        var options = HubOptions.From(
            ["--app", folder, "--urls", "http://127.0.0.1:1", "--records", folder, "--hub-key", "/run/key", "--store", "postgres"],
            name => name == "FARHOLD_STORE" ? "Host=there;Password=owl" : null
        )!;
        Assert.Equal("Host=there;Password=owl", options.Sync!.Postgres);
        Assert.Equal("/run/key", options.Sync.KeyFile);
        Assert.DoesNotContain("owl", options.ToString(), StringComparison.Ordinal);
    }
}
