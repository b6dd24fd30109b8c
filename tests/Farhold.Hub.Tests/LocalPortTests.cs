using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests;

/// <summary>The port belongs to the origin, and the origin to the records: it has to be the same at every start.</summary>
public sealed class LocalPortTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("farhold-port-").FullName;

    private string Kept => Path.Combine(folder, "farhold", "port");

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public void A_port_is_drawn_once_and_is_the_same_at_every_later_start()
    {
        var first = Choose().Port;
        Assert.InRange(first!.Value, 20_000, 31_999);
        Assert.Equal(Enumerable.Repeat(first, 3), Enumerable.Range(0, 3).Select(_ => Choose().Port));
    }

    [Fact]
    public void Ports_that_are_taken_are_not_drawn()
    {
        var tried = new List<int>();
        var port = new LocalPort(
            Kept,
            p =>
            {
                tried.Add(p);
                return tried.Count == 4;
            }
        ).Choose().Port;
        Assert.Equal(tried[3], port);
    }

    [Fact]
    public void A_kept_port_that_is_taken_is_never_changed_in_silence()
    {
        var port = Choose().Port;
        var (other, why) = new LocalPort(Kept, _ => false).Choose();
        Assert.Null(other);
        Assert.Contains($"Port {port}, to which this machine's records belong, is taken", why, StringComparison.Ordinal);
        Assert.Equal(port, Choose().Port);
    }

    [Theory]
    [InlineData("")]
    [InlineData("0")]
    [InlineData("65536")]
    [InlineData("-1")]
    [InlineData("20001 20002")]
    [InlineData("http://127.0.0.1:20001")]
    public void A_file_that_holds_no_port_is_named_and_left_as_it_is(string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Kept)!);
        File.WriteAllText(Kept, text);
        var (port, why) = Choose();
        Assert.Null(port);
        Assert.StartsWith(Kept, why, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(Kept));
    }

    [Fact]
    public void A_folder_that_can_not_be_written_is_said()
    {
        File.WriteAllText(Path.Combine(folder, "farhold"), "a file where the folder would be");
        var (port, why) = Choose();
        Assert.Null(port);
        Assert.Contains("can't be kept", why, StringComparison.Ordinal);
    }

    [Fact]
    public void The_file_is_where_the_base_directory_specification_puts_it()
    {
        Assert.Equal(Path.Combine("/somewhere", "farhold", "port"), LocalPort.FileOf(n => n == "XDG_CONFIG_HOME" ? "/somewhere" : null));
        Assert.True(Path.IsPathRooted(LocalPort.FileOf(n => n == "XDG_CONFIG_HOME" ? "not/rooted" : null)));
        Assert.EndsWith(Path.Combine("farhold", "port"), LocalPort.FileOf(_ => null), StringComparison.Ordinal);
    }

    [Fact]
    public void The_kept_port_is_used_unless_the_user_names_another_place()
    {
        var page = Published.PageOnly();
        var port = Choose().Port;
        string? Listen(params string[] args) => HubOptions.From(["--app", page, .. args], _ => null, new(Kept, _ => true))?.Listen;
        Assert.Equal($"http://127.0.0.1:{port}", Listen());
        Assert.Equal("http://127.0.0.1:5080", Listen("--port", "5080"));
        Assert.Equal("http://[::1]:82", Listen("--urls", "http://[::1]:82"));
        Assert.Equal($"http://127.0.0.1:{port}", Listen());
        Directory.Delete(page, true);
    }

    private (int? Port, string Why) Choose() => new LocalPort(Kept, _ => true).Choose();
}
