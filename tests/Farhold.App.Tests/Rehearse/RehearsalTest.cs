using Farhold.App.Rehearse;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Rehearse;

/// <summary>A tab that rehearses a shipped scenario, with the seed that the scenario was written for.</summary>
public abstract class RehearsalTest : ScreenTest
{
    protected RehearsalTest() => Services.AddSingleton<TimeProvider>(new RehearsalClock(Time));

    internal RehearsalDesk Rehearsal => Services.GetRequiredService<RehearsalDesk>();

    protected Ticker Ticker => Services.GetRequiredService<Ticker>();

    internal RehearsalClock Scene => (RehearsalClock)Services.GetRequiredService<TimeProvider>();

    /// <param name="people">Who treats while somebody leads, with commas; null: one alone.</param>
    /// <param name="file">The scenario itself where it does not ship.</param>
    protected async Task BeginAsync(string scenario, ulong seed, string? people = null, string? file = null)
    {
        Preferences.Carer = "Ane";
        Practice.IsRehearsing = true;
        var lesson = people is null ? null : Lesson.New(people);
        Practice.Run = new KeptRun(scenario, file, seed, "Europe/Oslo", 0, RunsOn: false, PackedFor.Unsaid, [], lesson).Write();
        _ = (Desk, Ticker);
        await Session.StartAsync();
        await Rehearsal.StartAsync(() => Task.CompletedTask);
    }

    /// <summary>Lets the wall's time pass second by second, as a page does.</summary>
    protected void Pass(int seconds)
    {
        for (var i = 0; i < seconds; i++)
            Time.Advance(TimeSpan.FromSeconds(1));
    }
}
