using Farhold.App.Shell;

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
}
