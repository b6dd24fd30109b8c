using System.Collections.Immutable;
using CsCheck;

namespace Farhold.Tests.Care;

public class RosterTests
{
    private static readonly string[] Party = ["Ane", "Tor", "Liv", "Odd", "Siv", "Per", "Una", "Jon"];
    private static readonly Instant Start = Some.At("20:00");

    [Fact]
    public void Somebody_watches_at_every_time_and_only_one() =>
        Gen.Select(Gen.Int[1, 8], Gen.Int[1, 72 * 60])
            .Sample(
                (people, minutes) =>
                {
                    var watches = Roster.Of(Party[..people], Start, Start + Duration.FromMinutes(minutes));
                    Assert.Equal(Start, watches[0].From);
                    Assert.Equal(Start + Duration.FromMinutes(minutes), watches[^1].To);
                    Assert.All(watches.Zip(watches.Skip(1)), pair => Assert.Equal(pair.First.To, pair.Second.From));
                    Assert.All(watches, w => Assert.True(w.Length > Duration.Zero));
                }
            );

    [Fact]
    public void No_watch_is_longer_than_four_hours_but_where_one_is_alone_or_the_days_meet() =>
        Gen.Select(Gen.Int[2, 8], Gen.Int[1, 72])
            .Sample(
                (people, hours) =>
                    Assert.All(
                        Roster.Of(Party[..people], Start, Start + Duration.FromHours(hours)),
                        w => Assert.True(w.Length <= Roster.LongestShift)
                    )
            );

    [Fact]
    public void Watches_and_sleep_are_shared_to_within_a_turn() =>
        Gen.Select(Gen.Int[2, 8], Gen.Int[6, 72])
            .Sample(
                (people, hours) =>
                {
                    var watches = Roster.Of(Party[..people], Start, Start + Duration.FromHours(hours));
                    var rest = Roster.Rest(Party[..people], watches);
                    Assert.Equal(Duration.FromHours(hours), rest.Aggregate(Duration.Zero, (sum, r) => sum + r.OnShift));
                    var turn = watches.Max(w => w.Length);
                    Assert.True(rest.Max(r => r.OnShift) - rest.Min(r => r.OnShift) <= turn);
                }
            );

    [Theory]
    [InlineData(2, 4, 4)] // two: four on, four off
    [InlineData(3, 4, 8)]
    [InlineData(4, 3, 9)]
    [InlineData(6, 4, 20)]
    [InlineData(8, 3, 21)]
    public void A_whole_day_goes_round_evenly(int people, double watchHours, double offHours)
    {
        var watches = Roster.Of(Party[..people], Start, Start + Duration.FromHours(24));
        Assert.All(watches, w => Assert.Equal(Duration.FromHours(watchHours), w.Length));
        Assert.All(Roster.Rest(Party[..people], watches), r => Assert.Equal(Duration.FromHours(24.0 / people), r.OnShift));
        var first = watches.Where(w => w.Who == Party[0]).ToArray();
        if (first.Length > 1)
            Assert.Equal(Duration.FromHours(offHours), first[1].From - first[0].To);
    }

    /// <summary>Every way of giving the hours of a night to a small party, tried one by one.</summary>
    [Theory]
    [InlineData(2, 4)]
    [InlineData(2, 8)]
    [InlineData(3, 6)]
    [InlineData(3, 9)]
    public void No_roster_by_the_hour_gives_the_worst_off_more_sleep_by_more_than_a_turn(int people, int hours)
    {
        var watches = Roster.Of(Party[..people], Start, Start + Duration.FromHours(hours));
        var ours = Roster.Rest(Party[..people], watches).Min(r => r.Asleep);
        var best = Duration.Zero;
        for (var code = 0; code < (int)Math.Pow(people, hours); code++)
        {
            var rest = code;
            var tried = ImmutableArray.CreateBuilder<RosterShift>();
            for (var hour = 0; hour < hours; hour++, rest /= people)
                tried.Add(new(Party[rest % people], Start + Duration.FromHours(hour), Start + Duration.FromHours(hour + 1)));
            best = Duration.Max(best, Roster.Rest(Party[..people], tried.ToImmutable()).Min(r => r.Asleep));
        }

        Assert.True(ours <= best);
        Assert.Equal(best, ours);
    }

    [Fact]
    public void One_alone_has_every_watch_and_no_sleep()
    {
        var watches = Roster.Of(["Ane"], Start, Start + Duration.FromHours(10));
        Assert.Equal(Start + Duration.FromHours(10), Assert.Single(watches).To);
        Assert.Equal(Duration.Zero, Assert.Single(Roster.Rest(["Ane"], watches)).Asleep);
        Assert.Equal("Ane", Roster.At(watches, Start)!.Who);
        Assert.Null(Roster.At(watches, Start + Duration.FromHours(10)));
    }

    [Fact]
    public void What_is_no_party_or_no_time_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Roster.Of([], Start, Start + Duration.FromHours(1)));
        Assert.Throws<ArgumentException>(() => Roster.Of(["Ane", "Ane"], Start, Start + Duration.FromHours(1)));
        Assert.Throws<ArgumentException>(() => Roster.Of(["Ane"], Start, Start));
        Assert.Throws<ArgumentException>(() => Roster.Of(["Ane"], Start, Start + Duration.FromHours(73)));
    }
}
