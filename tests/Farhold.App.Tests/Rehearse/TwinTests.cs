using System.Text;
using Bunit;
using Farhold.App.HandOver;
using Farhold.App.Rehearse;
using Farhold.Exchange.Qr;
using Farhold.Rehearsal.Runs;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Rehearse;

/// <summary>A run crosses to another phone as what was asked and logged, by codes or as a file.</summary>
public class TwinTests : RehearsalTest
{
    private RehearsalSession Run => ((RunningRehearsal)Rehearsal.Running!).Session;

    private OwnScenarios Own => Services.GetRequiredService<OwnScenarios>();

    [Fact]
    public async Task A_run_is_shown_as_codes_and_saved_as_a_file()
    {
        await RehearsedAsync();
        var screen = Render<ShowRunScreen>();
        Assert.Equal(0, Rehearsal.Rate);
        var text = SharedRun.Write(Run);
        var sender = new FrameSender(Pack.OfText(Encoding.UTF8.GetBytes(text)));
        Assert.Equal(QrPicture.Of(sender[0].Text()).Path(), screen.Find("path.code-dark").GetAttribute("d"));
        Button(screen, Texts.ShowRunSave).Click();
        Assert.Equal(text, Assert.Single(Alerts.Saved).Text);
        Assert.StartsWith("PRACTICE-", Alerts.Saved[0].Name, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_phone_makes_the_same_of_it_and_debriefs_it()
    {
        await RehearsedAsync();
        var taken = Render<TakeRunScreen>();
        await SeeAsync(taken, Rehearsal.Share());
        taken.WaitForAssertion(() => Assert.Contains(Texts.TakeRunSame, taken.Markup, StringComparison.Ordinal));
        var own = Render<DebriefScreen>();
        await Button(own, Texts.DebriefShow).ClickAsync(new());
        own.WaitForAssertion(() => Assert.NotEmpty(own.FindAll(".debrief-picture")));
        Assert.Equal(Lines(own), Lines(taken));
        Assert.NotEmpty(Lines(taken));
    }

    /// <summary>Where the model is worked out otherwise the hash is another one, and that is said.</summary>
    [Fact]
    public async Task A_run_that_comes_out_otherwise_says_so()
    {
        await RehearsedAsync();
        var text = Rehearsal.Share().Replace(SharedRun.HashOf(Run), new('0', 64), StringComparison.Ordinal);
        var taken = Render<TakeRunScreen>();
        await SeeAsync(taken, text);
        taken.WaitForAssertion(() => Assert.Contains(Texts.TakeRunOther, taken.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_run_of_a_scenario_that_is_not_here_is_refused_and_taken_once_it_is()
    {
        var file = (Encoding.UTF8.GetString(HeldAtOnce.Value).Replace("\"held-at-once\"", "\"ours\"", StringComparison.Ordinal));
        await RehearsedAsync("ours", file);
        var text = Rehearsal.Share();
        var taken = Render<TakeRunScreen>();
        await SeeAsync(taken, text);
        taken.WaitForAssertion(() => Assert.Contains("not at hand", taken.Find("[role=alert]").TextContent, StringComparison.Ordinal));
        Assert.True(Own.Keep("ours", file));
        await SeeAsync(taken, text);
        taken.WaitForAssertion(() => Assert.Contains(Texts.TakeRunSame, taken.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Of_a_run_that_somebody_led_the_record_is_asked_for()
    {
        await RehearsedAsync(people: "Ola");
        var taken = Render<TakeRunScreen>();
        await SeeAsync(taken, Rehearsal.Share());
        taken.WaitForAssertion(() => Assert.Contains(Texts.TakeRunLed, taken.Markup, StringComparison.Ordinal));
        Assert.Empty(taken.FindAll(".debrief-picture"));
        // The casualty of the run itself is practice too, and no trainee's.
        await Button(taken, Texts.TakeRunRecord(Session.Casualties[0].Alias)).ClickAsync(new());
        Assert.Contains("of the phone that led", taken.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        var body = EntryWriting.Body(Happened.At(Now), Now, "Ola", practice: true, new Payload.NoteWritten("so"));
        await SeeAsync(taken, $"{{\"id\":\"tr-1\",{body[1..]}\n");
        taken.WaitForAssertion(() => Assert.NotEmpty(taken.FindAll(".debrief-picture")));
    }

    [Fact]
    public void Own_scenarios_are_kept_by_their_ids_and_spoilt_ones_forgotten()
    {
        Assert.True(Own.Keep("a", "1"));
        Assert.True(Own.Keep("b", "2"));
        Assert.True(Own.Keep("a", "3"));
        Assert.Equal([("b", "2"), ("a", "3")], Own.All);
        Assert.False(Own.Keep("c", new('x', OwnScenarios.Longest + 1)));
        Own.Remove("b");
        Assert.Equal("a", Assert.Single(Own.All).Id);
        for (var i = 1; i < OwnScenarios.Most; i++)
            Assert.True(Own.Keep($"more-{i}", "4"));
        Assert.False(Own.Keep("one-more", "4"));
        Phone.Set("own-scenarios", "{\"own\":[{}]}");
        Assert.Empty(Own.All);
    }

    private static readonly Lazy<byte[]> HeldAtOnce = new(() =>
    {
        using var stream = typeof(SharedRun).Assembly.GetManifestResourceStream("held-at-once.scenario.json")!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    });

    private static string[] Lines(IRenderedComponent<Microsoft.AspNetCore.Components.IComponent> screen) =>
        [
            .. screen
                .FindAll("ul.noticed")
                .Where(u => u.Closest(".what-if") is null)
                .SelectMany(u => u.QuerySelectorAll("li"))
                .Select(l => l.TextContent),
        ];

    private async Task RehearsedAsync(string scenario = "held-at-once", string? file = null, string? people = null)
    {
        await BeginAsync(scenario, 12, people, file);
        Rehearsal.Do("pulse");
        Pass(70);
        await Logbook.LogAsync(new Payload.SignsTaken { HeartRate = 96 });
        await Logbook.LogAsync(new Payload.WoundPacked("w1", PackingMaterial.HaemostaticGauze));
        Pass(30);
    }

    private async Task SeeAsync(IRenderedComponent<TakeRunScreen> screen, string text)
    {
        var sender = new FrameSender(Pack.OfText(Encoding.UTF8.GetBytes(text)));
        await Button(screen, Texts.TakeCamera).ClickAsync(new());
        for (var i = 0; i <= sender.Blocks && HandOver.Scanning; i++)
            await screen.InvokeAsync(() => HandOver.See(sender[i].Text()));
        screen.WaitForAssertion(() => Assert.False(HandOver.Scanning));
    }
}
