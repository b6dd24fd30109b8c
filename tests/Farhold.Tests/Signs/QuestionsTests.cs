using CsCheck;

namespace Farhold.Tests.Signs;

/// <summary>Values of the record that are asked back, and what settles them.</summary>
public class QuestionsTests
{
    private static readonly Payload.SignsTaken Alert = new() { Mental = Mental.Alert };
    private static readonly Payload.SignsTaken Deep = new() { Gcs = new(1, 1, 1) };

    [Fact]
    public void An_implausible_value_is_asked_back_until_it_is_read_again()
    {
        var slow = Asked("02:10", ("02:00", new Payload.SignsTaken { HeartRate = 20 }));
        Assert.Equal((Id(1), "heartRate", false, false, "settle-k1-1-heartRate"), Facts(Assert.Single(slow)));
        Assert.True(slow.Questioned(Id(1), "heartRate"));
        Assert.False(slow.Questioned(Id(1), "breathRate"));

        var again = Asked(
            "02:10",
            ("02:00", new Payload.SignsTaken { HeartRate = 20 }),
            ("02:05", new Payload.SignsTaken { HeartRate = 88 })
        );
        Assert.Equal((true, false), (Assert.Single(again).Settled, again[0].Believed));
        Assert.True(again.Questioned(Id(1), "heartRate")); // nothing is left to ask, and the 20 still says nothing
        Assert.False(again.Questioned(Id(2), "heartRate"));
    }

    [Fact]
    public void The_same_implausible_value_read_again_is_asked_back_again()
    {
        var again = Asked(
            "02:10",
            ("02:00", new Payload.SignsTaken { HeartRate = 20 }),
            ("02:05", new Payload.SignsTaken { HeartRate = 20 })
        );
        Assert.Equal([true, false], again.Select(q => q.Settled));
    }

    [Fact]
    public void Who_says_that_it_is_right_is_believed_from_then_on()
    {
        (string, Payload)[] said =
        [
            ("02:00", new Payload.SignsTaken { HeartRate = 20 }),
            ("02:05", new Payload.TaskDone("settle-k1-1-heartRate")),
        ];
        Assert.False(Assert.Single(Asked("02:04", said)).Settled);
        var later = Assert.Single(Asked("02:05", said));
        Assert.Equal((true, true), (later.Settled, later.Believed));
        Assert.False(Asked("02:05", said).Questioned(Id(1), "heartRate"));
    }

    [Fact]
    public void No_heart_beat_is_settled_by_another_look_alone()
    {
        var said = Asked(
            "02:10",
            ("02:00", new Payload.SignsTaken { HeartRate = 0 }),
            ("02:05", new Payload.TaskDone("settle-k1-1-heartRate"))
        );
        Assert.Equal((false, false, false), (Assert.Single(said).Settled, said[0].Believed, said[0].BySaying));
    }

    [Fact]
    public void An_amendment_takes_the_question_away() =>
        Assert.Empty(
            Asked(
                "02:10",
                ("02:00", new Payload.SignsTaken { HeartRate = 20 }),
                ("02:05", new Payload.EntryAmended(Id(1), JsonText.Of("""{"heartRate":120}""")))
            )
        );

    [Fact]
    public void Two_entries_within_five_minutes_are_one_look()
    {
        var both = Asked("02:10", ("02:00", Alert), ("02:05", Deep));
        Assert.Equal([(Id(1), "mental"), (Id(2), "gcs")], both.Select(q => (q.About, q.Field)));
        Assert.All(both, q => Assert.True(q is { Contradicts: true, Settled: false }));
        Assert.Empty(Asked("02:10", ("02:00", Alert), ("02:06", Deep)));
    }

    [Fact]
    public void What_was_known_as_a_range_is_no_look_of_another_instant() =>
        Assert.Empty(
            Questions.In(
                new CareRecord(
                    [
                        EntryWriting.Write(Id(1), new(Some.At("01:00"), Some.At("02:00")), Some.At("02:00"), "Ane", Alert),
                        EntryWriting.Write(Id(2), Happened.At(Some.At("02:01")), Some.At("02:01"), "Ane", Deep),
                    ],
                    []
                ).Readings[0],
                Some.At("02:10")
            )
        );

    [Fact]
    public void One_value_read_again_settles_both_and_is_not_held_against_the_other_again()
    {
        var again = Asked("02:10", ("02:00", Alert), ("02:00", Deep), ("02:03", Alert));
        Assert.Equal([(Id(1), "mental", true), (Id(2), "gcs", true)], again.Select(q => (q.About, q.Field, q.Settled)));
        Assert.False(again.Questioned(Id(3), "mental"));
        Assert.True(again.Questioned(Id(2), "gcs"));
    }

    [Fact]
    public void A_value_is_believed_once_what_it_contradicted_is_read_again_and_agrees()
    {
        var again = Asked("02:10", ("02:00", Alert), ("02:00", Deep), ("02:08", new Payload.SignsTaken { Gcs = new(4, 5, 6) }));
        Assert.False(again.Questioned(Id(1), "mental"));
        Assert.True(again.Questioned(Id(2), "gcs"));
        Assert.All(again, q => Assert.True(q.Settled));
    }

    [Fact]
    public void Saying_which_of_two_is_right_settles_both_and_the_other_says_nothing()
    {
        var said = Asked("02:10", ("02:00", Alert), ("02:00", Deep), ("02:02", new Payload.TaskDone("settle-k1-1-mental")));
        Assert.All(said, q => Assert.True(q.Settled));
        Assert.False(said.Questioned(Id(1), "mental"));
        Assert.True(said.Questioned(Id(2), "gcs"));
    }

    [Fact]
    public void A_low_value_of_one_entry_is_borne_by_the_wits_of_another() =>
        Assert.Empty(
            Asked(
                "02:10",
                ("02:00", new Payload.SignsTaken { TemperatureC = 26 }),
                ("02:02", new Payload.SignsTaken { Mental = Mental.Pain })
            )
        );

    [Fact]
    public void What_is_still_to_come_asks_nothing() => Assert.Empty(Asked("01:59", ("02:00", new Payload.SignsTaken { HeartRate = 20 })));

    [Fact]
    public void Signs_of_half_a_day_ago_are_asked_about_no_more()
    {
        Assert.Single(Asked("14:00", ("02:00", new Payload.SignsTaken { HeartRate = 20 })));
        Assert.Empty(Asked("14:01", ("02:00", new Payload.SignsTaken { HeartRate = 20 })));
    }

    [Fact]
    public void A_doubtful_age_sets_no_bounds()
    {
        Payload infant = new Payload.CasualtyOpened("Runa", AgeYears: 0, MassKg: 78);
        var asked = Asked("02:10", ("02:00", infant), ("02:05", new Payload.SignsTaken { HeartRate = 26 }));
        Assert.Equal(["ageYears", "massKg"], asked.Select(q => q.Field)); // 26 /min is no infant's, and may be a grown-up's
        var settled = Asked(
            "02:10",
            ("02:00", infant),
            ("02:05", new Payload.SignsTaken { HeartRate = 26 }),
            ("02:06", new Payload.TaskDone("settle-k1-1-ageYears"))
        );
        Assert.Equal(["ageYears", "massKg", "heartRate"], settled.Select(q => q.Field));
    }

    [Fact]
    public void An_age_and_a_mass_that_can_not_both_be_are_unknown_until_one_is_said_to_be_right()
    {
        (string, Payload) opened = ("02:00", new Payload.CasualtyOpened("Runa", Sex.Female, 0, 78));
        Assert.Equal((null, null), Known("02:10", opened));
        Assert.Equal((null, 78.0), Known("02:10", opened, ("02:05", new Payload.TaskDone("settle-k1-1-massKg"))));
        Assert.Equal((30.0, 78.0), Known("02:10", opened, ("02:05", new Payload.EntryAmended(Id(1), JsonText.Of("""{"ageYears":30}""")))));
        Assert.Equal((30.0, 78.0), Known("02:10", opened, ("02:05", new Payload.CasualtyOpened("Runa", Sex.Female, 30, 78))));
    }

    [Fact]
    public void The_order_of_arrival_changes_no_question() =>
        Gens.Record.Sample(
            w =>
                Assert.Equal(
                    Questions.In(w.Record.Readings[0], w.Now),
                    Questions.In(new CareRecord(w.Entries.Reverse(), w.Damaged).Readings[0], w.Now)
                ),
            iter: Gens.Cases(300)
        );

    [Fact]
    public void A_value_is_asked_about_once_and_only_where_it_is_given() =>
        Gens.StrangeRecord.Sample(
            w =>
            {
                foreach (var state in w.Record.Readings)
                {
                    var asked = Questions.In(state, w.Now);
                    Assert.Equal(asked.Length, asked.DistinctBy(q => (q.About, q.Field)).Count());
                    Assert.All(
                        asked,
                        q =>
                            Assert.Contains(
                                $"\"{q.Field}\"",
                                state.All.Single(d => d.Id == q.About).What switch
                                {
                                    Payload.CasualtyOpened => "\"ageYears\" \"massKg\"",
                                    var what => EntryWriting.Write(q.About, Happened.At(w.Now), w.Now, "x", what).Json.ToString(),
                                },
                                StringComparison.Ordinal
                            )
                    );
                }
            },
            iter: Gens.Cases(300)
        );

    private static EntryId Id(int number) => new("k1", number);

    private static (EntryId, string, bool, bool, string) Facts(Question q) => (q.About, q.Field, q.Settled, q.Believed, q.Task);

    private static (double?, double?) Known(string now, params (string At, Payload What)[] said)
    {
        var known = CasualtyProfile.At(State(said), Some.At(now))!;
        return (known.AgeYears, known.MassKg);
    }

    private static System.Collections.Immutable.ImmutableArray<Question> Asked(string now, params (string At, Payload What)[] said) =>
        Questions.In(State(said), Some.At(now));

    private static State State((string At, Payload What)[] said) =>
        new CareRecord(
            said.Select((s, i) => EntryWriting.Write(Id(i + 1), Happened.At(Some.At(s.At)), Some.At(s.At), "Ane", s.What)),
            []
        ).Readings[0];
}
