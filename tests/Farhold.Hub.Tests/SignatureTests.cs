using System.Text;
using Farhold.Hub.Tests.Harness;
using Farhold.Signing;
using Microsoft.Playwright;
using NodaTime;

namespace Farhold.Hub.Tests;

/// <summary>The browser holds the signatures that the framework holds, and a phone believes what a trusted issuer signed.</summary>
public class SignatureTests(Browser browser) : PhoneTest(browser)
{
    [Fact]
    public async Task The_browser_holds_what_the_vectors_hold()
    {
        var vectors = await File.ReadAllTextAsync(
            Path.Combine(Published.Root, "tests", "Farhold.Tests", "cases", "signatures", "vectors.json"),
            TestContext.Current.CancellationToken
        );
        var wrong = await Page.EvaluateAsync<string[]>(
            """
            async vectors => {
              const { holds } = await import('/signature.js');
              const plain = text => text.replaceAll('-', '+').replaceAll('_', '/');
              const message = text => btoa(String.fromCharCode(...new TextEncoder().encode(text)));
              const wrong = [];
              for (const v of JSON.parse(vectors))
                if (await holds(plain(v.key), message(v.message), plain(v.signature)) !== v.holds) wrong.push(v.what);
              return wrong;
            }
            """,
            vectors
        );
        Assert.Empty(wrong);
    }

    [Fact]
    public async Task A_phone_takes_a_code_compares_its_digits_and_believes_what_that_key_signed()
    {
        using var key = Assert
            .IsType<Read<SigningKey>.Usable>(SigningKey.New("Vesterdal rescue (invented)", "medical director", "key"))
            .Value;
        var file = Encoding.UTF8.GetBytes(
            """{"local":"vesterdal","version":"1","title":"Vesterdal winter","over":"farhold-base","clock":{"limit":"PT5H","soon":"PT1H"}}"""
        );
        var now = SystemClock.Instance.GetCurrentInstant();
        var shipped = ShippedProtocol.Protocol;
        var signature = key.Sign(
                new(
                    key.Code.Digits,
                    $"{shipped.Id} {shipped.Version}",
                    1,
                    Whole(now - Duration.FromDays(1)),
                    Whole(now + Duration.FromDays(1))
                ),
                file
            )
            .Write();

        await Page.ReadCautionsAsync();
        await Page.GotoAsync(Server.Address + "/prepare");
        await Page.GetByLabel("Or paste the code as text").FillAsync(Encoding.UTF8.GetString(key.Code.Write()));
        await Page.Button("Read the code").TapAsync();
        await Assertions.Expect(Page.GetByText(key.Code.Digits)).ToBeVisibleAsync();
        await Page.Button("They match: trust this issuer").TapAsync();

        await Page.GotoAsync(Server.Address + "/phone");
        await TakeAsync([.. file, (byte)' '], signature);
        await Assertions.Expect(Page.GetByText("the signature does not fit")).ToBeVisibleAsync();
        await TakeAsync(file, signature);
        await Assertions.Expect(Page.GetByText("the time limit is 5 h 00 min instead of 6 h 00 min")).ToBeVisibleAsync();
        await Page.Button("I have read it: use it").TapAsync();

        const string Banner = "LOOSENED by the local protocol: help counts as soon within 1 h 00 min instead of 2 h 00 min";
        await Assertions.Expect(Page.GetByText(Banner)).ToBeVisibleAsync();
        await Page.GotoAsync(Server.Address + "/prepare/forms"); // started anew, checked anew
        await Assertions.Expect(Page.Locator(".local-strip").GetByText(Banner)).ToBeVisibleAsync();
    }

    private static Instant Whole(Instant at) => Instant.FromUnixTimeSeconds(at.ToUnixTimeSeconds());

    private Task TakeAsync(byte[] file, byte[] signature) =>
        Page.GetByLabel("Import a local protocol")
            .SetInputFilesAsync([
                new FilePayload
                {
                    Name = "vesterdal.json",
                    MimeType = "application/json",
                    Buffer = file,
                },
                new FilePayload
                {
                    Name = "vesterdal.json.sig",
                    MimeType = "application/octet-stream",
                    Buffer = signature,
                },
            ]);
}
