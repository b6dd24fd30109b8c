using Farhold.Exchange.Card;

namespace Farhold.Tests.Exchange.Card;

/// <summary>What stands in large letters for a limb.</summary>
public class CardLimbsTests
{
    [Fact]
    public void A_loose_tourniquet_counts_from_when_it_was_let_out_and_not_from_when_it_was_tightened()
    {
        var told = Large(
            "08:56",
            ("08:00", new Payload.TourniquetTightened("t1", Limb.LeftLeg)),
            ("08:50", new Payload.TourniquetSlackened("t1"))
        );
        Assert.Equal("4 May 08:00, 56 min ago", told["First tightened"]);
        Assert.Equal("since 4 May 08:50, 6 min ago", told["Loose now"]);
    }

    [Fact]
    public void Of_two_the_one_that_is_tight_is_named()
    {
        var told = Large(
            "08:56",
            ("08:00", new Payload.TourniquetTightened("t1", Limb.LeftLeg)),
            ("08:01", new Payload.TourniquetTightened("t2", Limb.LeftLeg)),
            ("08:50", new Payload.TourniquetSlackened("t1"))
        );
        Assert.Equal("tourniquet t2", told["Tight now"]);
        Assert.DoesNotContain("Loose now", told.Keys);
    }

    [Fact]
    public void A_first_check_is_not_called_overdue_before_its_interval_has_gone_by()
    {
        (string, Payload)[] opened =
        [
            ("08:00", new Payload.CasualtyOpened("Runa")),
            ("08:00", new Payload.TourniquetTightened("t1", Limb.LeftLeg)),
        ];
        Assert.DoesNotContain("OVERDUE", Text(Some.At("08:00") + Duration.FromSeconds(2), opened), StringComparison.Ordinal);
        Assert.Contains("first check, due since 4 May 08:00", Text(Some.At("08:01"), opened), StringComparison.Ordinal);
        Assert.Contains("OVERDUE since 4 May 08:00", Text(Some.At("12:00"), opened), StringComparison.Ordinal);
    }

    private static Dictionary<string, string> Large(string at, params (string At, Payload What)[] said) =>
        Sheet(Some.At(at), said).Parts.OfType<CardPart.Large>().ToDictionary(l => l.Label, l => l.Text);

    private static string Text(Instant at, (string, Payload)[] said) => string.Join('\n', Sheet(at, said).Parts.SelectMany(p => p.Texts));

    private static CardSheet Sheet(Instant at, (string At, Payload What)[] said) =>
        CardSheet.Of(
            new CareRecord(
                said.Select((s, i) => EntryWriting.Write(new("a", i + 1), Happened.At(Some.At(s.At)), Some.At(s.At), "Ane", s.What)),
                []
            ),
            ShippedRules.Book,
            at,
            DateTimeZone.Utc
        );
}
