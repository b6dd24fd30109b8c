using System.Text.Json;
using Farhold.App.Care;
using Farhold.App.First;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Care;

public class GlanceFeedTests : CareTest
{
    [Fact]
    public async Task The_picture_for_the_next_start_follows_the_verdict_and_goes_when_care_ends()
    {
        using var feed = new GlanceFeed(Desk, Session, Services.GetRequiredService<Glance>(), Clock);
        feed.Start();
        await TightAsync();
        var limb = Assert.Single(Kept()).GetProperty("limbs")[0];
        Assert.Equal("check-first", limb.GetProperty("verdict").GetString());
        Assert.Equal((Now - Duration.FromMinutes(40) + Duration.FromHours(6)).ToUnixTimeMilliseconds(), limb.GetProperty("limit").GetInt64());
        await LogAsync(0, new Payload.CareEnded(CareEnd.HandedOver));
        Assert.Empty(Kept());
    }

    private List<JsonElement> Kept() =>
        [.. JsonDocument.Parse(Phone.Get("glance")).RootElement.GetProperty("casualties").EnumerateArray()];
}
