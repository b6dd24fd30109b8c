namespace Farhold.App.Tests.Log;

public class LogScreenTests : CareTest
{
    [Fact]
    public async Task An_entry_is_withdrawn_with_a_reason_and_stays_visible()
    {
        await TightAsync();
        await LogAsync(3, new Payload.NoteWritten("asks for water"));
        var log = Show<LogScreen>();
        Tap(log, "Change: Note: asks for water");
        Tap(log, "Withdraw");
        Tap(log, "Withdraw the entry");
        Assert.Contains("Say why", Text(log.Find("[role=alert]")), StringComparison.Ordinal);
        Choose(log, "Why", "Entered twice");
        Tap(log, "Withdraw the entry");
        var entry = log.FindAll("li.entry").Single(e => Text(e).Contains("asks for water", StringComparison.Ordinal));
        Assert.Contains("Withdrawn", Text(entry), StringComparison.Ordinal);
        Assert.Contains("Entered twice", Text(entry), StringComparison.Ordinal);
        Assert.Empty(State.Of(Kind.Note));
    }

    [Fact]
    public async Task A_correction_is_shown_at_the_entry_it_corrects()
    {
        await StartAsync();
        await LogAsync(5, new Payload.SignsTaken { HeartRate = 188 });
        await LogAsync(0, new Payload.EntryAmended(new("7k3f", 2), JsonText.Of("""{"heartRate":88}""")));
        var entry = Show<LogScreen>().FindAll("li.entry").Single(e => Text(e).Contains("heart rate 88 /min", StringComparison.Ordinal));
        Assert.Contains("heart rate 188 becomes 88", Text(entry), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_newest_comes_first_and_a_long_log_is_shown_in_parts()
    {
        await StartAsync();
        for (var i = 60; i > 0; i--)
            await LogAsync(i, new Payload.NoteWritten($"minute {i}"));
        var log = Show<LogScreen>();
        Assert.Equal(40, log.FindAll("li.entry").Count);
        Tap(log, "Show older entries (21)");
        Assert.Equal(61, log.FindAll("li.entry").Count);
    }
}
