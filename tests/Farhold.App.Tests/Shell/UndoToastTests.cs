using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Shell;

public class UndoToastTests : ScreenTest
{
    [Fact]
    public void It_stays_its_time_and_goes_by_itself()
    {
        var toast = Render<UndoToast>();
        Toasts.Show("Stored", () => Task.CompletedTask);
        Time.Advance(Toasts.Stays.ToTimeSpan() - TimeSpan.FromSeconds(1));
        toast.WaitForAssertion(() => Assert.Contains("Stored", toast.Markup, StringComparison.Ordinal));
        Time.Advance(TimeSpan.FromSeconds(2));
        toast.WaitForAssertion(() => Assert.DoesNotContain("Stored", toast.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Undo_runs_once_and_clears_the_message()
    {
        var undone = 0;
        var toast = Render<UndoToast>();
        Toasts.Show("Stored", () => Task.FromResult(undone++));
        toast.WaitForAssertion(() => Button(toast, "Undo"));
        await Button(toast, "Undo").ClickAsync(new());
        await Toasts.UndoAsync();
        Assert.Equal(1, undone);
        Assert.Null(Toasts.Shown);
    }

    [Fact]
    public void A_newer_message_gets_its_full_time()
    {
        Toasts.Show("First");
        Time.Advance(Toasts.Stays.ToTimeSpan() - TimeSpan.FromSeconds(1));
        Toasts.Show("Second");
        Time.Advance(TimeSpan.FromSeconds(2));
        Assert.Equal("Second", Toasts.Shown?.Text);
    }

    [Fact]
    public async Task It_goes_with_its_casualty_and_so_does_its_Undo()
    {
        await OpenCasualtyAsync("Tor");
        var logbook = Services.GetRequiredService<Logbook>();
        await logbook.LogAsync(new Payload.NoteWritten("pale"));
        Assert.NotNull(Toasts.Shown?.Undo);
        var second = await Session.NewCasualtyAsync("Ylva", practice: false);
        await Session.OpenAsync(second!);
        Assert.Null(Toasts.Shown);
        await Toasts.UndoAsync();
        Assert.Contains("\"id\":\"7k3f-1\"", Assert.Single(Session.Lines).Text, StringComparison.Ordinal);

        Toasts.Show("Stored", () => Task.CompletedTask);
        Session.Close();
        Assert.Null(Toasts.Shown);
    }

    [Fact]
    public async Task Undo_held_past_the_change_of_casualty_still_withdraws_its_own_entry()
    {
        var first = await OpenCasualtyAsync("Tor");
        await Services.GetRequiredService<Logbook>().LogAsync(new Payload.NoteWritten("pale"));
        var undo = Toasts.Shown!.Undo!;
        var second = (await Session.NewCasualtyAsync("Ylva", practice: false))!;
        await Session.OpenAsync(second);
        await Session.AppendAsync(Session.Open!, new Payload.NoteWritten("of Ylva"));
        await undo();
        Assert.DoesNotContain(await Store.ReadAsync(second), l => l.Text.Contains("entry.withdrawn", StringComparison.Ordinal));
        Assert.Contains(await Store.ReadAsync(first), l => l.Text.Contains("\"target\":\"7k3f-2\"", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_is_stored_after_the_casualty_was_left_offers_no_Undo_on_the_next()
    {
        await OpenCasualtyAsync("Tor");
        var tor = Session.Open!;
        var second = (await Session.NewCasualtyAsync("Ylva", practice: false))!;
        await Session.OpenAsync(second);
        await Services.GetRequiredService<Logbook>().LogAsync(tor, new Payload.NoteWritten("pale"));
        Assert.Null(Toasts.Shown);
        Assert.Single(Session.Lines);
        Assert.Equal(2, (await Store.ReadAsync(tor.Id)).Length);
    }
}
