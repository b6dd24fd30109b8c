using System.Globalization;
using System.Net;
using System.Text;

namespace Farhold.Sync.Tests.Hub;

/// <summary>What a slow link carries: sizes are exact and asserted; times over the emulated link have room for a loaded machine.</summary>
public sealed class BytesAndSecondsTests(ITestOutputHelper output)
{
    /// <summary>2G as of hub.md's measurement: 40 kbit/s up, 80 down, 300 ms each way.</summary>
    private static readonly (int, int) Slow = (40_000, 80_000);

    /// <summary>The demo's record over and over, with other numbers and times: 2,000 chained entries of its devices.</summary>
    private static Side Demo(int entries)
    {
        var phone = new Side("none") { Hint = Head.Empty };
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "demo", "hollvika.jsonl"));
        var (numbers, last) = (new Dictionary<string, int>(), new Dictionary<string, string>());
        var random = new Random(11);
        for (var i = 0; i < entries; i++)
        {
            var line = lines[i % lines.Length];
            var id = EntryId.TryParse(line.AsSpan(7, line.IndexOf('"', 7) - 7))!.Value;
            var number = numbers[id.Device] = numbers.GetValueOrDefault(id.Device) + 1;
            var rest = line[(line.IndexOf('"', 7) + 1)..];
            if (rest.StartsWith(",\"previous\":\"", StringComparison.Ordinal))
                rest = rest[(13 + 64 + 1)..];
            rest = Jittered(rest, random);
            var link = last.TryGetValue(id.Device, out var before)
                ? $",\"previous\":\"{LineHash.Of(Encoding.UTF8.GetBytes(before))}\""
                : "";
            var now = string.Create(CultureInfo.InvariantCulture, $"{{\"id\":\"{id.Device}-{number}\"{link}{rest}");
            last[id.Device] = now;
            phone.Lines.Add(Encoding.UTF8.GetBytes(now));
        }

        return phone;
    }

    /// <summary>Seconds and small figures drawn anew, or a line that is repeated would pack too well.</summary>
    private static string Jittered(string text, Random random)
    {
        var digits = text.ToCharArray();
        for (var i = 1; i < digits.Length - 1; i++)
            if (char.IsAsciiDigit(digits[i]) && digits[i - 1] is ':' && digits[i + 1] is not '"')
                digits[i] = (char)('0' + random.Next(6));
        return new(digits);
    }

    [Fact]
    public async Task A_first_sync_of_2000_entries_and_one_more_entry_keep_to_their_bytes()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var phone = Demo(2_000);
        Assert.Equal(2_000, phone.Lines.Count);
        using var client = new PhoneClient(phone, hub);
        await client.FindAsync();
        Assert.Equal(HttpStatusCode.OK, await client.SyncAsync());
        Assert.Equal(phone.Lines.Vector, phone.Hint!.Have);
        output.WriteLine(
            $"2,000 entries, {phone.Lines.Lines.Sum(l => l.Bytes.Length + 1)} bytes: body {client.Sent}, answer {client.Received}"
        );
        Assert.InRange(client.Sent, 1, 50_000);

        var device = phone.Lines.Vector.Have.First().Key;
        var before = phone.Lines.Lines.Last(l => l.Id!.Value.Device == device);
        phone.Lines.Add(
            Encoding.UTF8.GetBytes(
                $$"""{"id":"{{device}}-{{before.Id!.Value.Number + 1}}","previous":"{{before.Hash}}","happened":"2031-05-04T14:10:00Z","recorded":"2031-05-04T14:10:09Z","by":"Ane","kind":"bleeding.checked","wound":"w1","bleeding":"none"}"""
            )
        );
        Assert.Equal(HttpStatusCode.OK, await client.SyncAsync());
        Assert.Equal(phone.Lines.Vector, phone.Hint.Have);
        output.WriteLine($"one entry more: body {client.Sent}, answer {client.Received}");
        Assert.InRange(client.Sent, 1, 300);

        var anew = new Side("none") { Hint = null };
        using var other = new PhoneClient(anew, hub, signer: await client.SignerAsync()) { Casualty = client.Casualty };
        await other.SyncAsync();
        output.WriteLine($"2,001 entries down: {other.Received}");
        Assert.Equal(2_001, anew.Lines.Count);
        Assert.InRange(other.Received, 1, 50_000);
    }

    [Fact]
    public async Task Over_the_emulated_slow_link_it_keeps_to_its_seconds()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var phone = Demo(2_000);
        using (var near = new PhoneClient(phone, hub))
        {
            await near.FindAsync();
            await using var link = new BadLink(hub.Port) { Rate = Slow, Delay = TimeSpan.FromMilliseconds(300) };
            using (var far = new PhoneClient(phone, hub, link.Port) { Casualty = near.Casualty })
                output.WriteLine($"2,000 entries: {await TimeAsync(far, 15):0.0} s, {link.Up} bytes up, {link.Down} down");
            phone.Device = "late";
            phone.Write("one more entry");
            var (up, down) = (link.Up, link.Down);
            using (var far = new PhoneClient(phone, hub, link.Port) { Casualty = near.Casualty })
                output.WriteLine(
                    $"one entry, a new connection: {await TimeAsync(far, 3):0.0} s, {link.Up - up} bytes up, {link.Down - down} down"
                );
        }

        Assert.Equal(phone.Lines.Vector, phone.Hint!.Have);
    }

    private static async Task<double> TimeAsync(PhoneClient client, double most)
    {
        var clock = System.Diagnostics.Stopwatch.StartNew();
        Assert.Equal(HttpStatusCode.OK, await client.SyncAsync());
        Assert.InRange(clock.Elapsed.TotalSeconds, 0, most * 3); // three times: other tests run beside it
        return clock.Elapsed.TotalSeconds;
    }
}
