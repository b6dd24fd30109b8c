using System.IO.Compression;
using System.Net;
using System.Runtime.CompilerServices;
using System.Text.Json;

namespace Farhold.Sync.Tests.Hub;

/// <summary>A phone's side of the route, as small as it can be. A phone is enrolled when it first asks, once for each side.</summary>
/// <param name="through">The port of a link to the hub; 0: the hub's own.</param>
internal sealed class PhoneClient(Side phone, HubOverLoopback hub, int through = 0, Signer? signer = null) : IDisposable
{
    private static readonly ConditionalWeakTable<Side, Task<Signer>> Signers = [];

    private readonly int port = through == 0 ? hub.Port : through;

    private readonly HttpClient client = new(new SocketsHttpHandler { AutomaticDecompression = DecompressionMethods.None })
    {
        BaseAddress = new Uri($"http://127.0.0.1:{(through == 0 ? hub.Port : through)}"),
        Timeout = TimeSpan.FromMinutes(3),
    };

    public string Casualty { get; set; } = "";

    /// <summary>Bytes of the last body, as sent.</summary>
    public int Sent { get; private set; }

    /// <summary>Bytes of the last answer's body, as received.</summary>
    public int Received { get; private set; }

    public async Task FindAsync()
    {
        var roots = Roots.Of(phone.Lines.Lines);
        var (status, body) = await FindAsync(JsonSerializer.Serialize(new { lines = roots.Lines, identities = roots.Identities }));
        Assert.Equal(HttpStatusCode.OK, status);
        Casualty = JsonDocument.Parse(body).RootElement.GetProperty("id").GetString()!;
    }

    public async Task<(HttpStatusCode Status, string Body)> FindAsync(string json)
    {
        using var request = (await SignerAsync()).Request(HttpMethod.Post, "/hub/casualties/find", port, json);
        using var answer = await client.SendAsync(request);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }

    /// <summary>One exchange.</summary>
    public async Task<HttpStatusCode> SyncAsync(int most = SyncLimits.MaxText / 2)
    {
        using var answer = await SendAsync(Link.Bytes(Outgoing.To(phone.Hint, phone.Lines, most)));
        var body = await answer.Content.ReadAsByteArrayAsync();
        Received = body.Length;
        if (answer.StatusCode == HttpStatusCode.OK)
            phone.Hint = Link.Take(phone.Lines, Unpacked(answer, body)) ?? phone.Hint;
        return answer.StatusCode;
    }

    /// <param name="plain">The message, where what is sent is packed already.</param>
    public async Task<HttpResponseMessage> SendAsync(
        byte[] message,
        string encoding = "gzip",
        Action<HttpRequestMessage>? change = null,
        byte[]? plain = null
    )
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/hub/casualties/{Casualty}/sync")
        {
            Content = new ByteArrayContent(encoding == "gzip" ? Packed(message) : message),
        };
        Sent = (int)request.Content.Headers.ContentLength!;
        request.Content.Headers.ContentType = new("application/jsonl");
        if (encoding.Length > 0)
            request.Content.Headers.ContentEncoding.Add(encoding);
        request.Headers.AcceptEncoding.ParseAdd("br, gzip");
        (await SignerAsync()).Sign(request, port, Signer.HeadOf(plain ?? message));
        change?.Invoke(request);
        return await client.SendAsync(request);
    }

    /// <summary>The key of this phone, enrolled as a carer of the usual team.</summary>
    public Task<Signer> SignerAsync() => signer is not null ? Task.FromResult(signer) : Signers.GetValue(phone, _ => hub.EnrolAsync());

    public void Dispose() => client.Dispose();

    private static byte[] Packed(byte[] message)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
            gzip.Write(message);
        return packed.ToArray();
    }

    private static byte[] Unpacked(HttpResponseMessage answer, byte[] body)
    {
        using var packed = new MemoryStream(body);
        using Stream unpacking =
            answer.Content.Headers.ContentEncoding.Single() == "br"
                ? new BrotliStream(packed, CompressionMode.Decompress)
                : new GZipStream(packed, CompressionMode.Decompress);
        using var plain = new MemoryStream();
        unpacking.CopyTo(plain);
        return plain.ToArray();
    }
}
