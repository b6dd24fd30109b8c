using System.Collections.Immutable;
using System.Text;

namespace Farhold.Rehearsal.Tests;

/// <summary>A lesson that was led, and the record that the trainee kept on a phone and by a clock of their own.</summary>
public class TraineeRecordTests
{
    /// <summary>Years from the scene: the two clocks share nothing.</summary>
    private static readonly Instant Begun = Instant.FromUtc(2033, 2, 1, 9, 0);

    /// <summary>Run for ten minutes, stood for five, put on by half an hour at once, then at fifteen times the wall's pace.</summary>
    private static readonly RunClock Clock = new([
        new(0, Begun, 1),
        new(600, Begun + Duration.FromMinutes(10), 0),
        new(2_400, Begun + Duration.FromMinutes(15), 15),
    ]);

    [Theory]
    [InlineData(-60, -60)]
    [InlineData(0, 0)]
    [InlineData(599, 599)]
    [InlineData(600, 600)]
    [InlineData(890, 600)]
    [InlineData(900, 2_400)]
    [InlineData(904, 2_460)]
    public void A_moment_of_the_wall_is_where_the_run_was_then(double wall, double scene) =>
        Assert.Equal(scene, Clock.SceneAt(Begun + Duration.FromSeconds(wall)), 6);

    [Theory]
    [InlineData(-60, -60)]
    [InlineData(300, 300)]
    [InlineData(600, 600)]
    [InlineData(1_500, 900)]
    [InlineData(2_400, 900)]
    [InlineData(2_460, 904)]
    public void A_time_of_the_run_is_when_the_wall_showed_it(double scene, double wall) =>
        Assert.Equal(wall, (Clock.WallAt(scene) - Begun).TotalSeconds, 6);

    [Fact]
    public void What_was_logged_as_it_was_done_is_not_blamed_on_pauses_leaps_and_paces()
    {
        var debrief = Debriefed(Logged());
        Assert.DoesNotContain(debrief.Remarks, r => IsOfLog(r.Fault));
        Assert.Equal(9, debrief.Proof.Trainee);
        Assert.False(debrief.Proof.Holds);
        Assert.Equal("heart rate", Assert.Single(debrief.Log.Numbers).Sign);
        // Begun 30 s after the lesson was put on to 40 minutes, at fifteen times the pace; letting out takes a minute.
        Assert.Equal(2_400 + (15 * 30) + 60, Assert.Single(debrief.Delays).LetOut);
    }

    [Theory]
    [InlineData("dressed", null, 0, Fault.DoneNotLogged, "w1 dressed")]
    [InlineData("loose", null, 0, Fault.DoneNotLogged, "right leg let out")]
    [InlineData("dressed", null, 250, Fault.LoggedAtWrongTime, "away from when it was done")]
    [InlineData("dressed", "again", 0, Fault.LoggedNotDone, "tightened")]
    [InlineData("pulse", null, 40, Fault.LoggedWrongly, "140")]
    public void What_was_not_so_and_what_was_not_logged_are_said(string line, string? more, double late, Fault fault, string says)
    {
        var lines = Logged().ToList();
        var at = lines.FindIndex(l => l.Name == line);
        if (line == "pulse")
            lines[at] = lines[at] with { Payload = new Payload.SignsTaken { HeartRate = 140 } };
        else if (more is not null)
            lines.Add(lines[at] with { Name = more, Payload = new Payload.TourniquetTightened("t1", Limb.RightLeg) });
        else if (late > 0)
            lines[at] = lines[at] with { Happened = lines[at].Wall - Duration.FromSeconds(late) };
        else
            lines.RemoveAt(at);
        var remarks = Debriefed(lines).Remarks.Where(r => IsOfLog(r.Fault));
        var remark = Assert.Single(remarks);
        Assert.Equal(fault, remark.Fault);
        Assert.Contains(says, remark.Text, StringComparison.Ordinal);
    }

    /// <summary>What was corrected on the phone counts as corrected; what was withdrawn was never logged.</summary>
    [Fact]
    public void An_entry_that_was_withdrawn_was_not_logged()
    {
        var lines = Logged().ToList();
        lines.Add(new("undo", lines[^1].Wall, new Payload.EntryWithdrawn(new("tr", lines.FindIndex(l => l.Name == "dressed") + 1), "no")));
        Assert.Equal(Fault.DoneNotLogged, Assert.Single(Debriefed(lines).Remarks, r => IsOfLog(r.Fault)).Fault);
    }

    [Fact]
    public void A_wound_of_the_wrong_leg_is_not_taken_for_the_casualtys()
    {
        var lines = Logged().ToList();
        lines[1] = lines[1] with { Payload = new Payload.WoundFound("hers", Limb.LeftLeg, null, WoundNature.Bleeding) };
        var debrief = Debriefed(lines);
        Assert.Contains(debrief.Remarks, r => r.Fault == Fault.LoggedNotDone && r.Text.Contains("hers", StringComparison.Ordinal));
        Assert.Contains(debrief.Remarks, r => r.Fault == Fault.DoneNotLogged);
    }

    [Fact]
    public void A_real_record_another_days_record_and_a_run_that_nobody_led_are_refused()
    {
        var session = Led();
        var real = Logged().Select((l, i) => Entry(l, i, practice: false)).ToImmutableArray();
        Assert.Contains("not marked as practice", Refusal(session, real), StringComparison.Ordinal);
        var old = Logged().Select((l, i) => Entry(l with { Wall = l.Wall - Duration.FromDays(3) }, i)).ToImmutableArray();
        Assert.Contains("from 2033-02-01T09:00:00Z", Refusal(session, old), StringComparison.Ordinal);
        Assert.Contains("the phone that led", Refusal(session, [.. session.Record]), StringComparison.Ordinal);
        Assert.Contains(
            "nobody led",
            Refusal(Shipped.Run("needless"), [.. Logged().Select((l, i) => Entry(l, i))]),
            StringComparison.Ordinal
        );
    }

    /// <summary>Paces stand in the truth file, and a re-run takes them up.</summary>
    [Fact]
    public void A_led_run_is_run_again_with_its_paces()
    {
        var session = Led();
        var file = Shipped.Usable(TruthFile.Read(Encoding.UTF8.GetBytes(TruthFile.Write(session.Truth)), "t"));
        var again = Shipped.Usable(file.Again(Shipped.Scenario("bled-at-slackening"), "t"));
        Assert.Null(again.Differs);
        Assert.Equal(session.Truth.OfType<TruthLine.Paced>(), again.Session.Truth.OfType<TruthLine.Paced>());
    }

    private static bool IsOfLog(Fault fault) =>
        fault
            is Fault.DoneNotLogged
                or Fault.LoggedNotDone
                or Fault.LoggedAtWrongTime
                or Fault.LoggedWrongly
                or Fault.NeverLooked
                or Fault.WrittenLate;

    /// <summary>Led: looked at, packed and dressed; put on to 40 minutes; let out at fifteen times the pace.</summary>
    private static RehearsalSession Led()
    {
        var session = new RehearsalSession(Shipped.Scenario("bled-at-slackening"));
        session.Pace(Begun, 1);
        session.AdvanceTo(60);
        session.Look(LookKind.Pulse, by: "Ola");
        session.AdvanceTo(120);
        session.Do(new(new Act.Pack("w1", PackingGauze.Plain)), "Ola");
        session.AdvanceTo(300);
        session.Do(new(new Act.Dress("w1")), "Ola");
        session.AdvanceTo(600);
        session.Pace(Begun + Duration.FromMinutes(10), 0);
        session.AdvanceTo(2_400);
        session.Pace(Begun + Duration.FromMinutes(15), 15);
        session.AdvanceTo(2_400 + (15 * 30));
        session.Do(new(new Act.Slacken("right-leg")), "Ola");
        session.AdvanceTo(2_400 + (15 * 60));
        return session;
    }

    /// <summary>Wounds and tourniquets have names of the trainee's own; the pulse is what the look showed, rounded.</summary>
    private static ImmutableArray<Line> Logged()
    {
        var pulse = ((Shown.Number)Led().Shown[0].Shown).Value;
        return
        [
            new("opened", Wall(-90), new Payload.CasualtyOpened("Practice")),
            new("found", Wall(-60), new Payload.WoundFound("hers", Limb.RightLeg, null, WoundNature.Bleeding)),
            new("tied", Wall(-40), new Payload.TourniquetTightened("t9", Limb.RightLeg), Begun - Duration.FromMinutes(20)),
            new("help", Wall(10), new Payload.HelpExpected(Wall(10) + Duration.FromHours(9))),
            new("pulse", Wall(110), new Payload.SignsTaken { HeartRate = Math.Round(pulse) }),
            new("packed", Wall(230), new Payload.WoundPacked("hers", PackingMaterial.PlainGauze)),
            new("dressed", Wall(400), new Payload.DressingApplied("hers", DressingKind.Pressure)),
            new("late", Wall(720), new Payload.NoteWritten("waiting")),
            new("loose", Wall(900 + 40), new Payload.TourniquetSlackened("t9")),
        ];
    }

    private static Instant Wall(double seconds) => Begun + Duration.FromSeconds(seconds);

    private static Debrief Debriefed(IEnumerable<Line> lines)
    {
        var session = Led();
        var record = Shipped.Usable(TraineeRecord.On(session, [.. lines.Select((l, i) => Entry(l, i))], "theirs"));
        return Debrief.Of(new(session, null), record, ShippedRules.Book);
    }

    private static string Refusal(RehearsalSession session, ImmutableArray<Entry> record) =>
        ((Read<TraineeRecord>.Refused)TraineeRecord.On(session, record, "theirs")).Refusals[0].Reason;

    private static Entry Entry(Line line, int index, bool practice = true)
    {
        var body = EntryWriting.Body(Happened.At(line.Happened ?? line.Wall), line.Wall, "Ola", practice, line.Payload);
        var json = Encoding.UTF8.GetBytes($"{{\"id\":\"tr-{index + 1}\",{body[1..]}");
        return ((Read<Entry>.Usable)new EntryReader().Read(json, "theirs", index + 1)).Value;
    }

    private sealed record Line(string Name, Instant Wall, Payload Payload, Instant? Happened = null);
}
