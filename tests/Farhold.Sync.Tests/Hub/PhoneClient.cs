using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;

namespace Farhold.Sync.Tests.Hub;

/// <summary>A phone's side of the route, as small as it can be.</summary>
internal sealed class PhoneClient(Side phone, int port) : IDisposable
{
    private readonly HttpClient client = new(new SocketsHttpHandler { AutomaticDecompression = DecompressionMethods.None })
    {
        BaseAddress = new Uri($"http://127.0.0.1:{port}"),
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
        using var content = new StringContent(json, new MediaTypeHeaderValue("application/json"));
        using var answer = await client.PostAsync(new Uri("/hub/casualties/find", UriKind.Relative), content);
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

    public async Task<HttpResponseMessage> SendAsync(byte[] message, string encoding = "gzip", Action<HttpRequestMessage>? change = null)
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
        change?.Invoke(request);
        return await client.SendAsync(request);
    }

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
