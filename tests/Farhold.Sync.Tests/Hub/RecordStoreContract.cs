using System.Globalization;
using System.Text;
using Farhold.Hub.Storage;

namespace Farhold.Sync.Tests.Hub;

/// <summary>What every store of records has to hold, whatever it is made of.</summary>
public abstract class RecordStoreContract : IAsyncLifetime
{
    private static readonly Instant Noon = Instant.FromUtc(2031, 5, 4, 12, 0);

    private IRecordStore store = null!;

    /// <summary>Opens the one store of this test, or opens it again.</summary>
    private protected abstract IRecordStore Open();

    public virtual ValueTask InitializeAsync()
    {
        store = Open();
        return default;
    }

    public virtual async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await store.DisposeAsync();
    }

    [Fact]
    public async Task Each_line_is_kept_once_in_the_order_of_its_coming()
    {
        var id = await NewAsync("a");
        Assert.Equal(2, await AppendAsync(id, Line("a", 1), Line("a", 2)));
        Assert.Equal(1, await AppendAsync(id, Line("a", 2), Line("a", 3), Line("a", 3)));
        Assert.Equal(0, await AppendAsync(id, Line("a", 3)));
        Assert.Equal([(1, Line("a", 1)), (2, Line("a", 2)), (3, Line("a", 3))], await AllAsync(id));
        Assert.Equal([(3, Line("a", 3))], await AllAsync(id, 2));
    }

    [Fact]
    public async Task Whatever_the_bytes_are_they_come_back()
    {
        var id = await NewAsync("a");
        byte[][] odd =
        [
            [0xFF, 0xFE, 0],
            "torn {\"id\":\"a-"u8.ToArray(),
            "{\"id\":\"a-1\",\"previous\":\"\"}"u8.ToArray(),
            [.. Enumerable.Repeat((byte)'x', 1 << 20)],
        ];
        await store.AppendAsync(new(id, [.. odd.Select(b => HeldLine.Of(b)!)], "here", Noon), TestContext.Current.CancellationToken);
        var stored = await store.SinceAsync(id, 0, TestContext.Current.CancellationToken);
        Assert.Equal(odd.Select(Convert.ToHexString), stored!.Value.Select(l => Convert.ToHexString(l.Bytes.Span)));
    }

    [Fact]
    public async Task Two_lines_under_one_number_are_both_kept_and_casualties_are_apart()
    {
        var (one, other) = (await NewAsync("a"), await NewAsync("b"));
        Assert.Equal(2, await AppendAsync(one, Line("a", 1), Line("a", 1) + " "));
        Assert.Equal(1, await AppendAsync(other, Line("a", 1)));
        Assert.Equal(2, (await AllAsync(one)).Count);
        Assert.Single(await AllAsync(other));
    }

    [Fact]
    public async Task A_casualty_that_nobody_opened_is_refused_and_costs_nobody_else()
    {
        var id = await NewAsync("a");
        Assert.Null(await store.SinceAsync("nobody", 0, TestContext.Current.CancellationToken));
        var refused = AppendAsync("nobody", Line("a", 1));
        Assert.Equal(1, await AppendAsync(id, Line("a", 1)));
        await Assert.ThrowsAsync<KeyNotFoundException>(() => refused);
    }

    [Fact]
    public async Task What_was_acknowledged_is_there_when_it_is_opened_again()
    {
        var id = await NewAsync("a");
        await AppendAsync(id, Line("a", 1));
        await store.DisposeAsync();
        store = Open();
        Assert.Equal(1, await AppendAsync(id, Line("a", 1), Line("a", 2)));
        Assert.Equal([1L, 2L], (await AllAsync(id)).Select(l => l.Position));
    }

    /// <summary>Order, repetition and who comes at the same time do not matter: each line once, no gap in the positions.</summary>
    [Fact]
    public async Task Many_at_once_double_nothing_and_leave_no_gap()
    {
        var id = await NewAsync("a");
        var lines = Enumerable.Range(1, 60).Select(n => Line(n % 2 == 0 ? "a" : "b", n)).ToArray();
        var random = new Random(7);
        await Task.WhenAll(
            Enumerable
                .Range(0, 24)
                .Select(_ => lines.OrderBy(_ => random.Next()).Take(20).ToArray())
                .Append(lines)
                .ToArray()
                .Select(some => Task.Run(() => AppendAsync(id, some)))
        );
        var all = await AllAsync(id);
        Assert.Equal(lines.Order(), all.Select(l => l.Line).Order());
        Assert.Equal(Enumerable.Range(1, 60).Select(p => (long)p), all.Select(l => l.Position));
    }

    [Fact]
    public async Task A_casualty_is_found_by_any_first_line_that_ever_came()
    {
        var id = await NewAsync("a");
        await AppendAsync(id, Line("a", 1), Line("b", 1));
        var byOther = await store.FindAsync(Roots.Of([Held(Line("b", 1))]), Noon, TestContext.Current.CancellationToken);
        Assert.Equal(id, byOther.Certain);
        Assert.NotEqual(id, await NewAsync("c"));
    }

    [Fact]
    public async Task Roots_of_two_casualties_are_left_to_a_person()
    {
        var (one, other) = (await NewAsync("a"), await NewAsync("b"));
        var match = await store.FindAsync(Roots.Of([Held(Line("a", 1)), Held(Line("b", 1))]), Noon, TestContext.Current.CancellationToken);
        Assert.Null(match.Certain);
        Assert.Equal(new[] { one, other }.Order(), match.Candidates);
    }

    /// <summary>docs/decisions/whose-record.md: a shared line proves nothing where another identity comes along.</summary>
    [Fact]
    public async Task A_shared_line_with_another_identity_is_left_to_a_person()
    {
        var opened = Opening("a", "4ovs6zt3mbqe5dxhcwkn2rjayu");
        var first = await store.FindAsync(Roots.Of([Held(opened)]), Noon, TestContext.Current.CancellationToken);
        var other = Roots.Of([Held(opened), Held(Opening("b", "aaaaaaaaaaaaaaaaaaaaaaaaaa"))]);
        var match = await store.FindAsync(other, Noon, TestContext.Current.CancellationToken);
        Assert.Null(match.Certain);
        Assert.Equal([first.Certain!], match.Candidates);
        var same = await store.FindAsync(
            Roots.Of([Held(Opening("c", "4ovs6zt3mbqe5dxhcwkn2rjayu"))]),
            Noon,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(first.Certain, same.Certain);
    }

    [Fact]
    public async Task An_erased_casualty_is_gone_and_does_not_come_back_by_any_door()
    {
        var (id, other) = (await NewAsync("a"), await NewAsync("b"));
        await AppendAsync(id, Line("a", 1), Line("a", 2), Line("c", 1));
        await AppendAsync(other, Line("b", 1));
        Assert.Equal(3, await store.EraseAsync(id, "owner", "asked for", Noon, TestContext.Current.CancellationToken));
        Assert.Equal(0, await store.EraseAsync(id, "another", "again", Noon, TestContext.Current.CancellationToken));
        var told = new Tombstone(Noon, "owner", "asked for");
        Assert.Equal(told, (await Assert.ThrowsAsync<ErasedException>(() => AppendAsync(id, Line("a", 3)))).Tombstone);
        Assert.Equal(told, (await Assert.ThrowsAsync<ErasedException>(() => AllAsync(id))).Tombstone);
        foreach (var device in (string[])["a", "c"])
        {
            var match = await store.FindAsync(Roots.Of([Held(Line(device, 1))]), Noon, TestContext.Current.CancellationToken);
            Assert.Equal(told, match.Erased);
            Assert.Null(match.Certain);
        }

        var merged = Roots.Of([Held(Line("a", 1)), Held(Line("b", 1))]);
        Assert.Equal(told, (await store.FindAsync(merged, Noon, TestContext.Current.CancellationToken)).Erased);
        Assert.Equal([(1, Line("b", 1))], await AllAsync(other));
        await store.DisposeAsync();
        store = Open();
        await Assert.ThrowsAsync<ErasedException>(() => AppendAsync(id, Line("a", 3)));
        Assert.Equal(1, await AppendAsync(other, Line("b", 2)));
    }

    [Fact]
    public async Task Everything_that_refers_to_a_casualty_goes_with_it_and_nothing_of_another()
    {
        var (id, other) = (await NewAsync("a"), await NewAsync("b"));
        await using (var rows = await store.Rows.OpenConnectionAsync(TestContext.Current.CancellationToken))
            foreach (var casualty in (string[])[id, other])
            {
                await rows.RunAsync("insert into belongs (casualty, team) values (@c, 'north') on conflict do nothing", ("@c", casualty));
                await rows.RunAsync("insert into allowed (casualty, thumb, since, by) values (@c, 't', 1, 'x')", ("@c", casualty));
                await rows.RunAsync("insert into heard (casualty, thumb, at) values (@c, 't', 1)", ("@c", casualty));
                await rows.RunAsync(
                    "insert into said (casualty, thumb, head, at) values (@c, 't', @h, 1)",
                    ("@c", casualty),
                    ("@h", new byte[] { 1 })
                );
                await rows.RunAsync(
                    "insert into seal (casualty, thumb, device, number, head, base, signature, at) "
                        + "values (@c, 't', 'a', 1, @h, 'b', @h, 1)",
                    ("@c", casualty),
                    ("@h", new byte[] { 1 })
                );
                await rows.RunAsync(
                    "insert into share (id, casualty, secret, wrong, made, made_by, until, opened) values (@i, @c, @h, 0, 1, 'x', 2, 0)",
                    ("@i", "s" + casualty),
                    ("@c", casualty),
                    ("@h", new byte[] { 1 })
                );
            }

        await store.EraseAsync(id, "owner", "asked for", Noon, TestContext.Current.CancellationToken);
        await using var left = await store.Rows.OpenConnectionAsync(TestContext.Current.CancellationToken);
        foreach (var table in Erasure.Tables.Where(t => t != "line"))
            Assert.Equal([other], await left.AllAsync($"select distinct casualty from {table}", row => row.GetString(0)));
        await Assert.ThrowsAsync<KeyNotFoundException>(() =>
            store.EraseAsync("nobody", "owner", "", Noon, TestContext.Current.CancellationToken)
        );
    }

    private protected async Task<string> NewAsync(string device) =>
        (await store.FindAsync(Roots.Of([Held(Line(device, 1))]), Noon, TestContext.Current.CancellationToken)).Certain!;

    private protected Task<int> AppendAsync(string casualty, params string[] lines) =>
        store.AppendAsync(new(casualty, [.. lines.Select(Held)], "here", Noon), TestContext.Current.CancellationToken);

    private protected async Task<List<(long Position, string Line)>> AllAsync(string casualty, long since = 0) =>
        [
            .. (await store.SinceAsync(casualty, since, TestContext.Current.CancellationToken))!.Value.Select(l =>
                (l.Position, Encoding.UTF8.GetString(l.Bytes.Span))
            ),
        ];

    private protected static string Line(string device, int number) =>
        string.Create(CultureInfo.InvariantCulture, $"{{\"id\":\"{device}-{number}\",\"kind\":\"note\",\"text\":\"calm\"}}");

    private static string Opening(string device, string identity) =>
        $$"""{"id":"{{device}}-1","happened":"2031-05-04T02:00:00Z","recorded":"2031-05-04T02:00:00Z","by":"Ane","kind":"casualty.opened","alias":"Runa","casualty":"{{identity}}"}""";

    private static HeldLine Held(string line) => HeldLine.Of(Encoding.UTF8.GetBytes(line))!;
}
