using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Reminders;

public class ReminderTests : LimbTest
{
    private Reminder Reminder => Services.GetRequiredService<Reminder>();

    [Fact]
    public async Task What_is_overdue_sounds_again_and_again_until_seen()
    {
        await ReadyAsync();
        _ = Reminder;
        PassSeconds(70 * 60);
        var heard = Alerts.Sounded.Count;
        Assert.InRange(heard, 2, 70);
        Assert.All(Alerts.Sounded, s => Assert.Equal(Signal.Due, s));
        PassSeconds(61);
        Assert.True(Alerts.Sounded.Count > heard);
        Reminder.See();
        heard = Alerts.Sounded.Count;
        PassSeconds(120);
        Assert.Equal(heard, Alerts.Sounded.Count);
        Assert.NotEmpty(Reminder.Due);
    }

    [Fact]
    public async Task What_was_seen_stays_seen_when_the_app_starts_again()
    {
        await ReadyAsync();
        _ = Reminder;
        PassSeconds(70 * 60);
        Assert.NotEmpty(Reminder.Unseen);
        Reminder.See();
        using var again = new Reminder(
            Desk,
            Session,
            Services.GetRequiredService<Ticker>(),
            Services.GetRequiredService<AlertSignals>(),
            Phone
        );
        Assert.NotEmpty(again.Due);
        Assert.Empty(again.Unseen);
        var heard = Alerts.Sounded.Count;
        PassSeconds(120);
        Assert.Equal(heard, Alerts.Sounded.Count);
    }

    [Fact]
    public void What_the_phone_kept_badly_counts_as_not_seen()
    {
        Phone.Set("seen-c1", "12 signs\nnonsense\n 5\n99999999999999999 watch\n-3 help");
        Assert.Equal(["signs"], new SeenReminders(Phone).Of("c1").Keys);
        Assert.Empty(new SeenReminders(Phone).Of(null));
    }

    [Fact]
    public async Task Bleeding_sounds_again_even_when_it_was_seen()
    {
        await ReadyAsync();
        _ = Reminder;
        await TellAsync(new Payload.BleedingChecked("w1", Bleeding.Active));
        PassSeconds(10);
        Assert.Contains(Signal.Alarm, Alerts.Sounded);
        Reminder.See();
        var heard = Alerts.Sounded.Count;
        PassSeconds(60);
        Assert.Equal(heard, Alerts.Sounded.Count);
        PassSeconds(70);
        Assert.True(Alerts.Sounded.Count > heard);
    }

    [Fact]
    public async Task Sound_and_vibration_can_each_be_turned_off()
    {
        await ReadyAsync();
        var alerting = Services.GetRequiredService<AlertSignals>();
        alerting.Sound = false;
        alerting.Give(Signal.Due);
        alerting.Vibration = false;
        alerting.Give(Signal.Alarm);
        Assert.Empty(Alerts.Sounded);
        Assert.Equal([Signal.Due], Alerts.Vibrated);
    }

    [Fact]
    public async Task The_line_shows_how_much_is_due_and_can_be_seen_off()
    {
        await ReadyAsync();
        PassSeconds(70 * 60);
        var strip = Render<DueLine>(p => p.Add(l => l.Casualty, Casualty).Add(l => l.Picture, Desk.Picture!));
        Assert.Equal(Texts.DueCount(Reminder.Due.Length), strip.Find(".badge").GetAttribute("aria-label"));
        Button(strip, Texts.DueSeen).Click();
        Assert.Empty(Reminder.Unseen);
    }

    [Fact]
    public async Task The_calendar_file_names_nobody_unless_asked()
    {
        await ReadyAsync();
        var screen = Render<RemindersScreen>(p => p.Add(s => s.Casualty, Casualty));
        Assert.Contains(Texts.CannotLocked, screen.Markup, StringComparison.Ordinal);
        Assert.Contains(Texts.CannotWithdraw, screen.Markup, StringComparison.Ordinal);
        screen.FindAll("button.item")[0].Click();
        Assert.DoesNotContain("Tor", Alerts.Saved[^1].Text, StringComparison.Ordinal);
        screen.Find("input[type=checkbox]").Change(true);
        screen.FindAll("button.item")[0].Click();
        Assert.Contains("SUMMARY:Tor: ", Alerts.Saved[^1].Text, StringComparison.Ordinal);
        Assert.Equal("text/calendar", Alerts.Saved[^1].MediaType);
    }

    private void PassSeconds(int seconds)
    {
        for (var i = 0; i < seconds; i++)
            Time.Advance(TimeSpan.FromSeconds(1));
    }
}
