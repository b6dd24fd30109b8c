using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.First;

public class GlanceFeedTests : CareTest
{
    [Fact]
    public async Task The_picture_for_the_next_start_follows_the_verdict_and_goes_when_care_ends()
    {
        using var feed = Started();
        await TightAsync();
        var limit = Now - Duration.FromMinutes(40) + Duration.FromHours(6);
        Time.Advance(GlanceFeed.Behind.ToTimeSpan());
        var limb = Assert.Single(Kept()).GetProperty("limbs")[0];
        Assert.Equal("check-first", limb.GetProperty("verdict").GetString());
        Assert.Equal(limit.ToUnixTimeMilliseconds(), limb.GetProperty("limit").GetInt64());
        await LogAsync(0, new Payload.CareEnded(CareEnd.HandedOver));
        Time.Advance(GlanceFeed.Behind.ToTimeSpan());
        Assert.Empty(Kept());
    }

    [Fact]
    public async Task It_is_written_after_what_was_logged_is_drawn_and_within_the_second()
    {
        using var feed = Started();
        await TightAsync();
        Assert.Equal("", Phone.Get("glance"));
        Assert.True(GlanceFeed.Behind < Duration.FromSeconds(1));
        Time.Advance(GlanceFeed.Behind.ToTimeSpan());
        Assert.Equal("check-first", Verdict());
    }

    [Fact]
    public async Task More_entries_do_not_put_it_off()
    {
        using var feed = Started();
        await TightAsync();
        Time.Advance(GlanceFeed.Behind.ToTimeSpan() / 2);
        await LogAsync(0, new Payload.BleedingChecked("w1", Bleeding.Active));
        Time.Advance(GlanceFeed.Behind.ToTimeSpan() / 2);
        Assert.Equal("leave-on", Verdict());
    }

    [Fact]
    public async Task An_app_that_goes_out_of_view_writes_it_at_once()
    {
        using var feed = Started();
        await TightAsync();
        Phone.Hide();
        Assert.Equal("check-first", Verdict());
    }

    [Fact]
    public async Task Another_casualty_does_not_push_it_out()
    {
        using var feed = Started();
        await TightAsync();
        await StartAsync();
        await LogAsync(0, new Payload.NoteWritten("cold"));
        Phone.Hide();
        Assert.Equal(2, Kept().Count);
    }

    private GlanceFeed Started()
    {
        var feed = new GlanceFeed(Desk, Session, Services.GetRequiredService<Glance>(), Texts, Phone, Clock, Time);
        feed.Start();
        return feed;
    }

    private string? Verdict() => Assert.Single(Kept()).GetProperty("limbs")[0].GetProperty("verdict").GetString();

    private List<JsonElement> Kept() => [.. JsonDocument.Parse(Phone.Get("glance")).RootElement.GetProperty("casualties").EnumerateArray()];
}
