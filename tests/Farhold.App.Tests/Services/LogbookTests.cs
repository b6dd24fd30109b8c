namespace Farhold.App.Tests.Services;

public class LogbookTests : LimbTest
{
    [Fact]
    public async Task The_same_again_while_its_message_stands_says_how_often_and_undo_takes_back_one()
    {
        await ReadyAsync();
        var drink = new Payload.FluidGiven(Fluid.OralWater, 200, "mouth");
        await Logbook.LogAsync(drink);
        var first = Toasts.Shown!.Text;
        await Logbook.LogAsync(drink);
        Assert.Equal(Texts.LoggedTimes(2, first), Toasts.Shown!.Text);
        await Toasts.UndoAsync();
        Assert.Single(Care.Record!.Readings[0].Of(Kind.FluidGiven));
    }

    [Fact]
    public async Task Something_else_or_the_same_after_the_message_has_gone_counts_anew()
    {
        await ReadyAsync();
        await Logbook.LogAsync(new Payload.NoteWritten("one"));
        await Logbook.LogAsync(new Payload.NoteWritten("two"));
        Assert.DoesNotContain("×", Toasts.Shown!.Text, StringComparison.Ordinal);
        Time.Advance(Toasts.Stays.ToTimeSpan());
        await Logbook.LogAsync(new Payload.NoteWritten("two"));
        Assert.DoesNotContain("×", Toasts.Shown!.Text, StringComparison.Ordinal);
    }
}
