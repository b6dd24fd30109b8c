using System.Net;
using System.Security.Cryptography;
using System.Text;
using Farhold.Hub.Access;

namespace Farhold.Sync.Tests.Hub;

/// <summary>Who signed a request: against the standard's own example, and against whoever would like to be somebody else.</summary>
public sealed class SignatureTests
{
    /// <summary>
    /// RFC 9421, appendix B.2.4, with the key of B.1.3: from memory, and proven by itself, since a wrong letter anywhere would not verify.
    /// </summary>
    [Fact]
    public void The_example_of_the_standard_verifies()
    {
        const string Signed = """
            "@status": 200
            "content-type": application/json
            "content-digest": sha-512=:mEWXIS7MaLRuGgxOBdODa3xqM1XdEvxoYhvlCFJ41QJgJc4GTsPp29l5oGX69wWdXymyU0rjJuahq4l5aGgfLQ==:
            "content-length": 23
            "@signature-params": ("@status" "content-type" "content-digest" "content-length");created=1618884473;keyid="test-key-ecc-p256"
            """;
        const string Value = "wNmSUAhwb5LxtOtOpNa6W5xj067m5hFrj0XQ4fvpaCLx0NKocgPquLgyahnzDnDAUy5eCdlYUEkLIj+32oiasw==";
        using var known = ECDsa.Create();
        known.ImportFromPem(
            """
            -----BEGIN PUBLIC KEY-----
            MFkwEwYHKoZIzj0CAQYIKoZIzj0DAQcDQgAEqIVYZVLCrPZHGHjP17CTW0/+D9Lf
            w0EkjqF7xB4FivAxzic30tMM4GF+hR6Dxh71Z50VGGdldkkDXZCnTNnoXQ==
            -----END PUBLIC KEY-----
            """
        );
        var point = known.ExportParameters(false).Q;
        byte[] key = [4, .. point.X!, .. point.Y!];
        var signature = new RequestSignature([], default, "", "", "", Convert.FromBase64String(Value));
        Assert.True(signature.IsBy(key, Signed.ReplaceLineEndings("\n")));
        Assert.False(signature.IsBy(key, Signed.ReplaceLineEndings("\n").Replace("23", "24", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_is_no_point_of_the_curve_is_no_key()
    {
        using var signer = new Signer();
        using (var good = RequestSignature.ImportOf(signer.Public))
            Assert.NotNull(good);
        var off = signer.Public;
        off[^1] ^= 1;
        Assert.Null(RequestSignature.ImportOf(off));
        Assert.Null(RequestSignature.ImportOf(signer.Public.AsSpan(0, 64)));
        Assert.Null(RequestSignature.ImportOf(new byte[65]));
    }

    [Fact]
    public async Task A_request_that_is_not_signed_by_an_enrolled_key_is_refused_whatever_is_wrong_with_it()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var signer = await hub.EnrolAsync();
        using var stranger = new Signer();
        using var client = Client(hub);
        await OfAsync(client, signer.Request(HttpMethod.Get, "/hub/me", hub.Port), HttpStatusCode.OK, "\"role\":\"carer\"");
        await OfAsync(client, new HttpRequestMessage(HttpMethod.Get, "/hub/me"), HttpStatusCode.Unauthorized, "signature");
        await OfAsync(client, stranger.Request(HttpMethod.Get, "/hub/me", hub.Port), HttpStatusCode.Unauthorized, "unknown-device");

        // Signed for another address, another hub, another method.
        using (var moved = new HttpRequestMessage(HttpMethod.Get, "/hub/me"))
        {
            Copy(signer.Request(HttpMethod.Get, "/hub/devices", hub.Port), moved);
            await OfAsync(client, moved, HttpStatusCode.Unauthorized, "does not fit");
        }

        await OfAsync(client, signer.Request(HttpMethod.Get, "/hub/me", hub.Port + 1), HttpStatusCode.Unauthorized, "does not fit");
        using (var other = new HttpRequestMessage(HttpMethod.Post, "/hub/invitations"))
        {
            Copy(signer.Request(HttpMethod.Get, "/hub/invitations", hub.Port), other);
            other.Content = new StringContent("{}", Encoding.UTF8, "application/json");
            await OfAsync(client, other, HttpStatusCode.Unauthorized, "does not cover");
        }

        // The key of one in the name of another.
        using (var borrowed = new HttpRequestMessage(HttpMethod.Get, "/hub/me"))
        {
            foreach (var (name, value) in stranger.Headers("GET", $"127.0.0.1:{hub.Port}", "/hub/me", []))
                borrowed.Headers.TryAddWithoutValidation(name, value.Replace(stranger.Thumb, signer.Thumb, StringComparison.Ordinal));
            await OfAsync(client, borrowed, HttpStatusCode.Unauthorized, "does not fit");
        }
    }

    [Fact]
    public async Task A_body_that_was_changed_or_a_request_that_is_repeated_is_refused()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var signer = await hub.EnrolAsync(HubRole.Coordinator);
        using var client = Client(hub);
        using (var changed = signer.Request(HttpMethod.Post, "/hub/invitations", hub.Port, "{\"role\":\"carer\"}"))
        {
            changed.Content = new StringContent("{\"role\":\"adviser\"}", Encoding.UTF8, "application/json");
            await OfAsync(client, changed, HttpStatusCode.Unauthorized, "not the one that was signed");
        }

        var headers = signer.Headers(
            "POST",
            $"127.0.0.1:{hub.Port}",
            "/hub/invitations",
            [Signer.DigestOf("{\"role\":\"carer\"}"u8)],
            "aaaaaaaaaaaaaaaaaaaaaaaa"
        );
        for (var i = 0; i < 2; i++)
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, "/hub/invitations")
            {
                Content = new StringContent("{\"role\":\"carer\"}", Encoding.UTF8, "application/json"),
            };
            foreach (var (name, value) in headers)
                request.Headers.TryAddWithoutValidation(name, value);
            await OfAsync(client, request, i == 0 ? HttpStatusCode.Created : HttpStatusCode.Unauthorized, i == 0 ? "code" : "repeated");
        }
    }

    [Fact]
    public async Task A_phone_whose_clock_is_wrong_is_told_the_hubs_time_and_comes_in_by_it()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var signer = await hub.EnrolAsync();
        using var client = Client(hub);
        signer.Off = TimeSpan.FromDays(-1);
        await OfAsync(client, signer.Request(HttpMethod.Get, "/hub/me", hub.Port), HttpStatusCode.Unauthorized, "\"code\":\"clock\"");
        signer.Off = TimeSpan.FromMinutes(4);
        await OfAsync(client, signer.Request(HttpMethod.Get, "/hub/me", hub.Port), HttpStatusCode.OK, "\"now\"");
        signer.Off = TimeSpan.FromMinutes(6);
        await OfAsync(client, signer.Request(HttpMethod.Get, "/hub/me", hub.Port), HttpStatusCode.Unauthorized, "\"now\"");
    }

    [Fact]
    public async Task The_head_of_a_message_is_what_was_signed_and_nothing_of_another_is_kept()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var phone = new Side("a7k3") { Hint = Head.Empty };
        phone.Write("first");
        using var client = new PhoneClient(phone, hub);
        await client.FindAsync();
        var message = Link.Bytes(Outgoing.To(phone.Hint, phone.Lines));
        using (
            var forged = await client.SendAsync(
                message,
                "",
                request =>
                {
                    request.Headers.Remove("farhold-head");
                    request.Headers.TryAddWithoutValidation("farhold-head", Signer.HeadOf("another"u8).Item2);
                }
            )
        )
            Assert.Equal(HttpStatusCode.Unauthorized, forged.StatusCode);
        using (var swapped = await client.SendAsync([.. "{\"sync\":1,\"have\":{}}\n"u8, .. message], "", _ => { }))
            Assert.Equal(HttpStatusCode.OK, swapped.StatusCode); // its own head, signed: lines behind are taken as they are
        phone.Hint = null;
        Assert.Equal(HttpStatusCode.OK, await client.SyncAsync());
    }

    internal static HttpClient Client(HubOverLoopback hub) => new() { BaseAddress = new Uri($"http://127.0.0.1:{hub.Port}") };

    internal static async Task<string> OfAsync(HttpClient client, HttpRequestMessage request, HttpStatusCode status, string says = "")
    {
        using (request)
        using (var answer = await client.SendAsync(request, TestContext.Current.CancellationToken))
        {
            var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.True(status == answer.StatusCode, $"{request.Method} {request.RequestUri}: {answer.StatusCode} {text}");
            Assert.Contains(says, text, StringComparison.Ordinal);
            return text;
        }
    }

    private static void Copy(HttpRequestMessage from, HttpRequestMessage to)
    {
        using (from)
            foreach (var (name, values) in from.Headers)
                to.Headers.TryAddWithoutValidation(name, values);
    }
}
