using System.Net;
using System.Text;
using System.Text.Json;
using Farhold.Hub;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Farhold.Sync.Tests.Hub;

/// <summary>The route over a real server and real sockets.</summary>
public sealed class SyncRouteTests
{
    private static Side Phone(string device, int entries)
    {
        var phone = new Side(device);
        for (var i = 0; i < entries; i++)
            phone.Write(Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(BitConverter.GetBytes(i)))); // packs badly
        phone.Hint = Head.Empty;
        return phone;
    }

    [Fact]
    public async Task Two_phones_hold_the_same_after_each_has_met_the_hub()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var (one, other) = (Phone("a7k3", 30), Phone("n95q2x", 20));
        using var first = new PhoneClient(one, hub);
        using var second = new PhoneClient(other, hub);
        await first.FindAsync();
        Assert.Equal(HttpStatusCode.OK, await first.SyncAsync());
        Assert.Equal(one.Lines.Vector, one.Hint!.Have); // one exchange
        other.Lines.Add(one.Lines.Lines.First().Bytes); // they met once
        await second.FindAsync();
        Assert.Equal(first.Casualty, second.Casualty);
        await second.SyncAsync();
        await first.SyncAsync();
        await hub.StopAsync();
        await hub.StartAgainAsync();
        await second.SyncAsync();
        await first.SyncAsync();
        Assert.Equal(50, one.Lines.Count);
        Assert.Equal(one.Lines.Vector, other.Lines.Vector);
        Assert.Equal(one.Lines.Vector, one.Hint.Have);
    }

    [Fact]
    public async Task Lines_that_came_whole_before_the_connection_broke_are_kept()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var phone = Phone("a7k3", 2_000);
        using (var sure = new PhoneClient(phone, hub))
        {
            await sure.FindAsync();
            await using var link = new BadLink(hub.Port) { Rate = (400_000, 0), CutUp = 12_000 };
            using var cut = new PhoneClient(phone, hub, link.Port) { Casualty = sure.Casualty };
            await Assert.ThrowsAnyAsync<HttpRequestException>(() => cut.SyncAsync());
            Assert.Equal(Head.Empty, phone.Hint);
            var whole = cut.Sent;
            phone.Hint = null; // asks first
            await sure.SyncAsync();
            Assert.InRange(phone.Hint!.Have["a7k3"].Length, 100, 1_999);
            await sure.SyncAsync();
            Assert.InRange(sure.Sent, 1, whole * 9 / 10);
            Assert.Equal(phone.Lines.Vector, phone.Hint.Have);
        }
    }

    /// <summary>Whatever the phone asks: also what it only reads, and where the lines were in the hub's memory.</summary>
    [Fact]
    public async Task A_record_that_was_erased_is_gone_for_every_phone()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var phone = Phone("a7k3", 5);
        using var client = new PhoneClient(phone, hub);
        await client.FindAsync();
        await client.SyncAsync();
        await hub.Store.EraseAsync(
            client.Casualty,
            "owner",
            "asked for",
            Instant.FromUtc(2031, 5, 4, 12, 0),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(HttpStatusCode.Gone, await client.SyncAsync());
        phone.Write("one more");
        using var refused = await client.SendAsync(Link.Bytes(Outgoing.To(phone.Hint, phone.Lines, 10_000)));
        Assert.Equal(HttpStatusCode.Gone, refused.StatusCode);
        var title = JsonDocument.Parse(await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains("erased", title.RootElement.GetProperty("title").GetString(), StringComparison.Ordinal);
        var roots = Roots.Of(phone.Lines.Lines);
        var (status, _) = await client.FindAsync(JsonSerializer.Serialize(new { lines = roots.Lines, identities = roots.Identities }));
        Assert.Equal(HttpStatusCode.Gone, status);
    }

    /// <summary>The board judges all again and again: one that is gone must not end that, nor the hub with it.</summary>
    [Fact]
    public async Task The_hub_goes_on_after_a_record_that_its_board_showed_was_erased()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var (phone, other) = (Phone("a7k3", 5), Phone("n95q2x", 5));
        using var client = new PhoneClient(phone, hub);
        await client.FindAsync();
        Assert.Equal(HttpStatusCode.OK, await client.SyncAsync());
        await hub.Store.EraseAsync(
            client.Casualty,
            "owner",
            "asked for",
            Instant.FromUtc(2031, 5, 4, 12, 0),
            TestContext.Current.CancellationToken
        );
        await Task.Delay(Farhold.Hub.Board.WatchBoard.Sweep + TimeSpan.FromSeconds(2), TestContext.Current.CancellationToken);
        var life = hub.Services.GetRequiredService<IHostApplicationLifetime>();
        Assert.False(life.ApplicationStopping.IsCancellationRequested); // a board that fails takes the hub down
        using var stays = new PhoneClient(other, hub);
        await stays.FindAsync();
        Assert.Equal(HttpStatusCode.OK, await stays.SyncAsync());
        Assert.Equal(HttpStatusCode.Gone, await client.SyncAsync());
    }

    [Fact]
    public async Task An_answer_that_is_lost_costs_bytes_and_no_line()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var phone = Phone("a7k3", 50);
        using var sure = new PhoneClient(phone, hub);
        await sure.FindAsync();
        await using var link = new BadLink(hub.Port) { CutDown = 10 };
        using var deaf = new PhoneClient(phone, hub, link.Port) { Casualty = sure.Casualty };
        await Assert.ThrowsAnyAsync<HttpRequestException>(() => deaf.SyncAsync());
        await sure.SyncAsync();
        Assert.Equal(phone.Lines.Vector, phone.Hint!.Have);
    }

    /// <summary>Kestrel ends a body that comes slower than 240 bytes a second after five seconds; here it must not.</summary>
    [Fact]
    public async Task A_body_slower_than_the_servers_own_limit_is_waited_for()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var phone = Phone("a7k3", 30);
        using var sure = new PhoneClient(phone, hub);
        await sure.FindAsync();
        await using var link = new BadLink(hub.Port) { Rate = (1_200, 0) }; // 150 bytes a second
        using var slow = new PhoneClient(phone, hub, link.Port) { Casualty = sure.Casualty };
        var clock = System.Diagnostics.Stopwatch.StartNew();
        Assert.Equal(HttpStatusCode.OK, await slow.SyncAsync());
        Assert.InRange(clock.Elapsed.TotalSeconds, 6.5, 120);
        Assert.Equal(phone.Lines.Vector, phone.Hint!.Have);
    }

    [Fact]
    public async Task Who_sends_nothing_for_too_long_is_let_go_and_what_came_is_kept()
    {
        await using var hub = await HubOverLoopback.StartAsync(o => o with { Patience = TimeSpan.FromSeconds(1) });
        var phone = Phone("a7k3", 3);
        using var client = new PhoneClient(phone, hub);
        await client.FindAsync();
        var message = Link.Bytes(Outgoing.To(phone.Hint, phone.Lines));
        using var raw = new System.Net.Sockets.TcpClient("127.0.0.1", hub.Port);
        var signed = (await client.SignerAsync()).Headers(
            "POST",
            $"127.0.0.1:{hub.Port}",
            $"/hub/casualties/{client.Casualty}/sync",
            [Signer.HeadOf(message)]
        );
        var head =
            $"POST /hub/casualties/{client.Casualty}/sync HTTP/1.1\r\nHost: 127.0.0.1:{hub.Port}\r\nContent-Type: application/jsonl\r\n"
            + string.Concat(signed.Select(h => $"{h.Name}: {h.Value}\r\n"))
            + $"Content-Length: {message.Length}\r\n\r\n";
        await raw.GetStream().WriteAsync(Encoding.ASCII.GetBytes(head), TestContext.Current.CancellationToken);
        await raw.GetStream().WriteAsync(message.AsMemory(0, message.Length - 5), TestContext.Current.CancellationToken);
        var clock = System.Diagnostics.Stopwatch.StartNew();
        var end = await Record.ExceptionAsync(async () =>
            Assert.Equal(0, await raw.GetStream().ReadAsync(new byte[1], TestContext.Current.CancellationToken))
        );
        Assert.True(end is null or IOException, $"{end}"); // closed or reset
        Assert.InRange(clock.Elapsed.TotalSeconds, 0.9, 60);
        await client.SyncAsync();
        Assert.Equal(3, phone.Hint!.Have["a7k3"].Length);
    }

    [Theory]
    [InlineData("no head\n", "", HttpStatusCode.BadRequest, "message:1:")]
    [InlineData("{\"sync\":1,\"have\":{}}", "", HttpStatusCode.BadRequest, "no head")]
    [InlineData("", "", HttpStatusCode.BadRequest, "no head")]
    [InlineData("{\"sync\":1,\"have\":{\"a\":3}}\n", "", HttpStatusCode.BadRequest, "message:1:23: a has to be a list")]
    [InlineData("x", "br", HttpStatusCode.UnsupportedMediaType, "gzip")]
    public async Task What_is_no_message_is_refused_with_its_place(string body, string encoding, HttpStatusCode status, string reason)
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = new PhoneClient(Phone("a7k3", 1), hub);
        await client.FindAsync();
        using var answer = await client.SendAsync(Encoding.UTF8.GetBytes(body), encoding);
        await ProblemAsync(answer, status, reason);
    }

    [Fact]
    public async Task A_body_that_unpacks_to_more_than_the_limit_is_refused()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var phone = Phone("a7k3", 1);
        using var client = new PhoneClient(phone, hub);
        await client.FindAsync();
        var lines = new StringBuilder("{\"sync\":1,\"have\":{}}\n")
            .Append(phone.Lines.Lines.Select(l => Encoding.UTF8.GetString(l.Bytes.Span)).Single())
            .Append('\n');
        for (var i = 0; i < 9; i++)
            lines.Append(' ', 1 << 20).Append('\n'); // blank lines: nothing to keep
        using var answer = await client.SendAsync(Encoding.UTF8.GetBytes(lines.ToString()));
        await ProblemAsync(answer, HttpStatusCode.RequestEntityTooLarge, "longer than 8388608 bytes");
        await client.SyncAsync();
        Assert.Equal(1, phone.Hint!.Have["a7k3"].Length); // what came before was kept
    }

    [Fact]
    public async Task Packing_that_is_broken_is_refused_and_lines_before_it_are_kept()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var phone = Phone("a7k3", 2_000);
        using var client = new PhoneClient(phone, hub);
        await client.FindAsync();
        var plain = Link.Bytes(Outgoing.To(phone.Hint, phone.Lines));
        using var stream = new MemoryStream();
        using (var gzip = new System.IO.Compression.GZipStream(stream, System.IO.Compression.CompressionLevel.Fastest, leaveOpen: true))
            gzip.Write(plain);
        var packed = stream.ToArray();
        packed.AsSpan(packed.Length * 3 / 4, 40).Fill(0xFF);
        using var answer = await client.SendAsync(packed, "", r => r.Content!.Headers.ContentEncoding.Add("gzip"), plain);
        await ProblemAsync(answer, HttpStatusCode.BadRequest, "packing");
        phone.Hint = null;
        await client.SyncAsync();
        Assert.InRange(phone.Hint!.Have["a7k3"].Length, 1, 1_999);
    }

    [Fact]
    public async Task A_casualty_that_nobody_named_is_not_found()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = new PhoneClient(Phone("a7k3", 1), hub) { Casualty = "00000000000000000000000000000000" };
        using var answer = await client.SendAsync(Link.Bytes(Outgoing.To(null, new LineSet())));
        await ProblemAsync(answer, HttpStatusCode.NotFound, "no such casualty");
    }

    [Fact]
    public async Task Roots_of_two_casualties_are_answered_with_both_and_broken_ones_with_their_place()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var (one, other) = (Phone("a7k3", 1), Phone("n95q2x", 1));
        using var first = new PhoneClient(one, hub);
        using var second = new PhoneClient(other, hub);
        await first.FindAsync();
        await second.FindAsync();
        var both = Roots.Of(one.Lines.Lines.Concat(other.Lines.Lines));
        var (status, body) = await first.FindAsync(JsonSerializer.Serialize(new { lines = both.Lines }));
        Assert.Equal(HttpStatusCode.Conflict, status);
        Assert.Contains(first.Casualty, body, StringComparison.Ordinal);
        Assert.Contains(second.Casualty, body, StringComparison.Ordinal);
        (status, body) = await first.FindAsync("{\"lines\":[\"12\"]}");
        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains("body:1:11: a line has to be a hash", body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_asks_too_often_is_told_when_to_ask_again()
    {
        await using var hub = await HubOverLoopback.StartAsync(o => o with { MostPerSecond = 1 });
        using var client = new PhoneClient(Phone("a7k3", 1), hub);
        await client.FindAsync();
        var statuses = new List<HttpStatusCode>();
        for (var i = 0; i < 30; i++)
        {
            using var answer = await client.SendAsync(Link.Bytes(Outgoing.To(null, new LineSet())));
            statuses.Add(answer.StatusCode);
            if (answer.StatusCode == HttpStatusCode.TooManyRequests)
                Assert.InRange(answer.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 60);
        }

        Assert.All(statuses.Take(10), s => Assert.Equal(HttpStatusCode.OK, s));
        Assert.Contains(HttpStatusCode.TooManyRequests, statuses);
    }

    [Fact]
    public async Task Pages_of_elsewhere_may_not_ask()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = new PhoneClient(Phone("a7k3", 1), hub) { Casualty = "x" };
        using var answer = await client.SendAsync([], "", r => r.Headers.Add("Origin", "https://evil.example"));
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact]
    public async Task Without_a_folder_for_records_there_is_no_such_route()
    {
        await using var hub = new HubOverLoopback();
        hub.Options = hub.Options with { Sync = null };
        await hub.StartAgainAsync();
        using var client = new HttpClient();
        using var nothing = new ByteArrayContent([]);
        using var answer = await client.PostAsync(
            new Uri($"http://127.0.0.1:{hub.Port}/hub/casualties/x/sync"),
            nothing,
            TestContext.Current.CancellationToken
        );
        Assert.Contains(answer.StatusCode, new[] { HttpStatusCode.NotFound, HttpStatusCode.MethodNotAllowed });
        var page = hub.Options.AppFolder;
        Assert.Null(HubOptions.From(["--app", page, "--port", "20001"], _ => null)!.Sync);
        Assert.Equal("/r", HubOptions.From(["--app", page, "--port", "20001", "--records", "/r"], _ => null)!.Sync!.Folder);
    }

    private static async Task ProblemAsync(HttpResponseMessage answer, HttpStatusCode status, string reason)
    {
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(status == answer.StatusCode, $"{answer.StatusCode}: {text}");
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains(reason, text, StringComparison.Ordinal);
    }
}
