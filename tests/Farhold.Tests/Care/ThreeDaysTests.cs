using System.Collections.Immutable;

namespace Farhold.Tests.Care;

/// <summary>Three days in an invented hut, from the record of the demo, as the plan would have looked hour by hour.</summary>
public class ThreeDaysTests
{
    private static readonly DateTimeZone Zone = DateTimeZone.ForOffset(Offset.FromHours(12));
    private static readonly string[] Party = ["Mika", "Jon", "Runa"];
    private static readonly byte[] File = System.IO.File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "demo", "hollvika.jsonl"));
    private static readonly CareRecord Record = CareRecord.Of(((Read<RecordFile>.Usable)RecordReader.Read(File, "hollvika.jsonl")).Value);

    /// <summary>Day 0 is that of the injury.</summary>
    private static Instant At(int day, int hour, int minute = 0) =>
        (new LocalDate(2033, 6, 7).PlusDays(day) + new LocalTime(hour, minute)).InZoneStrictly(Zone).ToInstant();

    [Fact]
    public void The_record_is_whole() => Assert.Empty(Record.Doubts);

    [Fact]
    public void The_list_of_what_is_due_stays_short_enough_to_read()
    {
        for (var at = At(0, 19, 30); at < At(3, 14); at += Duration.FromMinutes(60))
        {
            var due = Judged(at).Due.Where(d => d.At <= at).ToArray();
            Assert.True(due.Length <= 5, $"{at}: {string.Join(", ", due.Select(d => d.Task))}");
        }
    }

    [Fact]
    public void Before_the_release_it_is_said_what_speaks_against_it_and_after_it_what_follows()
    {
        Assert.Contains(Judged(At(0, 16, 15)).Due, d => d.Task == "before-release.right-leg");
        Assert.Equal(
            ["release-fluid.right-leg", "release-heart.right-leg", "release-limb.right-leg", "release-urine.right-leg"],
            Judged(At(0, 17)).Due.Where(d => d.Group == TaskGroup.Release).Select(d => d.Task).Order()
        );
        Assert.DoesNotContain(Judged(At(2, 17)).Due, d => d.Group == TaskGroup.Release);
    }

    /// <summary>
    /// Kidneys: JSOM Fall 2016 p. 98, 100 to 200 mL/h. Infection: fever with a fast pulse (Prolonged Casualty Care, part 2).
    /// </summary>
    [Theory]
    [InlineData(0, 16, "")]
    [InlineData(0, 20, "kidneys")]
    [InlineData(1, 12, "")]
    [InlineData(2, 9, "infection")]
    [InlineData(3, 12, "")]
    public void A_warning_sign_is_seen_when_the_story_has_it_and_not_before(int day, int hour, string rules) =>
        Assert.Equal(
            rules,
            string.Join(
                " ",
                WarningSigns.Of(Record, ShippedRules.Book, At(day, hour, 5)).Where(f => f.State == Truth.Met).Select(f => f.Rule.Id)
            )
        );

    [Fact]
    public void At_night_comfort_waits_for_the_watch_and_safety_does_not()
    {
        var night = Judged(At(1, 23, 30));
        Assert.False(night.Unstable);
        Assert.Equal(
            ["drink", "food", "help", "mouth", "pain", "skin", "wound"],
            night.Due.Where(d => d.Waits && d.Group != TaskGroup.Release).Select(d => d.Task).Order()
        );
        Assert.All(night.Due.Where(d => d.Task is "signs" or "position" or "warmth"), d => Assert.False(d.Waits));
        Assert.True(night.Due.Single(d => d.Task == "signs").At <= At(2, 0));
        var plain = Judge.At(Record, ShippedRules.Book, At(1, 23, 30));
        Assert.True(Wakings(night) < Wakings(plain), $"{Wakings(night)} and {Wakings(plain)}");
    }

    [Fact]
    public void Everyone_sleeps()
    {
        var judged = Judged(At(1, 20));
        var roster = TaskRoster.Of(judged, Party, Watches, Nights, At(2, 20));
        Assert.All(roster.Rest, r => Assert.True(r.Asleep >= Duration.FromHours(10) && r.Longest >= Duration.FromHours(4), r.ToString()));
    }

    [Fact]
    public void What_was_logged_is_what_the_plan_asked_for()
    {
        var asked = ShippedProtocol.Protocol.Tasks.Select(t => t.Id).ToHashSet();
        Assert.All(Record.Readings[0].Of(Kind.TaskDone), d => Assert.Contains(d.As<Payload.TaskDone>().Task.Split('.')[0], asked));
        Assert.Empty(Judged(At(3, 14, 30)).Due);
    }

    /// <summary>Different times at which somebody has to get up or wake the casualty for comfort before six.</summary>
    private static int Wakings(Judgement judged) =>
        judged.Due.Where(d => d.Group == TaskGroup.Nursing && d.Every is not null && d.At < At(2, 6)).Select(d => d.At).Distinct().Count();

    private static ImmutableArray<RosterShift> Watches => Roster.Of(Party, At(0, 14), At(3, 14));

    private static Rhythm Nights => Rhythm.ByClock(Zone, Rhythm.UsualFrom, Rhythm.UsualTo, At(1, 12));

    private static Judgement Judged(Instant at) => Judge.At(Record, ShippedRules.Book, at, Nights.With(Watches));
}
