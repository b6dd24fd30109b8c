using System.Text;
using CsCheck;

namespace Farhold.Rehearsal.Tests;

public class SessionTests
{
    private static readonly string[] Lines =
    [
        """{"act":"tighten","limb":"left-leg"}""",
        """{"act":"slacken","limb":"left-leg"}""",
        """{"act":"pack","wound":"w1","material":"haemostatic-gauze"}""",
        """{"act":"press","wound":"w1","minutes":2}""",
        """{"act":"dress","wound":"w1"}""",
        """{"act":"move"}""",
        """{"act":"drink","millilitres":200,"salts":true}""",
        """{"act":"infuse","fluid":"crystalloid","millilitres":250,"minutes":5}""",
        """{"look":["signs"],"log":true}""",
        """{"look":"bleeding","wound":"w1","log":true}""",
        """{"entry":{"kind":"tourniquet.slackened","tourniquet":"t1"}}""",
        """{"entry":{"kind":"pressure.held","wound":"w1","minutes":1}}""",
        """{"entry":{"kind":"watch.stated","able":true}}""",
    ];

    private static readonly Gen<Script> Scripts = Gen.Select(
            Gen.Int[0, 1_700],
            Gen.Int[0, Lines.Length - 1].Select(i => Lines[i]),
            (at, line) => $$"""{"at":"PT{{at}}S",{{line[1..]}}"""
        )
        .Array[0, 14]
        .Select(lines => Shipped.Acts([.. lines, """{"at":"PT30M","look":"mental"}"""]));

    /// <summary>Same acts and seed, same truth and same record, however a clock lets time pass.</summary>
    [Fact]
    public void Truth_and_record_do_not_depend_on_how_time_is_cut() =>
        Gen.Select(Scripts, Gen.ULong[0, 1_000_000], Gen.Double[0.1, 700])
            .Sample(
                (script, seed, chunk) =>
                {
                    var (whole, cut) = (Play(script, seed, double.PositiveInfinity), Play(script, seed, chunk));
                    return TruthFile.Write(whole.Truth) == TruthFile.Write(cut.Truth) && RecordOf(whole) == RecordOf(cut);
                },
                iter: Cases.Of(60)
            );

    [Fact]
    public void A_rerun_by_the_truth_file_gives_the_truth_again() =>
        Gen.Select(Scripts, Gen.ULong[0, 1_000_000])
            .Sample(
                (script, seed) =>
                {
                    var file = Truth(Play(script, seed, 300));
                    return Shipped.Usable(file.Again(Small(), "t")).Differs is null;
                },
                iter: Cases.Of(40)
            );

    /// <summary>Whoever takes an act out, or puts a number right, is found out.</summary>
    [Theory]
    [InlineData("\"asked\":{\"act\":\"slacken\"", null)]
    [InlineData("\"wound\":\"w1\"", "\"wound\":\"w2\"")]
    [InlineData("\"seed\":7", "\"seed\":8")]
    [InlineData("\"key\":\"", "\"key\":\"AA")]
    public void A_changed_truth_file_differs_from_its_rerun(string what, string? with)
    {
        var session = Play(
            Shipped.Acts("""{"at":"PT1M","act":"slacken","limb":"left-leg"}""", """{"at":"PT2M","look":"bleeding","wound":"w1"}"""),
            7,
            60
        );
        var lines = TruthFile.Write(session.Truth).TrimEnd('\n').Split('\n').ToList();
        var at = lines.FindIndex(l => l.Contains(what, StringComparison.Ordinal));
        Assert.True(at >= 0);
        if (with is null)
            lines.RemoveAt(at);
        else
            lines[at] = lines[at].Replace(what, with, StringComparison.Ordinal);
        var read = TruthFile.Read(Encoding.UTF8.GetBytes(string.Join('\n', lines)), "t");
        if (read is Read<TruthFile>.Usable(var file))
            Assert.NotNull(Shipped.Usable(file.Again(Small(), "t")).Differs);
        else
            Assert.Equal(at + 1, ((Read<TruthFile>.Refused)read).Refusals[0].Line);
    }

    /// <summary>What who leads had happen is asked again too, and gives the same truth.</summary>
    [Fact]
    public void A_rerun_of_a_led_rehearsal_gives_the_truth_again()
    {
        var scenario = Small("""{"id":"bare","at":"PT20M","acts":[{"act":"slacken","limb":"left-leg"}],"say":"It slips."}""");
        var session = new RehearsalSession(scenario);
        session.AdvanceTo(61.2);
        Assert.Null(session.InjectNow("bare"));
        session.AdvanceTo(90);
        Assert.Null(session.Show(new(HeartRate: 141)));
        Assert.Null(session.Look(LookKind.Pulse, by: "Ola"));
        session.AdvanceTo(125.3);
        Assert.Null(session.Do(new(new Act.Tighten(Limb: "left-leg")), "Bo"));
        session.AdvanceTo(1_900);
        Assert.Equal(new Shown.Number(141), session.Shown.Single().Shown);
        Assert.True(session.Spells[0].From < 125);

        var text = TruthFile.Write(session.Truth);
        Assert.Contains("""{"at":90,"asked":{"show":{"heartRate":141}}}""", text, StringComparison.Ordinal);
        Assert.Contains(session.Truth, l => l is TruthLine.ActAsked { By: "Bo" });
        var again = Shipped.Usable(Shipped.Usable(TruthFile.Read(Encoding.UTF8.GetBytes(text), "t")).Again(scenario, "t"));
        Assert.Null(again.Differs);
        Assert.Equal(text, TruthFile.Write(again.Session.Truth));
    }

    /// <summary>It happens at once, with what it does, and not once more at its time.</summary>
    [Fact]
    public void An_inject_by_hand_comes_once_and_what_is_not_there_is_refused()
    {
        var session = new RehearsalSession(
            Small(
                """
                {"id":"soon","at":"PT2M","say":"soon"},
                {"id":"held","when":{"input":"sinceSlackened.left-leg","atLeast":"PT1S"},"after":"PT1M","say":"held"}
                """
            )
        );
        Assert.Equal([("soon", 120.0), ("held", null)], session.Coming.Select(c => (c.Inject.Id, c.At)));
        session.AdvanceTo(30);
        Assert.NotNull(session.InjectNow("never"));
        Assert.Null(session.InjectNow("soon"));
        Assert.NotNull(session.InjectNow("soon"));
        session.Do(new(new Act.Slacken("left-leg")));
        session.AdvanceTo(100);
        Assert.InRange(Assert.Single(session.Coming).At!.Value, 30 + 60 + 60, 30 + 60 + 60 + 5);
        session.AdvanceTo(400);
        Assert.Equal(
            [("soon", 30.0)],
            session.Truth.OfType<TruthLine.Injected>().Where(i => i.Inject == "soon").Select(i => (i.Inject, i.At))
        );
        Assert.Empty(session.Coming);
    }

    [Fact]
    public void With_nothing_set_any_more_looks_show_the_truth_again()
    {
        var session = new RehearsalSession(Small());
        session.Show(new(HeartRate: 141, TemperatureC: 34));
        session.Show(new(HeartRate: 150));
        Assert.Equal(new SignOverride(HeartRate: 150, TemperatureC: 34), session.Overrides);
        session.Show(SignOverride.None);
        session.Look(LookKind.Pulse);
        session.AdvanceTo(60);
        var (shown, real) = ((Shown.Number)session.Shown.Single().Shown, (Shown.Number)session.Shown.Single().True);
        Assert.InRange(shown.Value, real.Value * 0.9, real.Value * 1.1);
        Assert.True(real.Value < 120);
    }

    /// <summary>Every act that is offered names something of the casualty, is read as it is written, and can be begun.</summary>
    [Fact]
    public void Every_act_offered_to_who_leads_can_be_begun()
    {
        foreach (var scenario in Shipped.Names.Select(Shipped.Scenario))
        {
            var offered = OfferedActs.For(scenario);
            Assert.Equal((2 * scenario.Limbs.Length) + (5 * scenario.Wounds.Length) + 3, offered.Length);
            var session = new RehearsalSession(scenario);
            foreach (var act in offered)
            {
                var line = Assert.IsType<TruthLine.ActAsked>(AskedLine.Parse(OfferedActs.Write(act)));
                Assert.Equal(act, line.Act.Act);
                Assert.Null(AskedLine.Do(session, line, "Ola"));
            }
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("""{"act":"fly"}""")]
    [InlineData("""{"look":"aura"}""")]
    [InlineData("""{"show":{"heartRate":9000}}""")]
    [InlineData("""{"inject":"a","more":1}""")]
    public void What_asks_for_nothing_known_is_no_line(string json) => Assert.Null(AskedLine.Parse(json));

    /// <summary>The truth between key frames: what flows while the tourniquet is let out, and none once it is tight.</summary>
    [Fact]
    public void The_present_truth_follows_the_tourniquet()
    {
        var session = new RehearsalSession(Small());
        Assert.Equal((true, true), (session.Present.Tight[0], session.Present.Flow[0] < 1));
        session.Do(new(new Act.Slacken("left-leg")));
        session.AdvanceTo(90);
        Assert.Equal((false, true), (session.Present.Tight[0], session.Present.Flow[0] > 15));
        Assert.True(session.Present.LostMl > session.Frames[0].LostMl);
    }

    [Fact]
    public void The_truth_of_another_scenario_is_refused()
    {
        var file = Truth(Play(Shipped.Acts("""{"at":"PT1M","look":"mental"}"""), 7, 60));
        var refused = Assert.IsType<Read<Rerun>.Refused>(file.Again(Shipped.Scenario("needless"), "t.truth.jsonl"));
        Assert.Contains("another scenario", refused.Refusals[0].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Hands_do_one_thing_at_a_time_and_eyes_do_not_wait()
    {
        var session = new RehearsalSession(Small(party: ""));
        session.Do(new(new Act.Pack("w1", PackingGauze.Plain)));
        session.Do(new(new Act.Press("w1"), 3));
        session.Do(new(new Act.Dress("w1")));
        session.Look(LookKind.Pulse);
        session.Look(LookKind.Mental);
        session.AdvanceTo(600);
        var began = session.Truth.OfType<TruthLine.Began>().Where(b => b.At >= 0).ToArray();
        Assert.Equal(["pack", "press", "release", "dress"], began.Select(b => ActFields.Word(b.Act)));
        Assert.Equal((0.0, began[0].Until, began[1].At + 180), (began[0].At, began[1].At, began[3].At));
        Assert.Equal(10, session.Shown.Single(s => s.Kind == LookKind.Mental).At);
        Assert.Equal(began[3].Until + 15, session.Shown.Single(s => s.Kind == LookKind.Pulse).At);
    }

    /// <summary>With somebody else there, who counts while the trainee packs.</summary>
    [Fact]
    public void A_helper_counts_the_pulse_meanwhile()
    {
        var session = new RehearsalSession(Small());
        session.Do(new(new Act.Pack("w1", PackingGauze.Plain)));
        session.Look(LookKind.Pulse);
        session.AdvanceTo(60);
        Assert.Equal(15, session.Shown.Single().At);
    }

    [Fact]
    public void Pressure_that_is_only_logged_is_held_for_so_long_and_what_was_pressed_is_not_pressed_again()
    {
        var session = new RehearsalSession(Small());
        session.Log(new Payload.PressureHeld("w1", 4));
        session.AdvanceTo(400);
        Assert.Equal([0.0, 240], session.Truth.OfType<TruthLine.Began>().Where(b => b.At >= 0).Select(b => b.At));
        session.Log(new Payload.PressureHeld("w1", 4));
        session.AdvanceTo(800);
        Assert.Equal(2, session.Truth.OfType<TruthLine.Began>().Count(b => b.At >= 0));
    }

    [Fact]
    public void With_an_instructor_an_entry_moves_nothing()
    {
        var session = new RehearsalSession(Small());
        session.Log(new Payload.TourniquetSlackened("t1"), acts: false);
        session.AdvanceTo(300);
        Assert.Equal([true], session.Frames[^1].Tight);
        Assert.Contains(session.Record, e => e.Payload is Payload.TourniquetSlackened);
    }

    [Theory]
    [InlineData("""{"at":"PT1M","act":"pack","wound":"w9","material":"cloth"}""", "no wound w9")]
    [InlineData("""{"at":"PT1M","act":"tighten","limb":"right-arm"}""", "on the right arm")]
    [InlineData("""{"at":"PT1M","look":"bleeding","wound":"w9"}""", "no wound w9")]
    [InlineData("""{"at":"PT1H","look":"mental"}""", null)]
    public void A_deed_of_which_nothing_comes_says_so(string line, string? why)
    {
        var said = new List<string>();
        Headless.Run(Small(), Shipped.Acts(line), refused: (_, reason) => said.Add(reason));
        Assert.Equal(why is not null, said.Any(s => s.Contains(why ?? "?", StringComparison.Ordinal)));
    }

    [Fact]
    public void Injects_come_at_their_time_or_once_their_condition_has_held()
    {
        var scenario = Small(
            """
            {"id":"timed","at":"PT2M","say":"two minutes"},
            {"id":"held","when":{"input":"sinceSlackened.left-leg","atLeast":"PT30S"},"after":"PT1M","say":"held"},
            {"id":"each","when":{"input":"tight.left-leg","is":true},"once":false,"say":"tight"},
            {"id":"never","when":{"not":{"input":"sinceTightened.left-leg","above":"PT99H"}},"say":"known"},
            {"id":"sign","at":"PT4M","show":{"heartRate":141}}
            """
        );
        var session = Headless.Run(
            scenario,
            Shipped.Acts(
                """{"at":"PT3M","act":"slacken","limb":"left-leg"}""",
                """{"at":"PT5M","look":"pulse"}""",
                """{"at":"PT10M","act":"tighten","limb":"left-leg"}"""
            )
        );
        var came = session.Truth.OfType<TruthLine.Injected>().ToLookup(i => i.Inject, i => i.At);
        Assert.Equal([120.0], came["timed"]);
        // Slackening takes a minute; half a minute later the condition is met, and a minute on it has held.
        Assert.Equal([180.0 + 60 + 30 + 60], came["held"]);
        Assert.Equal([0.0, 600], came["each"]);
        Assert.Equal([0.0], came["never"]);
        Assert.Equal(new Shown.Number(141), session.Shown.Single().Shown);
        Assert.NotEqual(new Shown.Number(141), session.Shown.Single().True);
    }

    /// <summary>What has not happened is unknown, and neither a condition on it nor its opposite is met.</summary>
    [Fact]
    public void A_condition_on_what_has_not_happened_is_never_met()
    {
        var session = Headless.Run(
            Small(
                """
                {"id":"a","when":{"input":"sinceSlackened.left-leg","atLeast":"PT1S"},"say":"a"},
                {"id":"b","when":{"not":{"input":"sinceSlackened.left-leg","atLeast":"PT1S"}},"say":"b"}
                """
            ),
            Shipped.Acts("""{"at":"PT1M","look":"mental"}""")
        );
        Assert.DoesNotContain(session.Truth, l => l is TruthLine.Injected);
    }

    [Fact]
    public void The_next_thing_is_the_inject_the_turn_or_what_is_due_and_bleeding_makes_it_real_time()
    {
        var session = new RehearsalSession(Small("""{"id":"timed","at":"PT40S","say":"soon"}"""));
        var (at, what) = Pace.Next(session, ShippedRules.Book);
        Assert.Equal((40.0, null), (at, what));
        session.AdvanceTo(at + 5, stop: true);
        Assert.Equal(HappeningKind.Said, session.Happenings[^1].Kind);
        var picture = Judge.At(new(session.Record, []), ShippedRules.Book, session.Now);
        Assert.Equal(1, Pace.After(60, session.Happenings, picture));
        Assert.Equal(60, Pace.After(60, [], picture));
        Assert.True(Pace.Next(session, ShippedRules.Book).At > session.Time);
        session.Do(new(new Act.Slacken("left-leg")));
        var before = session.Happenings.Count;
        session.AdvanceTo(1_500, stop: true);
        Assert.Contains(session.Happenings.Skip(before), h => h.Kind == HappeningKind.BleedsInView);
        session.Log(new Payload.TourniquetTightened("t1", Limb.LeftLeg));
        session.Log(new Payload.AttemptStarted("w1", "t1"));
        Assert.Equal(session.Time + 1, Pace.Next(session, ShippedRules.Book).At);
        Assert.Equal(1, Pace.After(60, [], Judge.At(new(session.Record, []), ShippedRules.Book, session.Now)));
    }

    private static RehearsalSession Play(Script script, ulong seed, double chunk)
    {
        var session = new RehearsalSession(Small(), seed);
        foreach (var deed in script.Deeds)
        {
            while (!double.IsInfinity(chunk) && session.Time + chunk < deed.At && !session.IsOver)
                session.AdvanceTo(session.Time + chunk);
            session.AdvanceTo(deed.At);
            switch (deed)
            {
                case Deed.Does does:
                    session.Do(does.Act);
                    break;
                case Deed.Looks looks:
                    foreach (var kind in looks.Kinds)
                        session.Look(kind, looks.Wound);
                    break;
                case Deed.Logs logs:
                    session.Log(logs.Payload);
                    break;
            }
        }

        session.AdvanceTo(1_800);
        return session;
    }

    private static TruthFile Truth(RehearsalSession session) =>
        Shipped.Usable(TruthFile.Read(Encoding.UTF8.GetBytes(TruthFile.Write(session.Truth)), "t"));

    private static string RecordOf(RehearsalSession session) => string.Join('\n', session.Record.Select(e => e.Json));

    internal static Scenario Small(string injects = "", string party = """,{"name":"Bo"}""") =>
        Shipped.Usable(
            ScenarioReader.Read(
                Encoding.UTF8.GetBytes(
                    $$$"""
                    {"scenario":"small","title":"Small","briefing":"A leg.","model":1,"seed":7,"start":"2031-05-04T02:00:00Z",
                     "casualty":{"alias":"Sunna","sex":"female","ageYears":34,"massKg":66,"heightM":1.7},
                     "wounds":[{"wound":"w1","limb":"left-leg","vessel":"artery","bleedMlPerMin":200}],
                     "injured":"-PT4M","before":[{"at":"-PT2M","act":"tighten","limb":"left-leg","tourniquet":"t1"}],
                     "surroundings":{"airC":12},"party":[{"name":"Ane"}{{{party}}}],"injects":[{{{injects}}}],"end":{"at":"PT30M"}}
                    """
                ),
                "small"
            )
        );
}
