namespace Farhold.App.Tests.Services;

public class SessionTests : ScreenTest
{
    [Fact]
    public async Task An_entry_says_when_it_was_recorded_and_by_whom()
    {
        await OpenCasualtyAsync();
        await Session.AppendAsync(Session.Open!, new Payload.NoteWritten("pale"), new Happened(Now - Duration.FromMinutes(20), Now));
        Assert.Equal(
            """{"id":"7k3f-2","happened":{"earliest":"2031-05-04T01:40:00Z","latest":"2031-05-04T02:00:00Z"},"recorded":"2031-05-04T02:00:00Z","by":"Ane","kind":"note","text":"pale"}""",
            Session.Lines[1].Text
        );
    }

    [Fact]
    public async Task Every_line_of_practice_is_marked_and_no_line_of_a_real_record()
    {
        await OpenCasualtyAsync("Doll", practice: true);
        await Session.AppendAsync(Session.Open!, new Payload.EntryWithdrawn(new("7k3f", 1), "drill"));
        Assert.All(Session.Lines, l => Assert.Contains("\"practice\":true", l.Text, StringComparison.Ordinal));
        await Session.OpenAsync((await Session.NewCasualtyAsync("Tor", practice: false))!);
        Assert.All(Session.Lines, l => Assert.DoesNotContain("practice", l.Text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_casualty_whose_first_entry_is_not_stored_does_not_exist()
    {
        Preferences.Carer = "Ane";
        await Session.StartAsync();
        Store.Full = true;
        Assert.Null(await Session.NewCasualtyAsync("Tor", practice: false));
        Assert.Empty(Session.Casualties);
        Assert.Single(Session.NotStored);
        Store.Full = false;
        await Session.TryAgainAsync();
        Assert.Equal("Tor", Assert.Single(Session.Casualties).Alias);
        Assert.Empty(Session.NotStored);
    }

    [Fact]
    public async Task What_another_tab_adds_is_read()
    {
        var casualty = await OpenCasualtyAsync();
        Store.AddElsewhere(casualty, new EntryId("9mwq", 1), """{"id":"9mwq-1"}""");
        Assert.Contains(Session.Lines, l => l.Text == """{"id":"9mwq-1"}""");
    }

    [Fact]
    public async Task The_open_casualty_is_remembered_until_it_is_closed()
    {
        var casualty = await OpenCasualtyAsync();
        Assert.Equal(casualty, Preferences.OpenCasualty);
        Session.Close();
        Assert.Equal("", Preferences.OpenCasualty);
        Assert.Null(Store.Observed);
    }

    [Fact]
    public async Task Merging_keeps_what_conflicts_and_what_cannot_be_read()
    {
        var casualty = await OpenCasualtyAsync();
        var file = IncomingFile.Split("{\"id\":\"7k3f-1\",\"kind\":\"note\"}\nnot JSON\n"u8.ToArray());
        var count = await Session.MergeAsync(Session.Casualties.Single(c => c.Id == casualty), file.Lines, "a file");
        Assert.Equal(new MergeCount(0, 0, 1, 1), count);
        Assert.Equal([LineState.Kept, LineState.Conflicting, LineState.Unreadable], Session.Lines.Select(l => l.State));
    }

    [Fact]
    public async Task What_was_prepared_is_opened_at_once_unless_something_was_added_meanwhile()
    {
        var id = await OpenCasualtyAsync();
        Session.Close();
        await Session.PrepareAsync(id);
        var reads = 0;
        Phone.Busy = () =>
        {
            reads++;
            return Task.CompletedTask;
        };
        Assert.True(Session.OpenAsync(id).IsCompletedSuccessfully);
        Assert.Equal((0, 1), (reads, Session.Lines.Length));

        Session.Close();
        await Session.PrepareAsync(id);
        Store.AddElsewhere(
            id,
            new("7k3f", 2),
            """{"id":"7k3f-2","happened":"2031-05-04T02:00:00Z","recorded":"2031-05-04T02:00:00Z","by":"Ane","kind":"note","text":"logged before the app was up"}"""
        );
        await Session.OpenAsync(id);
        Assert.Equal(2, Session.Lines.Length);
    }

    [Fact]
    public async Task An_entry_that_comes_while_the_record_is_taken_in_is_not_missed()
    {
        var id = await OpenCasualtyAsync();
        Session.Close();
        var late = false;
        Phone.Busy = () =>
        {
            if (!late && (late = true))
                Store.AddElsewhere(
                    id,
                    new("7k3f", 2),
                    """{"id":"7k3f-2","happened":"2031-05-04T02:00:00Z","recorded":"2031-05-04T02:00:00Z","by":"Ane","kind":"note","text":"late"}"""
                );
            return Task.CompletedTask;
        };
        await Session.OpenAsync(id);
        Assert.Equal(2, Session.Lines.Length);
    }

    [Fact]
    public async Task What_was_asked_for_last_is_open_in_the_end()
    {
        var first = await OpenCasualtyAsync();
        var second = (await Session.NewCasualtyAsync("Siv", practice: false))!;
        Session.Close();
        var slow = new TaskCompletionSource();
        Phone.Busy = () => slow.Task;
        var opening = Session.OpenAsync(first);
        Phone.Busy = () => Task.CompletedTask;
        await Session.OpenAsync(second);
        slow.SetResult();
        await opening;
        Assert.Equal(second, Session.Open?.Id);

        slow = new TaskCompletionSource();
        Phone.Busy = () => slow.Task;
        opening = Session.OpenAsync(first);
        Session.Close();
        slow.SetResult();
        await opening;
        Assert.Null(Session.Open);
    }
}
