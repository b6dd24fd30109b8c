namespace Farhold.App.Tests.Shell;

public class StatusStripTests : ScreenTest
{
    [Fact]
    public async Task An_entry_not_stored_is_shown_whole_until_it_is_stored()
    {
        await OpenCasualtyAsync();
        var strip = Render<StatusStrip>();
        Store.Full = true;
        await Session.AppendAsync(Session.Open!, new Payload.NoteWritten("Must not get lost"));
        strip.WaitForAssertion(() =>
            Assert.Contains("Must not get lost", strip.Find("[role=alert]").TextContent, StringComparison.Ordinal)
        );
        Assert.Single(Session.Lines);

        Store.Full = false;
        await Button(strip, "Try again").ClickAsync(new());
        strip.WaitForAssertion(() => Assert.Empty(strip.FindAll("[role=alert]")));
        Assert.Equal(2, Session.Lines.Length);
    }

    [Fact]
    public async Task The_text_of_what_is_not_stored_can_be_copied_out()
    {
        await OpenCasualtyAsync();
        var strip = Render<StatusStrip>();
        Store.Full = true;
        await Session.AppendAsync(Session.Open!, new Payload.NoteWritten("Copy me"));
        strip.WaitForAssertion(() => Button(strip, "Copy the text"));
        await Button(strip, "Copy the text").ClickAsync(new());
        Assert.Contains("\"text\":\"Copy me\"", Phone.Copied, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_clock_behind_its_own_entries_is_told_of()
    {
        await OpenCasualtyAsync();
        Time.AdjustTime(Time.GetUtcNow() - TimeSpan.FromHours(1));
        var strip = Render<StatusStrip>();
        Assert.Contains("60 min behind", strip.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }
}
