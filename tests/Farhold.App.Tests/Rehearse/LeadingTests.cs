using Farhold.App.Rehearse;
using Farhold.Exchange.Qr;
using Farhold.Physiology.Rehearsal;
using Farhold.Rehearsal.Runs;
using Farhold.Rehearsal.Scenarios;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Rehearse;

/// <summary>Somebody leads by voice: they see the truth, confirm deeds, and say aloud what looks show.</summary>
public class LeadingTests : RehearsalTest
{
    private readonly Printer printer = new();

    public LeadingTests() => Services.AddSingleton<IPrinter>(printer);

    private RehearsalSession Run => ((RunningRehearsal)Rehearsal.Running!).Session;

    [Fact]
    public async Task The_panel_shows_the_truth_and_says_practice()
    {
        var screen = await LeadAsync("bled-at-slackening", 24);
        Assert.Contains(Texts.Practice, screen.Find(".practice-word").TextContent, StringComparison.Ordinal);
        Assert.Contains(Texts.LeadTight("Right leg"), screen.Markup, StringComparison.Ordinal);
        Assert.Contains(Texts.LeadDry("w1"), screen.Markup, StringComparison.Ordinal);
        Rehearsal.Do(OfferedActs.Write(new Act.Slacken("right-leg")));
        Pass(120);
        Assert.Contains(Texts.LeadNotTight("Right leg"), screen.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain(Texts.LeadDry("w1"), screen.Markup, StringComparison.Ordinal);
        Assert.Contains(Texts.LeadBleeds("w1", Texts.Fixed(Run.Present.Flow[0], 0)), screen.Markup, StringComparison.Ordinal);
    }

    /// <summary>A deed acts when it is confirmed, with who did it; what is only logged moves nothing.</summary>
    [Fact]
    public async Task Only_what_is_confirmed_acts_and_it_says_who_did_it()
    {
        var screen = await LeadAsync("bled-at-slackening", 24);
        await Logbook.LogAsync(new Payload.TourniquetSlackened("t1"));
        Pass(90);
        Assert.True(Run.Present.Tight[0]);
        await screen.FindAll("input[type=radio]").Single(i => i.ParentElement!.TextContent.Trim() == "Bo").ChangeAsync(new());
        await Deed(screen, Texts.LeadSlacken).ClickAsync(new());
        Pass(90);
        Assert.False(Run.Present.Tight[0]);
        var asked = Assert.Single(Run.Truth.OfType<TruthLine.ActAsked>());
        Assert.Equal((new Act.Slacken("right-leg"), "Bo"), (asked.Act.Act, asked.By));
    }

    /// <summary>The number comes when it is counted; it is the look's, which the truth need not be.</summary>
    [Fact]
    public async Task What_is_said_aloud_is_what_the_look_showed()
    {
        var screen = await LeadAsync("held-at-once", 12);
        Assert.Contains(Texts.LeadSayNothing, screen.Find(".say-aloud").TextContent, StringComparison.Ordinal);
        await Button(screen, Texts.RehearsalSeePulse).ClickAsync(new());
        Pass(5);
        Assert.Empty(screen.FindAll(".aloud"));
        Pass(60);
        var shown = ((Shown.Number)Run.Shown.Single().Shown).Value;
        Assert.Equal(Texts.SayPerMinute(Texts.Number(shown)), screen.Find(".aloud").TextContent);
    }

    [Fact]
    public async Task A_sign_that_is_set_is_what_the_next_look_shows_and_the_casualty_stays_as_it_is()
    {
        var screen = await LeadAsync("held-at-once", 12);
        await screen
            .FindAll("fieldset")
            .Single(f => f.QuerySelector("legend")!.TextContent == Texts.LeadSign)
            .QuerySelectorAll("input")[0]
            .ChangeAsync(new());
        for (var i = 0; i < 4; i++)
            await Button(screen, Texts.LeadHigher).ClickAsync(new());
        await screen.FindAll("button").Single(b => b.TextContent.StartsWith("From now on", StringComparison.Ordinal)).ClickAsync(new());
        var set = Run.Overrides.HeartRate!.Value;
        Assert.InRange(set - Run.Present.Vitals.HeartRate, 17, 23);
        await Button(screen, Texts.RehearsalSeePulse).ClickAsync(new());
        Pass(60);
        Assert.Equal(Texts.SayPerMinute(Texts.Number(set)), screen.Find(".aloud").TextContent);
        await Button(screen, Texts.LeadTrueAgain).ClickAsync(new());
        Assert.Equal(SignOverride.None, Run.Overrides);
    }

    [Fact]
    public async Task An_inject_comes_when_it_is_pressed_and_then_is_no_longer_to_come()
    {
        var screen = await LeadAsync("bled-after-a-move", ShippedScenarios.All.Single(s => s.Id == "bled-after-a-move").Seed);
        var first = Rehearsal.Led!.Coming[0];
        await Button(screen, Texts.LeadNowOf(first.What)).ClickAsync(new());
        Assert.Contains(Run.Truth.OfType<TruthLine.Injected>(), i => i.Inject == first.Id);
        Assert.DoesNotContain(Rehearsal.Led.Coming, c => c.Id == first.Id);
    }

    /// <summary>A page loaded anew makes the same truth again: deeds, who did them, injects and set signs.</summary>
    [Fact]
    public async Task A_page_loaded_anew_makes_the_same_truth_again()
    {
        await LeadAsync("bled-after-a-move", 31);
        Rehearsal.Do(OfferedActs.Write(new Act.Pack("w1", PackingGauze.Haemostatic)), by: "Ola");
        Pass(20);
        Rehearsal.Do($$"""{"inject":"{{Rehearsal.Led!.Coming[0].Id}}"}""");
        Rehearsal.Do("""{"show":{"heartRate":141}}""");
        Pass(5);
        Rehearsal.Do("pulse", by: "Bo");
        Pass(90);
        Rehearsal.Run(0);
        var truth = TruthFile.Write(Run.Truth);
        Assert.Equal(0, Rehearsal.Looking);

        using var again = new RehearsalDesk(Practice, Session, Store, Desk, Ticker, Phone, Scene);
        await again.StartAsync(() => Task.CompletedTask);
        var made = ((RunningRehearsal)again.Running!).Session.Truth;
        Assert.IsType<TruthLine.Paced>(made[^1]); // the page goes on from here
        Assert.Equal(truth, TruthFile.Write(made.SkipLast(1)));
        Assert.Equal(["Ola", "Bo"], again.Lesson!.People);
    }

    [Fact]
    public async Task The_sheet_says_who_did_what_keeps_what_was_seen_and_prints()
    {
        await LeadAsync("held-at-once", 12);
        Rehearsal.Do(OfferedActs.Write(new Act.Press("w1")), by: "Ola");
        Rehearsal.Do("bleeding", "w1", "Bo");
        Pass(70);
        var sheet = Render<LessonScreen>(p => p.Add(s => s.Casualty, Session.Open!.Id));
        var done = sheet.FindAll(".lesson-lines li").Select(l => l.TextContent).ToArray();
        Assert.Contains(done, l => l.EndsWith(Texts.LessonBy("Ola", $"{Texts.LeadPress}, w1"), StringComparison.Ordinal));
        Assert.Contains(done, l => l.EndsWith(Texts.LessonBy("Bo", $"{Texts.RehearsalSeeBleeding}, w1"), StringComparison.Ordinal));
        Assert.Contains(Texts.Practice, sheet.Find(".casualty-card h2").TextContent, StringComparison.Ordinal);
        await sheet.FindAll("fieldset")[3].QuerySelectorAll("input")[1].ChangeAsync(new());
        Assert.False(KeptRun.Read(Practice.Run)!.Lesson!.Saw(3));
        Assert.EndsWith(Texts.AnswerNo, sheet.FindAll(".lesson-marks li")[3].TextContent, StringComparison.Ordinal);
        await Button(sheet, Texts.PrintThis).ClickAsync(new());
        Assert.Equal(1, printer.Printed);
    }

    /// <summary>The trainee's phone has a clock of its own, which the run's left behind; the record comes by codes.</summary>
    [Fact]
    public async Task The_trainees_record_is_taken_by_codes_and_debriefed_beside_the_truth()
    {
        var screen = await LeadAsync("bled-at-slackening", 24);
        var began = Wall;
        Pass(20);
        await Deed(screen, Texts.LeadPackPlain).ClickAsync(new());
        Pass(120);
        await Rehearsal.ToNextAsync(() => Task.CompletedTask);
        Assert.True(Run.Time > 160); // the run is ahead of the wall
        await Deed(screen, Texts.LeadSlacken).ClickAsync(new());
        var slackened = Wall;
        Pass(100);
        var sheet = Render<LessonScreen>(p => p.Add(s => s.Casualty, Session.Open!.Id));
        Assert.DoesNotContain(sheet.FindAll("a.act"), a => a.GetAttribute("href") == "debrief");
        await TakeAsync(
            sheet,
            Line(1, began, new Payload.WoundFound("hers", Limb.RightLeg, null, WoundNature.Bleeding)),
            Line(2, began, new Payload.TourniquetTightened("mine", Limb.RightLeg)),
            Line(3, slackened, new Payload.TourniquetSlackened("mine"))
        );
        Assert.Contains(Texts.TraineeTaken(Texts.SourceCodes), sheet.Markup, StringComparison.Ordinal);
        Assert.Single(sheet.FindAll("a.act"), a => a.GetAttribute("href") == "debrief");

        var debrief = Render<DebriefScreen>();
        Assert.Contains(Texts.TraineeFirst, debrief.Markup, StringComparison.Ordinal);
        Assert.Empty(debrief.FindAll("textarea"));
        await Button(debrief, Texts.DebriefShow).ClickAsync(new());
        debrief.WaitForAssertion(() => Assert.NotEmpty(debrief.FindAll(".noticed li")));
        Assert.Contains("w1 packed, and not logged", debrief.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("right leg let out, and not logged", debrief.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("away from when it was done", debrief.Markup, StringComparison.Ordinal);
        await Button(debrief, Texts.DebriefEnd).ClickAsync(new());
        Assert.Empty(new PastRehearsals(Practice).All); // who led has practised nothing
    }

    [Fact]
    public async Task A_real_casualtys_record_is_not_laid_beside_a_lesson()
    {
        await LeadAsync("bled-at-slackening", 24);
        Pass(60);
        var sheet = Render<LessonScreen>(p => p.Add(s => s.Casualty, Session.Open!.Id));
        await TakeAsync(sheet, Line(1, Wall, new Payload.NoteWritten("real"), practice: false));
        Assert.Contains("not marked as practice", sheet.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Null(Rehearsal.Trainee);
        Assert.Contains(Texts.TraineeMissing, Render<DebriefScreen>().Markup, StringComparison.Ordinal);
    }

    /// <summary>Who leads has practised nothing: the date of their own next practice stays.</summary>
    [Fact]
    public async Task Ending_a_lesson_counts_as_no_practice()
    {
        await LeadAsync("held-at-once", 12);
        var sheet = Render<LessonScreen>(p => p.Add(s => s.Casualty, Session.Open!.Id));
        await Button(sheet, Texts.DebriefEnd).ClickAsync(new());
        await Button(sheet, Texts.RehearsalLeaveYes).ClickAsync(new());
        Assert.Equal("rehearse", Practice.EndedTo);
        Assert.Empty(new PastRehearsals(Practice).All);
    }

    [Fact]
    public void A_start_to_lead_keeps_the_names()
    {
        var screen = Render<Farhold.App.Shell.Frame>(p =>
            p.Add(
                f => f.Body,
                b =>
                {
                    b.OpenComponent<StartRehearsalScreen>(0);
                    b.AddComponentParameter(1, nameof(StartRehearsalScreen.Id), "child");
                    b.CloseComponent();
                }
            )
        );
        screen.FindAll("label.choice").Single(l => l.TextContent.Trim() == Texts.LeadLead).QuerySelector("input")!.Change(true);
        screen.FindAll("label.field").Single(l => l.TextContent.Trim() == Texts.LeadNames).QuerySelector("input")!.Input("Ola, Bo");
        screen.FindAll("button.act").Single(b => b.TextContent == Texts.RehearseStart).Click();
        Assert.Equal(["Ola", "Bo"], KeptRun.Read(Practice.Run)!.Lesson!.People);
    }

    /// <summary>Every act that is offered and every answer that a look can give has words of its own.</summary>
    [Fact]
    public void Every_deed_and_every_answer_has_words()
    {
        string[] acts = ["tighten", "slacken", LeadWords.PackHaemostatic, "pack", "press", "release", "dress", "cover", "drink", "move"];
        Assert.Equal(acts.Length, acts.Select(a => LeadWords.Act(a, Texts)).Distinct().Count());
        Shown[] bleeding = [.. Enum.GetValues<BleedingSeen>().Select(b => new Shown.Bleeds(b))];
        Shown[] pulses = [.. Enum.GetValues<PulseFelt>().Select(f => new Shown.Pulses(f))];
        Shown[] minds =
        [
            .. Enum.GetValues<Farhold.Physiology.Body.Consciousness>().Select(c => new Shown.Answers(c)),
            new Shown.Answers(default, Confused: true),
        ];
        Shown[] skins = [new Shown.Skin(true, true, true), new Shown.Skin(false, false, false)];
        (LookKind Kind, Shown[] Shown)[] all =
        [
            (LookKind.Pulse, [new Shown.Number(96), new Shown.CannotTell()]),
            (LookKind.Breaths, [new Shown.Number(18)]),
            (LookKind.Pressure, [new Shown.Pressures(120, 70)]),
            (LookKind.Refill, [new Shown.Number(2.5)]),
            (LookKind.Temperature, [new Shown.Number(36.4)]),
            (LookKind.Mental, minds),
            (LookKind.Bleeding, bleeding),
            (LookKind.BleedingBelow, bleeding),
            (LookKind.Wrist, pulses),
            (LookKind.Beyond, pulses),
            (LookKind.Skin, skins),
            (LookKind.Dizzy, [new Shown.Says(true), new Shown.Says(false)]),
        ];
        Assert.Equal(Enum.GetValues<LookKind>().Order(), all.Select(a => a.Kind).Order());
        foreach (var (kind, shown) in all)
        {
            var said = shown.Select(s => LeadWords.Aloud(Wire.Word(kind), ShownText.Write(s), Texts)).ToArray();
            Assert.Equal(said.Length, said.Distinct().Count());
            Assert.All(said, Assert.NotEmpty);
        }
    }

    private async Task<IRenderedComponent<RunningScreen>> LeadAsync(string scenario, ulong seed)
    {
        await BeginAsync(scenario, seed, "Ola, Bo");
        return Render<RunningScreen>(p => p.Add(s => s.Casualty, Session.Open!.Id));
    }

    private Instant Wall => Instant.FromDateTimeOffset(Time.GetUtcNow());

    /// <summary>A line as a trainee's own phone writes it.</summary>
    private static Entry Line(int number, Instant at, Payload payload, bool practice = true)
    {
        var body = EntryWriting.Body(Happened.At(at), at, "Ola", practice, payload);
        var json = System.Text.Encoding.UTF8.GetBytes($"{{\"id\":\"tr-{number}\",{body[1..]}");
        return ((Read<Entry>.Usable)new EntryReader().Read(json, "theirs", number)).Value;
    }

    /// <summary>Held before the camera until it is whole.</summary>
    private async Task TakeAsync(IRenderedComponent<LessonScreen> sheet, params Entry[] record)
    {
        var sender = new FrameSender(Pack.Of(new CareRecord(record, [])));
        await Button(sheet, Texts.TakeCamera).ClickAsync(new());
        for (var i = 0; i <= sender.Blocks && HandOver.Scanning; i++)
            await sheet.InvokeAsync(() => HandOver.See(sender[i].Text()));
        sheet.WaitForAssertion(() => Assert.False(HandOver.Scanning));
    }

    private static AngleSharp.Dom.IElement Deed(IRenderedComponent<RunningScreen> screen, string name) =>
        screen.FindAll(".tiles button").First(b => b.TextContent.StartsWith(name, StringComparison.Ordinal));

    private sealed class Printer : IPrinter
    {
        public int Printed { get; private set; }

        public void Print() => Printed++;
    }
}
