using System.Globalization;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Farhold.Sync.Tests.Hub;

/// <summary>A device's key, and requests signed by it as RFC 9421 has it: written apart from the hub's own reader of signatures.</summary>
internal sealed class Signer : IDisposable
{
    private readonly ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);

    public byte[] Public
    {
        get
        {
            var point = key.ExportParameters(false).Q;
            return [4, .. point.X!, .. point.Y!];
        }
    }

    public string Thumb => Convert.ToHexStringLower(SHA256.HashData(Public));

    /// <summary>How far this device's clock is off.</summary>
    public TimeSpan Off { get; set; }

    public void Sign(HttpRequestMessage request, int port, params (string Name, string Value)[] cover)
    {
        foreach (var (name, value) in Headers(request.Method.Method, $"127.0.0.1:{port}", request.RequestUri!.ToString(), cover))
            request.Headers.TryAddWithoutValidation(name, value);
    }

    /// <summary>The headers of a signed request; <paramref name="cover"/> names those that stand for its body.</summary>
    public (string Name, string Value)[] Headers(
        string method,
        string authority,
        string path,
        (string Name, string Value)[] cover,
        string? nonce = null
    )
    {
        var names = string.Join(' ', ((string[])["@method", "@authority", "@path", .. cover.Select(c => c.Name)]).Select(n => $"\"{n}\""));
        var created = DateTimeOffset.UtcNow.Add(Off).ToUnixTimeSeconds();
        nonce ??= Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(12));
        var parameters = string.Create(
            CultureInfo.InvariantCulture,
            $"({names});created={created};keyid=\"{Thumb}\";nonce=\"{nonce}\";alg=\"ecdsa-p256-sha256\""
        );
        var signed = new StringBuilder($"\"@method\": {method}\n\"@authority\": {authority}\n\"@path\": {path}\n");
        foreach (var (name, value) in cover)
            signed.Append(CultureInfo.InvariantCulture, $"\"{name}\": {value}\n");
        signed.Append(CultureInfo.InvariantCulture, $"\"@signature-params\": {parameters}");
        var signature = key.SignData(Encoding.UTF8.GetBytes(signed.ToString()), HashAlgorithmName.SHA256);
        return [.. cover, ("Signature-Input", "sig=" + parameters), ("Signature", $"sig=:{Convert.ToBase64String(signature)}:")];
    }

    public static (string, string) DigestOf(ReadOnlySpan<byte> body) =>
        ("content-digest", $"sha-256=:{Convert.ToBase64String(SHA256.HashData(body))}:");

    public static (string, string) HeadOf(ReadOnlySpan<byte> message)
    {
        var end = message.IndexOf((byte)'\n');
        return ("farhold-head", $"sha-256=:{Convert.ToBase64String(SHA256.HashData(end < 0 ? message : message[..end]))}:");
    }

    /// <summary>A signed request with a JSON body, or none.</summary>
    public HttpRequestMessage Request(HttpMethod method, string path, int port, string? json = null)
    {
        var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative));
        if (json is null && (method == HttpMethod.Get || method == HttpMethod.Delete))
        {
            Sign(request, port);
            return request;
        }

        var body = Encoding.UTF8.GetBytes(json ?? "");
        request.Content = new ByteArrayContent(body);
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        Sign(request, port, DigestOf(body));
        return request;
    }

    /// <summary>Uses the code of an invitation.</summary>
    public async Task<HttpResponseMessage> EnrolAsync(HttpClient client, int port, string code, string device, string name = "a phone")
    {
        var json = JsonSerializer.Serialize(
            new
            {
                code,
                key = Convert.ToBase64String(Public),
                device,
                name,
            }
        );
        return await client.SendAsync(Request(HttpMethod.Post, "/hub/devices", port, json));
    }

    public void Dispose() => key.Dispose();
}
