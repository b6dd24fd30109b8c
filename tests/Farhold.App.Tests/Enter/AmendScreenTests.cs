using System.Text.Json;

namespace Farhold.App.Tests.Enter;

public class AmendScreenTests : CareTest
{
    [Fact]
    public async Task A_second_correction_carries_the_first()
    {
        await StartAsync();
        await LogAsync(5, new Payload.SignsTaken { HeartRate = 188, RespiratoryRate = 61 });
        Correct("Pulse", "88");
        Correct("Breathing", "16");
        Assert.Equal("""{"breathRate":16,"heartRate":88}""", LastReplace());
        Assert.Equal(new Payload.SignsTaken { HeartRate = 88, RespiratoryRate = 16 }, Last<Payload.SignsTaken>());
    }

    [Fact]
    public async Task A_correction_of_the_time_keeps_the_corrected_values()
    {
        await StartAsync();
        await LogAsync(5, new Payload.SignsTaken { HeartRate = 188 });
        Correct("Pulse", "88");
        var amend = Show<AmendScreen>((nameof(AmendScreen.EntryName), "7k3f-2"));
        Tap(amend, "Correct the time");
        Choose(amend, "When", "30 min ago");
        Tap(amend, "Log the correction");
        Assert.Equal("""{"happened":"2031-05-04T01:30:01Z","heartRate":88}""", LastReplace());
        Assert.Equal(Happened.At(Now - Duration.FromMinutes(30)), State.Of(Kind.SignsTaken).Single().When);
    }

    [Fact]
    public async Task A_value_taken_back_becomes_unknown()
    {
        await StartAsync();
        await LogAsync(5, new Payload.SignsTaken { Mental = Mental.Alert, Dizzy = true });
        var amend = Show<AmendScreen>((nameof(AmendScreen.EntryName), "7k3f-2"));
        Tap(amend, "Not said: Dizzy or faint");
        Tap(amend, "Log the correction");
        Assert.Equal("""{"dizzy":null}""", LastReplace());
        Assert.Null(Last<Payload.SignsTaken>().Dizzy);
    }

    [Fact]
    public async Task Nothing_changed_is_no_correction()
    {
        await StartAsync();
        await LogAsync(5, new Payload.SignsTaken { HeartRate = 88 });
        var amend = Show<AmendScreen>((nameof(AmendScreen.EntryName), "7k3f-2"));
        Tap(amend, "Log the correction");
        Assert.Contains("Nothing is changed", Text(amend.Find("[role=alert]")), StringComparison.Ordinal);
        Assert.Equal(2, Desk.Record!.Count);
    }

    [Fact]
    public async Task Where_the_age_is_asked_for_nothing_else_is_shown()
    {
        await StartAsync();
        var amend = Show<AmendScreen>((nameof(AmendScreen.EntryName), "7k3f-1"), (nameof(AmendScreen.Field), "ageYears"));
        Assert.Equal("Enter the age", Text(amend.Find("h1")));
        Assert.Empty(amend.FindAll("input, textarea"));
        Tap(amend, "7", "Age");
        Tap(amend, "1", "Age");
        Tap(amend, "Log the age");
        Assert.Equal("""{"ageYears":71}""", LastReplace());
        Assert.Equal(71, Last<Payload.CasualtyOpened>().AgeYears);
    }

    private void Correct(string label, string digits)
    {
        var amend = Show<AmendScreen>((nameof(AmendScreen.EntryName), "7k3f-2"));
        amend.FindAll("button").Single(b => Text(b).StartsWith(label + " ", StringComparison.Ordinal)).Click();
        Tap(amend, "Clear", label);
        foreach (var digit in digits)
            Tap(amend, digit.ToString(), label);
        Tap(amend, "Log the correction");
        Time.Advance(TimeSpan.FromSeconds(1));
    }

    private string LastReplace() => JsonDocument.Parse(Session.Lines[^1].Text).RootElement.GetProperty("replace").GetRawText();
}
