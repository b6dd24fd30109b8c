using System.Text;
using CsCheck;
using Farhold.Tests.Laws;

namespace Farhold.Tests.Care;

public class CarePlanTests
{
    private static readonly Protocol Shipped = ShippedProtocol.Protocol;
    private static readonly Instant Evening = Some.Time("2031-05-04T19:00:00Z"); // 21:00 by the clock of the place

    [Fact]
    public void Every_repeating_task_says_why_and_from_where() =>
        Assert.All(
            Shipped.Tasks.Where(t => t.Once is null && t.Id != "help"),
            task =>
            {
                Assert.False(string.IsNullOrWhiteSpace(task.Reason), task.Id);
                Assert.True(task.Reason!.Length <= 100 && task.Text.Length <= 180, $"{task.Id} is long");
                Assert.NotEmpty(task.Sources);
            }
        );

    /// <summary>
    /// The longest interval each source gives: turning 2 h and mouth 4 h (JTS nursing guideline), signs and with them tourniquet
    /// and dressings 1 h (JSOM Fall 2016 p. 101; Prolonged Casualty Care 2022, Table 5), urine after release 1 to 2 h, potassium 4 to 6 h
    /// (JSOM Fall 2016 p. 101).
    /// </summary>
    [Theory]
    [InlineData("signs", 60)]
    [InlineData("tourniquet", 60)]
    [InlineData("pulse-beyond", 60)]
    [InlineData("dressings", 60)]
    [InlineData("position", 120)]
    [InlineData("mouth", 240)]
    [InlineData("release-urine", 120)]
    [InlineData("release-heart", 240)]
    public void What_a_source_limits_the_data_limit(string task, int minutes) =>
        Assert.Equal(Duration.FromMinutes(minutes), Shipped.Tasks.Single(t => t.Id == task).AtMost);

    [Fact]
    public void The_worse_the_closer() =>
        Assert.All(Shipped.Tasks.Where(t => t.Unstable is not null && t.Every is not null), t => Assert.True(t.Unstable <= t.Every));

    /// <summary>
    /// Whatever the record, the nights and the watches: a task just done comes again, and no later than its source allows.
    /// </summary>
    [Fact]
    public void Nothing_waits_longer_than_its_source_allows()
    {
        var (checkedOnes, moved) = (0, 0);
        Gen.Select(Gens.Record, SomeRhythm.Any(Some.At("09:00")), Gen.Int[0, Shipped.Tasks.Length - 1])
            .Sample(
                (written, rhythm, which) =>
                {
                    var task = Shipped.Tasks[which];
                    var before = written.Judged();
                    // Nobody can have looked after a move that may still go on.
                    if (written.Record.Readings[0].Of(Kind.CasualtyMoved).Any(m => m.When.Latest >= written.Now))
                        return;
                    if (task.Once is not null || before.Due.FirstOrDefault(d => d.Task == task.Id || IsOnLimb(d, task)) is not { } due)
                        return;
                    var done = EntryWriting.Write(
                        new("zz", 1),
                        Happened.At(written.Now),
                        written.Now,
                        "Ane",
                        new Payload.TaskDone(due.Task)
                    );
                    var after = Judge.At(
                        new([.. written.Entries, done], written.Damaged),
                        ShippedRules.Book.By(Shipped),
                        written.Now,
                        rhythm
                    );
                    if (after.Due.FirstOrDefault(d => d.Task == due.Task) is not { } next)
                        return;
                    Interlocked.Increment(ref checkedOnes);
                    if (next.Waits)
                        Interlocked.Increment(ref moved);
                    var interval = after.Unstable ? task.Unstable ?? task.Every!.Value : task.Every!.Value;
                    Assert.True(next.At > written.Now, "it comes again at once");
                    Assert.True(next.At <= written.Now + (task.AtMost ?? task.Night ?? interval), $"{due.Task} waits until {next.At}");
                    Assert.True(next.At >= written.Now + (interval / 2), "it comes again too soon");
                    if (after.Unstable || task.Night is null)
                        Assert.Equal(written.Now + interval, next.At);
                },
                iter: Gens.Cases(4_000)
            );
        Assert.True(checkedOnes >= Gens.Cases(300) && moved >= Gens.Cases(5), $"{checkedOnes} checked, {moved} moved");
    }

    /// <summary>Not the bleeding of a wound, whose task may begin with the same word.</summary>
    private static bool IsOnLimb(DueTask due, CareTask task) =>
        task.Scope != TaskScope.Casualty && due.Task.StartsWith(task.Id + ".", StringComparison.Ordinal);

    [Fact]
    public void Day_and_night_change_no_verdict_and_no_urgent_task() =>
        Gen.Select(Gens.StrangeRecord, SomeRhythm.Any(Some.At("09:00")))
            .Sample(
                (written, rhythm) =>
                {
                    var (plain, fitted) = (written.Judged(), Judge.At(written.Record, ShippedRules.Book.By(Shipped), written.Now, rhythm));
                    Assert.Equal(plain.Limbs.Select(l => l.Verdict), fitted.Limbs.Select(l => l.Verdict));
                    bool Stays(DueTask due) => Shipped.Tasks.All(t => t.Night is null || due.Task.Split('.')[0] != t.Id);
                    Assert.Equal(
                        plain.Due.Where(Stays).Select(d => (d.Task, d.At)).Order(),
                        fitted.Due.Where(Stays).Select(d => (d.Task, d.At)).Order()
                    );
                    Assert.Equal(plain.Due.Select(d => d.Task).Order(), fitted.Due.Select(d => d.Task).Order());
                },
                iter: Gens.Cases(600)
            );

    [Fact]
    public void Knowing_less_never_makes_food_or_drink_right() =>
        Gen.Select(Gens.Record, Gen.OneOf(Gens.LookedAt.ToArray()))
            .Sample(
                (written, input) =>
                {
                    foreach (var state in written.Record.Readings)
                    {
                        // Taken away with the nature of the wounds, a wound of the trunk is not unknown: nobody ever found one.
                        if (input == Input.WoundNature && state.Of(Kind.WoundFound).Any(w => w.As<Payload.WoundFound>().Region is not null))
                            continue;
                        bool Offered(State told, string task) =>
                            Judge
                                .Of(told, [], ShippedRules.Book.By(Shipped), written.Now)
                                .Due.Any(d => d.Task == task && d.LookFirst.IsEmpty);
                        foreach (var task in (string[])["food", "drink"])
                            if (
                                !Offered(state, task)
                                && Judge.Of(state, [], ShippedRules.Book.By(Shipped), written.Now).Withheld.Any(w => w.Name == task)
                            )
                                Assert.False(Offered(Told.Without(state, input), task));
                    }
                },
                iter: Gens.Cases(600)
            );

    [Fact]
    public void What_is_asked_for_from_the_start_is_due_before_the_casualty_was_entered()
    {
        var early = Judge.At(Case.Well.Record, ShippedRules.Book.By(Shipped), Case.Ago("00:40")); // entered 39 minutes ago
        Assert.Contains(early.Due, d => d.Task == "help");
        Assert.DoesNotContain(early.Due, d => d.Task == "wound"); // from six hours on
    }

    [Fact]
    public void What_has_to_be_known_first_is_said_first()
    {
        var due = Due(Resting.Signs(s => s with { Mental = null }), "drink");
        Assert.StartsWith(
            "First talk to the casualty: alert and clear? take all the signs of shock. Then: Offer a drink",
            due!.Text,
            StringComparison.Ordinal
        );
        Assert.Equal([Input.Mental, LongInput.ShockNow], due.LookFirst);
    }

    /// <summary>
    /// TCCC: drink if awake and able to swallow; ASA 2017: clear fluids until 2 h, a light meal until 6 h before surgery (memory, both).
    /// </summary>
    [Fact]
    public void Nothing_by_mouth_unless_alert_and_surgery_is_far()
    {
        var drowsy = Resting.Signs(s => s with { Mental = Mental.Voice }).Judgement;
        Assert.DoesNotContain(drowsy.Due, d => d.Task is "drink" or "food");
        Assert.StartsWith("Nothing by mouth", drowsy.Withheld.Single(w => w.Name == "drink").Text, StringComparison.Ordinal);
        Assert.Null(Due(Resting.HelpIn("01:30"), "drink"));
        Assert.NotNull(Due(Resting.HelpIn("05:00"), "drink"));
        Assert.Null(Due(Resting.HelpIn("05:00"), "food"));
        Assert.NotNull(Due(Resting, "food"));
    }

    /// <summary>
    /// Rescue medical handbook, 8th edition, p. 271: nothing by mouth with a major wound of the belly; the rest common practice.
    /// </summary>
    [Fact]
    public void Nothing_by_mouth_with_a_wound_of_belly_or_chest_vomiting_or_shock()
    {
        Payload Wound(BodyRegion region, WoundNature nature) => new Payload.WoundFound("w9", null, region, nature);
        foreach (
            var casualty in (Case[])
                [
                    Resting
                        .And("01:00", Wound(BodyRegion.Abdomen, WoundNature.Bleeding))
                        .And("00:55", new Payload.BleedingChecked("w9", Bleeding.None)),
                    Resting
                        .And("01:00", Wound(BodyRegion.Chest, WoundNature.Bleeding))
                        .And("00:55", new Payload.BleedingChecked("w9", Bleeding.None)),
                    Resting.LookedOver(o => o with { TrunkWound = true }),
                    Resting.And("01:00", new Payload.NoteWritten("Vomited twice")),
                    Resting.Signs(s => s with { RadialPulse = RadialPulse.Weak }),
                    Resting.Signs(s => s with { Pale = true, Clammy = true }),
                    // seen a while ago
                    Resting.With("earlier", null).With("signs", Some.GoodSigns with { Pale = true, Clammy = true }, "00:40"),
                    Resting.Signs(s => s with { Mental = Mental.Voice }),
                ]
        )
        {
            var judged = casualty.Judgement;
            Assert.DoesNotContain(judged.Due, d => d.Task is "drink" or "food");
            Assert.Contains(judged.Withheld, w => w.Name == "drink");
            Assert.Contains(judged.Withheld, w => w.Name == "food");
        }

        Assert.NotNull(
            Due(
                Resting
                    .And("01:00", Wound(BodyRegion.Abdomen, WoundNature.Burn))
                    .And("00:55", new Payload.BleedingChecked("w9", Bleeding.None)),
                "drink"
            )
        );
        Assert.NotNull(Due(Resting.And("05:00", new Payload.NoteWritten("vomited once")), "drink"));
    }

    [Fact]
    public void A_sign_of_shock_that_nobody_looked_at_is_looked_at_before_a_drink()
    {
        var due = Due(Resting.Signs(s => s with { Clammy = null }), "drink");
        Assert.StartsWith("First take all the signs of shock. Then: Offer a drink", due!.Text, StringComparison.Ordinal);
    }

    /// <summary>Rescue medical handbook, 8th edition, p. 33: severely injured and unstable, nothing by mouth in the first 24 h.</summary>
    [Fact]
    public void No_food_while_unstable() =>
        Assert.Contains(Resting.Signs(s => s with { Pale = true }).Judgement.Withheld, w => w.Name == "food");

    [Fact]
    public void A_pain_asked_among_the_signs_counts_as_asking() =>
        Assert.Equal(Case.Now + Duration.FromMinutes(235), Due(Resting.Signs(s => s with { Pain = 3 }), "pain")!.At);

    [Theory]
    [InlineData("drink", "2031-05-05T03:00:00Z")] // 23:00 by the clock of the place: until the watch changes at 05:00
    [InlineData("mouth", "2031-05-04T23:00:00Z")] // half past its interval there is one change, at 01:00; four hours is all it may wait
    [InlineData("position", "2031-05-04T21:00:00Z")] // never moved
    [InlineData("warmth", "2031-05-04T21:00:00Z")] // nights are cold: never moved
    public void At_night_comfort_waits_for_the_change_of_watch(string task, string at) =>
        Assert.Equal(Some.Time(at), Settled(false).Due.Single(d => d.Task == task).At);

    [Fact]
    public void An_unstable_casualty_has_no_night()
    {
        var unstable = Settled(true);
        Assert.All(unstable.Due, d => Assert.False(d.Waits));
        Assert.Equal(Evening + Duration.FromHours(1), unstable.Due.Single(d => d.Task == "pain").At);
    }

    /// <summary>
    /// JTS crush guideline: possible from 1 h without blood, treated alike after 2 h. In between, on the safer side, the heart is
    /// watched.
    /// </summary>
    [Theory]
    [InlineData("01:05")]
    [InlineData("01:30", "release-heart")]
    [InlineData("02:20", "release-fluid", "release-heart", "release-limb", "release-urine")]
    public void The_longer_the_limb_was_without_blood_the_more_follows_its_release(string tightened, params string[] tasks)
    {
        var judged = Case.Well.TightFor(tightened).And("00:10", new Payload.TourniquetSlackened("t1")).Judgement;
        Assert.Equal(tasks, judged.Due.Where(d => d.Group == TaskGroup.Release).Select(d => d.Task.Split('.')[0]).Order());
        Assert.All(judged.Due.Where(d => d.Group == TaskGroup.Release), d => Assert.Equal(Limb.LeftLeg, d.Limb));
    }

    [Theory]
    [InlineData("01:59", false)]
    [InlineData("02:00", true)]
    public void From_two_hours_on_it_is_said_what_speaks_against_release(string tightened, bool said) =>
        Assert.Equal(said, Case.Well.TightFor(tightened).Judgement.Due.Any(d => d.Task == "before-release.left-leg"));

    [Fact]
    public void Urine_after_a_release_takes_the_place_of_urine()
    {
        var judged = Resting.TightFor("05:00").And("02:30", new Payload.TourniquetSlackened("t1")).Judgement;
        Assert.Contains(judged.Due, d => d.Task == "release-urine.left-leg");
        Assert.DoesNotContain(judged.Due, d => d.Task is "urine" or "drink");
    }

    [Fact]
    public void A_local_protocol_may_bring_a_task_closer_in_few_words()
    {
        var local = Local("""{"id":"position","scope":"casualty","text":"Turn.","every":"PT1H","doneBy":[],"sources":["JTS-nursing"]}""");
        var task = Assert.IsType<Read<Protocol>.Usable>(local).Value.Tasks.Single(t => t.Id == "position");
        Assert.Equal(
            (Duration.FromHours(1), Duration.FromHours(2), 2, TaskGroup.Nursing),
            (task.Every, task.AtMost, task.People, task.Group)
        );
    }

    [Theory]
    [InlineData(
        """{"id":"position","scope":"casualty","text":"Turn.","every":"PT3H","doneBy":[],"sources":["JTS-nursing"]}""",
        "every is longer than atMost"
    )]
    [InlineData("""{"id":"position","scope":"casualty","text":"Turn.","every":"PT3H","doneBy":[],"sources":[]}""", "at least one source")]
    [InlineData(
        """{"id":"mouth","scope":"casualty","text":"Mouth.","every":"PT2H","night":"PT1H","doneBy":[],"sources":["JTS-nursing"]}""",
        "no shorter than every"
    )]
    [InlineData(
        """{"id":"new","scope":"casualty","text":"New.","every":"PT2H","when":{"input":"bleeding","in":["active"]},"doneBy":[],"sources":["JTS-nursing"]}""",
        "can't ask about a limb"
    )]
    public void What_a_local_protocol_may_not_do_to_a_task_is_refused(string task, string reason) =>
        Assert.Contains(
            Assert.IsType<Read<Protocol>.Refused>(Local(task)).Refusals,
            r => r.Reason.Contains(reason, StringComparison.Ordinal)
        );

    [Theory]
    [InlineData(
        """{"id":"position","scope":"casualty","text":"Turn.","every":"PT3H","atMost":"PT3H","doneBy":[],"sources":["JTS-nursing"]}"""
    )]
    [InlineData("""{"id":"position","drop":true}""")]
    [InlineData(
        """{"id":"drink","scope":"casualty","text":"Drink.","every":"PT2H","when":{"input":"mental","in":["alert","confused"]},"doneBy":["fluid.given"],"sources":["TCCC-drink"]}"""
    )]
    public void Going_beyond_a_source_is_told_on_every_screen(string task) =>
        Assert.StartsWith(
            "the task",
            Assert.Single(Assert.IsType<Read<Protocol>.Usable>(Local(task)).Value.Local!.Loosened),
            StringComparison.Ordinal
        );

    /// <summary>Well, ten hours into the wait, the tourniquet long loosened after forty minutes.</summary>
    private static Case Resting =>
        Case
            .Well.With("person", new Payload.CasualtyOpened("Runa", AgeYears: 34), "10:00")
            .With("tourniquet", new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"), "10:00")
            .And("09:20", new Payload.TourniquetSlackened("t1"));

    private static DueTask? Due(Case casualty, string task) => casualty.Judgement.Due.SingleOrDefault(d => d.Task == task);

    /// <summary>All done at nine in the evening, with two who change watch every four hours from 13:00 by the clock of the place.</summary>
    private static Judgement Settled(bool pale)
    {
        (Instant At, Payload What)[] said =
        [
            (Evening - Duration.FromHours(30), new Payload.CasualtyOpened("Runa", AgeYears: 34)),
            (
                Evening - Duration.FromHours(2),
                new Payload.HelpExpected(Evening + Duration.FromHours(30), null, Evening + Duration.FromHours(40))
            ),
            (Evening, Some.GoodSigns with { Pale = pale, Pain = 2 }),
            .. Shipped.Tasks.Where(t => t.Scope == TaskScope.Casualty).Select(t => (Evening, (Payload)new Payload.TaskDone(t.Id))),
        ];
        var record = new CareRecord(
            [.. said.Select((s, i) => EntryWriting.Write(new("a", i + 1), Happened.At(s.At), s.At, "Ane", s.What))],
            []
        );
        return Judge.At(record, ShippedRules.Book.By(Shipped), Evening, SomeRhythm.Of(Evening, "Ane", "Jon"));
    }

    private static Read<Protocol> Local(string task) =>
        Protocols.LocalFile.Read(
            $$"""
            {"local":"hut","version":"1","title":"Of the hut","over":"farhold-base","tasks":[{{task}}]}
            """
        );
}
