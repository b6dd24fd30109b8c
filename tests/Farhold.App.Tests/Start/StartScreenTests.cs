namespace Farhold.App.Tests.Start;

public class StartScreenTests : CareTest
{
    [Fact]
    public async Task The_list_counts_the_entries_made_since_the_app_was_started()
    {
        Preferences.CautionsRead = true;
        await StartAsync();
        await LogAsync(0, new Payload.NoteWritten("calm"));
        var list = Render<StartScreen>();
        list.WaitForAssertion(() => Assert.EndsWith("2 entries", list.Find(".list a").TextContent.Trim(), StringComparison.Ordinal));
    }
}
