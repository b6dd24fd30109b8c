using Farhold.Exchange.Calendar;

namespace Farhold.Tests.Exchange;

public class DueCalendarTests
{
    private static readonly Instant Now = Instant.FromUtc(2031, 5, 4, 2, 0);

    [Fact]
    public void Only_what_is_to_come_is_handed_over_and_not_too_much_of_it()
    {
        var items = DueCalendar.Of(Picture(Now), "c1", null);
        Assert.InRange(items.Length, 2, DueCalendar.Most);
        Assert.All(items, i => Assert.True(i.At > Now));
        Assert.Equal(items.OrderBy(i => i.At), items);
    }

    [Fact]
    public void The_same_thing_keeps_its_uid_and_a_later_file_counts_as_newer()
    {
        var (first, later) = (DueCalendar.Of(Picture(Now), "c1", null), DueCalendar.Of(Picture(Now + Duration.FromMinutes(5)), "c1", null));
        var limit = Assert.Single(first, i => i.Uid.Contains("limit", StringComparison.Ordinal));
        var again = Assert.Single(later, i => i.Uid == limit.Uid);
        Assert.Equal(limit.At, again.At);
        Assert.True(again.Sequence > limit.Sequence);
    }

    [Fact]
    public void The_casualty_is_named_only_on_request()
    {
        Assert.DoesNotContain(
            DueCalendar.Of(Picture(Now), "c1", null),
            i => (i.Summary + i.Description + i.Uid).Contains("Runa", StringComparison.Ordinal)
        );
        Assert.All(DueCalendar.Of(Picture(Now), "c1", "Runa"), i => Assert.StartsWith("Runa: ", i.Summary, StringComparison.Ordinal));
    }

    private static Judgement Picture(Instant at)
    {
        Entry Said(int number, int minutesAgo, Payload payload)
        {
            var when = Now - Duration.FromMinutes(minutesAgo);
            return EntryWriting.Write(new("a7k3", number), Happened.At(when), when, "Ane", payload);
        }

        var record = new CareRecord(
            [
                Said(1, 50, new Payload.CasualtyOpened("Runa")),
                Said(2, 40, new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Bleeding)),
                Said(3, 40, new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1")),
                Said(4, 1, new Payload.BleedingChecked("w1", Bleeding.None)),
            ],
            []
        );
        return Judge.At(record, ShippedRules.Book, at);
    }
}
