namespace Farhold.App.Tests.Now;

public class NextStepTests : CareTest
{
    [Fact]
    public async Task Everything_a_verdict_may_ask_to_look_at_leads_somewhere()
    {
        await TightAsync();
        var next = new NextStep(Desk.Record!, Desk.Picture!, Texts);
        Assert.All(Input.All, i => Assert.True(next.OfInput(i) is { Goes: not null } or { Opens: not null }, i.Name));
        Assert.Equal(Quick.Bleeding, next.OfInput(Input.Bleeding).Opens);
        Assert.Equal("signs/take/skin", next.OfInput(Input.Pale).Goes);
        Assert.Equal("amend/7k3f-1/ageYears", next.OfInput(Input.AgeYears).Goes);
    }

    [Theory]
    [InlineData(null, BodyRegion.Groin, Quick.Bleeding)]
    [InlineData(Limb.LeftLeg, null, Quick.Tightened)]
    public async Task A_wound_that_no_tourniquet_goes_on_is_looked_at_first(Limb? limb, BodyRegion? region, Quick opens)
    {
        await StartAsync();
        await LogAsync(0, new Payload.WoundFound("w1", limb, region, WoundNature.Bleeding));
        Assert.Equal(opens, new NextStep(Desk.Record!, Desk.Picture!, Texts).First()!.Opens);
    }

    /// <summary>Two answers to it, each one tap, and the record says which it was.</summary>
    [Theory]
    [InlineData("I have looked, go on", "the entries were looked through")]
    [InlineData("Another program rewrote the file", "another program rewrote the file")]
    public async Task A_chain_that_does_not_hold_is_settled_with_one_tap_and_its_reason(string answer, string reason)
    {
        await TightAsync();
        Store.AddElsewhere(Casualty, new("b7", 1), Note(1, ""));
        Store.AddElsewhere(Casualty, new("b7", 2), Note(2, $"\"previous\":\"{new string('0', 64)}\","));
        var doubt = Assert.Single(Desk.Picture!.Doubts);
        var now = Show<NowScreen>();
        Assert.Contains("Entry b7-2 does not follow from the line before it", Cautions(now), StringComparison.Ordinal);
        Tap(now, answer);
        Assert.Equal(new Payload.TaskDone(doubt.Id, reason), Last<Payload.TaskDone>());
        Assert.DoesNotContain(Desk.Picture!.Due, d => d.Task == doubt.Id);
    }

    [Fact]
    public async Task What_is_not_understood_stands_among_the_cautions_and_is_settled_with_one_tap()
    {
        await TightAsync();
        Store.AddElsewhere(
            Casualty,
            new("b7", 1),
            Note(1, "").Replace("\"note\",\"text\":\"calm\"", "\"signs.tcken\",\"heartRate\":150", StringComparison.Ordinal)
        );
        var doubt = Assert.Single(Desk.Picture!.Doubts);
        var now = Show<NowScreen>();
        Assert.Contains("Entry b7-1 is of a kind that this version does not know: signs.tcken", Cautions(now), StringComparison.Ordinal);
        Tap(now, "I have looked, go on");
        Assert.Equal(doubt.Id, Last<Payload.TaskDone>().Task);
        Assert.DoesNotContain(Desk.Picture!.Due, d => d.Task == doubt.Id);
        Assert.Contains("NOT UNDERSTOOD: heartRate 150", Text(Show<LogScreen>().Find("ol.list")), StringComparison.Ordinal);
    }

    private static string Cautions(Bunit.IRenderedComponent<App.Shell.Frame> now) =>
        Text(now.Find("section[aria-labelledby=cautions-title]"));

    private static string Note(int number, string link) =>
        $$"""{"id":"b7-{{number}}",{{link}}"happened":"2031-05-04T01:00:00Z","recorded":"2031-05-04T01:00:00Z","by":"Tor","kind":"note","text":"calm"}""";

    [Theory]
    [InlineData(null, null, 250.0)]
    [InlineData(34.0, 68.0, 250.0)]
    [InlineData(7.0, 25.0, 130.0)] // 65 mL/h by the 4-2-1 rule (from memory), for two hours
    [InlineData(7.0, null, null)] // entered by hand
    public async Task One_tap_logs_the_drink_that_was_offered(double? age, double? mass, double? millilitres)
    {
        await StartAsync();
        Time.Advance(TimeSpan.FromMinutes(1));
        await LogAsync(0, new Payload.CasualtyOpened("Eir", AgeYears: age, MassKg: mass));
        var due = new DueTask(Now, "drink", null, "", [], true) { Every = Duration.FromHours(2) };
        var step = new NextStep(Desk.Record!, Desk.Picture!, Texts).OfDue(due);
        Assert.Equal(millilitres, (step.Logs as Payload.FluidGiven)?.Millilitres);
        Assert.Equal(millilitres is null, step.Goes is not null);
    }

    [Fact]
    public async Task What_is_seen_only_by_looking_is_never_ticked_off()
    {
        await TightAsync();
        await LogAsync(3, new Payload.WoundFound("w2", Limb.RightArm, null, WoundNature.Bleeding));
        var next = new NextStep(Desk.Record!, Desk.Picture!, Texts);
        foreach (var task in (string[])["next.left-leg", "effect.left-leg", "bleeding.w2"])
            Assert.Null(next.OfDue(Desk.Picture!.Due.Single(d => d.Task == task)).Logs);
        Assert.Equal(Quick.Bleeding, next.OfDue(Desk.Picture!.Due.Single(d => d.Task == "bleeding.w2")).Opens);
        Assert.Equal(Quick.Bleeding, next.First()?.Opens);
        Assert.Equal(
            "wound",
            (next.OfDue(new(Now, "wound", null, "", [], true) { Every = Duration.FromHours(8) }).Logs as Payload.TaskDone)?.Task
        );
        Assert.Equal("why/left-leg", next.OfDue(new(Now, "decide.left-leg", Limb.LeftLeg, "", [], true)).Goes);
    }

    private static readonly Dictionary<string, Payload> Found = new()
    {
        ["weak pulse"] = Well with { RadialPulse = RadialPulse.Weak },
        ["clammy"] = Well with { Clammy = true },
        ["trunk"] = new Payload.CasualtyLookedOver(TrunkWound: true),
        ["elsewhere"] = new Payload.CasualtyLookedOver(BleedingElsewhere: true),
        ["no watch"] = new Payload.WatchStated(false),
        ["move ahead"] = new Payload.CasualtyMoved(Movement.Carried, MovePhase.AboutTo),
        ["no gauze"] = new Payload.SuppliesStated("haemostatic-gauze", 0),
        ["severed"] = new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Amputation),
        ["advice no"] = new Payload.AdviceReceived("Dr Vann", "not now", []),
    };

    [Theory]
    [InlineData("weak pulse", nameof(Quick.Contact))]
    [InlineData("clammy", "signs/take")]
    [InlineData("trunk", nameof(Quick.Contact))]
    [InlineData("elsewhere", nameof(Quick.Wound))]
    [InlineData("no watch", nameof(Quick.Watch))]
    [InlineData("move ahead", nameof(Quick.Moved))]
    [InlineData("no gauze", nameof(Quick.Supplies))]
    [InlineData("severed", "why/left-leg")]
    [InlineData("advice no", nameof(Quick.Contact))]
    public async Task What_decides_leads_to_where_it_is_seen_to(string found, string place)
    {
        await ReadyAsync(Well);
        Time.Advance(TimeSpan.FromSeconds(30));
        await LogAsync(0, Found[found]);
        var step = new NextStep(Desk.Record!, Desk.Picture!, Texts).OfDue(Desk.Picture!.Due.Single(d => d.Task == "next.left-leg"));
        Assert.Equal(place, step.Goes ?? step.Opens?.ToString());
    }

    [Fact]
    public async Task Once_somebody_was_asked_a_sign_of_shock_leads_to_the_next_look()
    {
        await ReadyAsync(Well with { RadialPulse = RadialPulse.Weak });
        await LogAsync(0, new Payload.ContactTried(false));
        Assert.Equal("signs/take", new NextStep(Desk.Record!, Desk.Picture!, Texts).First()?.Goes);
    }

    [Fact]
    public async Task Advice_is_entered_once_somebody_was_reached()
    {
        await TightAsync();
        NextStep Next() => new(Desk.Record!, Desk.Picture!, Texts);
        Assert.Equal(Quick.Contact, Next().OfInput(Input.Oversight).Opens);
        await LogAsync(2, new Payload.ContactTried(true, "Dr Vann"));
        Assert.Equal("ask", Next().OfInput(Input.Oversight).Goes);
        await LogAsync(1, new Payload.AdviceReceived("Dr Vann", "wait"));
        Assert.Equal(Quick.Contact, Next().OfInput(Input.Oversight).Opens);
    }

    [Fact]
    public async Task A_second_look_that_has_to_wait_does_not_stand_before_what_is_overdue()
    {
        await TightAsync();
        await RestAsync(Well);
        var overdue = Desk.Picture!.Due.First(d => d.Overdue);
        var next = new NextStep(Desk.Record!, Desk.Picture!, Texts);
        Assert.Equal(next.OfDue(overdue), next.First());
        Time.Advance(TimeSpan.FromMinutes(9));
        Assert.Equal("signs/take", new NextStep(Desk.Record!, Desk.Picture!, Texts).First()?.Goes);
    }

    [Fact]
    public async Task The_limb_that_waits_leads_to_the_one_that_comes_first()
    {
        await ReadyAsync(Well);
        await LogAsync(20, new Payload.WoundFound("w2", Limb.RightArm, null, WoundNature.Bleeding));
        await LogAsync(19, new Payload.TourniquetTightened("t2", Limb.RightArm, Wound: "w2"));
        await LogAsync(1, new Payload.BleedingChecked("w2", Bleeding.None));
        var waits = Desk.Picture!.Due.Single(d => d.Task == "next.right-arm");
        Assert.Equal("attempt/left-leg", new NextStep(Desk.Record!, Desk.Picture!, Texts).OfDue(waits).Goes);
    }

    [Fact]
    public async Task An_attempt_under_way_is_gone_on_with_before_what_is_overdue()
    {
        await TightAsync(100);
        Assert.Contains(Desk.Picture!.Due, d => d.Overdue);
        await LogAsync(5, new Payload.AttemptStarted("w1", "t1"));
        Assert.Equal("attempt/left-leg", new NextStep(Desk.Record!, Desk.Picture!, Texts).First()?.Goes);
    }

    [Fact]
    public async Task What_is_overdue_does_not_stand_before_an_attempt_that_is_possible_now()
    {
        await ReadyAsync(Well);
        Assert.Contains(Desk.Picture!.Due, d => d is { Task: "pulse-beyond.left-leg", Overdue: true });
        Assert.Equal("attempt/left-leg", new NextStep(Desk.Record!, Desk.Picture!, Texts).First()?.Goes);
    }

    [Fact]
    public async Task A_verdict_to_attempt_leads_to_the_attempt()
    {
        await ReadyAsync(
            Well with
            {
                DistalPulse = System.Collections.Immutable.ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(
                    Limb.LeftLeg,
                    DistalPulse.Absent
                ),
            }
        );
        Assert.Equal("attempt/left-leg", new NextStep(Desk.Record!, Desk.Picture!, Texts).First()?.Goes);
    }
}
