namespace Farhold.App.Tests.WayOut;

public class PositionScreenTests : LimbTest
{
    private Fix Good => new(FixState.Found, 61.2057, 8.41224, 7.2, 1043.6, Now);

    [Theory]
    [InlineData(FixState.Waiting, "Looking for satellites.")]
    [InlineData(FixState.Refused, "does not let Farhold know")]
    [InlineData(FixState.Unavailable, "location is switched off, or too little sky")]
    [InlineData(FixState.None, "gives no positions to the app")]
    public async Task Without_a_position_it_says_why_and_offers_to_type_it(FixState state, string said)
    {
        var screen = await ShownAsync(new(state));
        Assert.Contains(said, screen.Find("[role=status].notice").TextContent, StringComparison.Ordinal);
        Assert.Contains(screen.FindAll("a"), a => a.GetAttribute("href")!.EndsWith("enter/position.noted", StringComparison.Ordinal));
        Assert.Empty(screen.FindAll(".dock button"));
    }

    [Fact]
    public async Task What_was_found_is_logged_as_the_phone_found_it_and_the_receiver_stops()
    {
        var screen = await ShownAsync(Good);
        Assert.True(Positions.Runs);
        Assert.Contains("61° 12.342′ N 008° 24.734′ E", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("32V", screen.Markup, StringComparison.Ordinal);
        Button(screen, Texts.PositionLog(Texts.Metres(8))).Click();
        Assert.Equal(new Payload.PositionNoted(61.2057, 8.41224, 8, 1044), Last<Payload.PositionNoted>());
        await DisposeComponentsAsync();
        Assert.False(Positions.Runs);
    }

    [Fact]
    public async Task An_old_one_says_how_old_and_is_logged_at_its_own_time()
    {
        var old = Good with { At = Now - Duration.FromMinutes(6) };
        var screen = await ShownAsync(old);
        Assert.Contains("6 min old", screen.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Button(screen, Texts.PositionLog(Texts.Metres(8))).Click();
        Assert.Equal(Happened.At(old.At), Care.Record!.Entries.Last().Happened);
    }

    [Fact]
    public async Task A_poor_one_says_how_poor() =>
        Assert.Contains(
            "anywhere within 1.4 km",
            (await ShownAsync(Good with { AccuracyM = 1400 })).Find("[role=alert]").TextContent,
            StringComparison.Ordinal
        );

    /// <summary>Due north along a meridian, 0.01° are 1,114 m at this latitude (WGS 84, from memory).</summary>
    [Fact]
    public async Task The_last_place_logged_is_shown_with_distance_and_bearing()
    {
        await OpenAsync();
        await TellAsync(30, new Payload.PositionNoted(61.2157, 8.41224));
        var screen = await ShownAsync(Good);
        Assert.Contains("1.1 km, bearing 000° true", screen.Find(".position-mark").TextContent, StringComparison.Ordinal);
    }

    private async Task OpenAsync()
    {
        if (Session.Open is null)
            await ReadyAsync();
    }

    private async Task<IRenderedComponent<Frame>> ShownAsync(Fix fix)
    {
        await OpenAsync();
        Positions.Now = fix;
        var screen = Render<Frame>(p =>
            p.Add(
                f => f.Body,
                b =>
                {
                    b.OpenComponent<PositionScreen>(0);
                    b.AddAttribute(1, nameof(PositionScreen.Casualty), Casualty);
                    b.CloseComponent();
                }
            )
        );
        Time.Advance(TimeSpan.FromSeconds(1));
        return screen;
    }
}
