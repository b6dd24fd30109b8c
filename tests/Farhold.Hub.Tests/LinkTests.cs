using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests;

public class LinkTests(Browser browser) : PhoneTest(browser)
{
    [Fact]
    public async Task Every_entry_holds_the_digest_of_the_line_this_phone_wrote_before_it()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.LogNoteAsync("två \"ord\", 雪 😀");
        await Page.LogNoteAsync("second");
        var lines = await Page.EvaluateAsync<string[]>(
            "async () => (await (await import('/store.js')).lines(location.pathname.split('/')[2])).split('\\n').slice(0, -1)"
        );
        Assert.Equal(3, lines.Length);
        Assert.False(JsonDocument.Parse(lines[0]).RootElement.TryGetProperty("previous", out _));
        for (var i = 1; i < lines.Length; i++)
            Assert.Equal(
                Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(lines[i - 1]))),
                JsonDocument.Parse(lines[i]).RootElement.GetProperty("previous").GetString()
            );
    }

    [Fact]
    public async Task The_app_s_digest_is_that_of_the_browser_for_every_length_around_a_block() =>
        Assert.True(
            await Page.EvaluateAsync<bool>(
                """
                async () => {
                  const { digest } = await import('/digest.js');
                  for (let length = 0; length < 300; length++) {
                    const bytes = crypto.getRandomValues(new Uint8Array(length));
                    const own = Array.from(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)), b => b.toString(16).padStart(2, '0')).join('');
                    if (own !== digest(bytes)) return false;
                  }
                  return true;
                }
                """
            )
        );
}
