using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;
using Farhold.Hub.Access;

namespace Farhold.Sync.Tests.Hub;

/// <summary>The board over a real server: what it says of a casualty, and never milder than what is known to be missing allows.</summary>
public sealed class BoardTests
{
    private static readonly Instant Start = SystemClock.Instance.GetCurrentInstant() - Duration.FromMinutes(40);

    private int number;

    [Fact]
    public async Task A_coordinator_sees_a_limbs_verdict_as_soon_as_its_entries_arrive()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var desk = await hub.EnrolAsync(HubRole.Coordinator);
        using var client = SignatureTests.Client(hub);
        var phone = Tied();
        using var carer = new PhoneClient(phone, hub);
        await carer.FindAsync();
        using var events = await EventsAsync(client, hub, desk);
        await NextAsync(events, "all");
        Assert.Equal(HttpStatusCode.OK, await carer.SyncAsync());
        var row = await NextAsync(events, "standing", r => r.GetProperty("entries").GetInt32() == 3);
        Assert.Equal("Runa", row.GetProperty("alias").GetString());
        var limb = row.GetProperty("limbs")[0];
        Assert.Equal("left-leg", limb.GetProperty("limb").GetString());
        Assert.Equal("check-first", limb.GetProperty("verdict").GetString());
        Assert.Equal(0, row.GetProperty("missing").GetInt32());

        Write(phone, "\"kind\":\"question.asked\",\"to\":\"duty doctor\",\"text\":\"May we try?\"", 30);
        await carer.SyncAsync();
        row = await NextAsync(events, "standing", r => r.TryGetProperty("question", out _));
        Assert.Equal("May we try?", row.GetProperty("question").GetProperty("text").GetString());
        Assert.False(row.GetProperty("question").TryGetProperty("taken", out _));
    }

    /// <summary>
    /// The main point of safety: what a phone says it has and could not send holds an attempt back here, and on every other phone.
    /// </summary>
    [Fact]
    public async Task Entries_that_a_phone_could_not_send_are_known_to_be_missing_at_the_hub_and_on_the_other_phone()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var desk = await hub.EnrolAsync(HubRole.Coordinator);
        using var client = SignatureTests.Client(hub);
        var phone = Tied();
        using var carer = new PhoneClient(phone, hub);
        await carer.FindAsync();
        await carer.SyncAsync();
        var other = new Side("n95q2x") { Hint = null };
        foreach (var line in phone.Lines.Lines)
            other.Lines.Add(line.Bytes);
        using var second = new PhoneClient(other, hub) { Casualty = carer.Casualty };
        await second.FindAsync();
        await second.SyncAsync();

        // Its head says seven; no line of the last four comes.
        for (var i = 0; i < 4; i++)
            Write(phone, "\"kind\":\"note\",\"text\":\"not sent\"", 31 + i);
        var message = Link.Bytes(Outgoing.To(phone.Hint, phone.Lines));
        var head = message.AsSpan(0, message.AsSpan().IndexOf((byte)'\n') + 1).ToArray();
        using (var cut = await carer.SendAsync(head, ""))
            Assert.Equal(HttpStatusCode.OK, cut.StatusCode);
        var row = await RowAsync(client, hub, desk);
        Assert.Equal(4, row.GetProperty("missing").GetInt32());
        Assert.True(row.GetProperty("doubts").GetInt32() > 0);

        // The other phone is told so, and judges it as a gap.
        await second.SyncAsync();
        Assert.Equal(7, other.Hint!.Known["a7k3"]);
        var record = CareRecord.Of(((Read<RecordFile>.Usable)RecordReader.Read(Text(other.Lines), "record")).Value);
        var before = record.Doubts.Length;
        record.Elsewhere = KnownMissing.Here(other.Lines, [other.Hint]);
        Assert.Equal(before + 1, record.Doubts.Length);

        // It stays known when the hub is started again, and goes once the lines are there.
        await hub.StopAsync();
        await hub.StartAgainAsync();
        Assert.Equal(4, (await RowAsync(client, hub, desk)).GetProperty("missing").GetInt32());
        await carer.SyncAsync();
        Assert.Equal(
            0,
            (await RowAsync(client, hub, desk, r => r.GetProperty("entries").GetInt32() == 7)).GetProperty("missing").GetInt32()
        );
        await second.SyncAsync();
        Assert.Empty(other.Hint.Known);
    }

    [Fact]
    public async Task A_sender_is_sealed_as_far_as_its_own_lines_are_here()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var phone = Tied();
        using var signer = await hub.EnrolAsync(device: "a7k3");
        using var carer = new PhoneClient(phone, hub, signer: signer);
        await carer.FindAsync();
        await carer.SyncAsync();
        var vouched = (Vouched)hub.Services.GetService(typeof(Vouched))!;
        var seal = Assert.Single(await vouched.SealsAsync(carer.Casualty, TestContext.Current.CancellationToken));
        Assert.Equal(("a7k3", 3), (seal.Device, seal.Number));
        Assert.Contains(RequestSignature.Digest(seal.Head), seal.Base, StringComparison.Ordinal);
        var signature = new RequestSignature([], default, "", "", "", seal.Signature);
        Assert.True(signature.IsBy(signer.Public, seal.Base));
    }

    [Fact]
    public async Task Who_is_let_out_hears_nothing_more_of_a_stream_that_is_open()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var owner = await hub.EnrolAsync(HubRole.Owner);
        using var desk = await hub.EnrolAsync(HubRole.Coordinator);
        using var client = SignatureTests.Client(hub);
        var phone = Tied();
        using var carer = new PhoneClient(phone, hub);
        await carer.FindAsync();
        using var events = await EventsAsync(client, hub, desk);
        await NextAsync(events, "all");
        await SignatureTests.OfAsync(
            client,
            owner.Request(HttpMethod.Post, $"/hub/devices/{desk.Thumb}/revoke", hub.Port, "{}"),
            HttpStatusCode.NoContent
        );
        await carer.SyncAsync();
        Assert.DoesNotContain("Runa", await events.ReadToEndAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    private static async Task<StreamReader> EventsAsync(HttpClient client, HubOverLoopback hub, Signer desk)
    {
        var answer = await client.SendAsync(
            desk.Request(HttpMethod.Get, "/hub/watch", hub.Port),
            HttpCompletionOption.ResponseHeadersRead,
            TestContext.Current.CancellationToken
        );
        return new(await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken));
    }

    /// <summary>A casualty opened 40 minutes ago with a tourniquet on the left leg.</summary>
    private Side Tied()
    {
        var phone = new Side("a7k3") { Hint = Head.Empty };
        Write(phone, "\"kind\":\"casualty.opened\",\"alias\":\"Runa\",\"casualty\":\"4ovs6zt3mbqe5dxhcwkn2rjayu\"", 0);
        Write(phone, "\"kind\":\"wound.found\",\"wound\":\"w1\",\"limb\":\"left-leg\",\"nature\":\"bleeding\"", 1);
        Write(
            phone,
            "\"kind\":\"tourniquet.tightened\",\"tourniquet\":\"t1\",\"limb\":\"left-leg\",\"wounds\":[\"w1\"],\"type\":\"windlass\"",
            2
        );
        return phone;
    }

    private void Write(Side phone, string what, int minute)
    {
        var at = WrittenInstant.Write(Start + Duration.FromMinutes(minute));
        phone.Lines.Add(
            Encoding.UTF8.GetBytes(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{{\"id\":\"{phone.Device}-{++number}\",\"happened\":\"{at}\",\"recorded\":\"{at}\",\"by\":\"Ane\",{what}}}"
                )
            )
        );
    }

    private static byte[] Text(LineSet lines) => [.. lines.Lines.SelectMany(l => (IEnumerable<byte>)[.. l.Bytes.ToArray(), (byte)'\n'])];

    /// <summary>The one casualty on the board, once it is as it should be: the board follows within a moment.</summary>
    private static async Task<JsonElement> RowAsync(
        HttpClient client,
        HubOverLoopback hub,
        Signer desk,
        Func<JsonElement, bool>? until = null
    )
    {
        for (var i = 0; ; i++)
        {
            var all = await SignatureTests.OfAsync(client, desk.Request(HttpMethod.Get, "/hub/casualties", hub.Port), HttpStatusCode.OK);
            var row = JsonDocument.Parse(all).RootElement[0];
            if ((until ?? (r => r.GetProperty("missing").GetInt32() > 0))(row) || i == 200)
                return row;
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }
    }

    private static async Task<JsonElement> NextAsync(StreamReader events, string name, Func<JsonElement, bool>? fits = null)
    {
        while (await events.ReadLineAsync(TestContext.Current.CancellationToken) is { } line)
        {
            if (line != $"event: {name}")
                continue;
            var data = JsonDocument.Parse((await events.ReadLineAsync(TestContext.Current.CancellationToken))![6..]).RootElement;
            if (fits?.Invoke(data) != false)
                return data;
        }

        throw new EndOfStreamException($"no {name}");
    }
}
