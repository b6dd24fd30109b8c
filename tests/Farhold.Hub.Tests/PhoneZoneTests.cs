using System.Globalization;
using Farhold.Hub.Tests.Harness;
using NodaTime;

namespace Farhold.Hub.Tests;

/// <summary>What the browser tells of its zone, beside the time-zone database of NodaTime, a reference library.</summary>
public class PhoneZoneTests(Browser browser)
{
    [Theory]
    [InlineData("Pacific/Auckland")]
    [InlineData("America/Anchorage")]
    [InlineData("Australia/Lord_Howe")]
    [InlineData("Asia/Tehran")]
    [InlineData("Europe/London")]
    public async Task The_browser_s_offsets_are_the_database_s(string id)
    {
        await using var server = await AppServer.StartAsync();
        await using var context = await browser.Chromium.NewContextAsync(new(Harness.Kinds.Phone) { TimezoneId = id });
        var page = await context.NewPageAsync();
        await page.GotoAsync(server.Address + "/manifest.webmanifest");
        var told = await page.EvaluateAsync<string[]>(
            "async () => { const phone = await import('/phone.js'); return [phone.timeZone(), phone.offsets()]; }"
        );

        Assert.Equal(id, told[0]);
        var zone = DateTimeZoneProviders.Tzdb[id];
        var offsets = told[1].Split(' ');
        var east = int.Parse(offsets[0], CultureInfo.InvariantCulture);
        var now = SystemClock.Instance.GetCurrentInstant();
        var changes = zone.GetZoneIntervals(now - Duration.FromDays(4 * 365), now + Duration.FromDays(600)).Skip(1).ToArray();
        foreach (var change in offsets.Skip(1).Select(c => c.Split(':')))
        {
            var at = Instant.FromUnixTimeSeconds(long.Parse(change[0], CultureInfo.InvariantCulture));
            Assert.Equal(east, zone.GetUtcOffset(at - Duration.FromSeconds(1)).Seconds);
            east = int.Parse(change[1], CultureInfo.InvariantCulture);
            Assert.Equal(east, zone.GetUtcOffset(at).Seconds);
        }

        Assert.Subset(
            offsets.Skip(1).Select(c => c.Split(':')[0]).ToHashSet(),
            changes
                .Where(c => c.WallOffset != zone.GetUtcOffset(c.Start - Duration.FromSeconds(1)))
                .Select(c => c.Start.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture))
                .ToHashSet()
        );
    }
}
