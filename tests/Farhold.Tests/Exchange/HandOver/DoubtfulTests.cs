using Farhold.Exchange.Card;
using Farhold.Exchange.HandOver;
using Farhold.Exchange.Message;
using Farhold.Exchange.Spreadsheet;

namespace Farhold.Tests.Exchange.HandOver;

/// <summary>Whatever a record is handed over as, it says that the record is in doubt, and why as far as there is room.</summary>
public class DoubtfulTests
{
    private static readonly CareRecord Record = Doubtful.Record();
    private static readonly CareFacts Facts = CareFacts.Of(Record, ShippedRules.Book, Case.Now);

    public static TheoryData<FormKind> Kinds => [.. Enum.GetValues<FormKind>()];

    [Fact]
    public void The_record_of_these_tests_is_in_doubt_for_every_reason()
    {
        Assert.Equal(
            ["amendment", "chain", "clock", "conflict", "damage", "gap", "openings", "unknown", "unknown", "unsaid"],
            Record.Doubts.Select(d => d.Id.Split('-')[0])
        );
        Assert.Equal(1 + 10, Facts.Doubts.Length);
    }

    [Theory, MemberData(nameof(Kinds))]
    public void A_spoken_form_says_so(FormKind kind)
    {
        var text = Forms.Of(kind, Facts, DateTimeZone.Utc).Text();
        Assert.All(Facts.Doubts, d => Assert.Contains(kind == FormKind.Radio ? SpokenText.Of(d) : d, text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_short_message_says_so_however_little_room_there_is()
    {
        Assert.Contains(new MessageFact.Doubt(), ShortMessage.Of(Facts).Told);
        Assert.Contains(new MessageFact.Doubt(), ShortMessage.Parts(Facts).SelectMany(p => p.Told));
    }

    [Fact]
    public void The_card_says_so_before_all_else()
    {
        var top = CardSheet.Of(Record, ShippedRules.Book, Case.Now, DateTimeZone.Utc).Top;
        Assert.Equal(
            [new CardPart.Heading("Read with care"), .. Facts.Doubts.Select(d => (CardPart)new CardPart.Said("", d, Strong: true))],
            top.Take(1 + Facts.Doubts.Length)
        );
    }

    /// <summary>Rows are sorted and copied apart, so each says it.</summary>
    [Fact]
    public void The_table_of_signs_says_so_in_every_row()
    {
        var rows = SignsTable.Write(Facts).TrimEnd().Split("\r\n");
        Assert.EndsWith(",doubts", rows[0], StringComparison.Ordinal);
        Assert.All(rows.Skip(1), r => Assert.Contains(Facts.Doubts[0], r, StringComparison.Ordinal));
        var none = CareFacts.Of(new CareRecord([], Record.Damaged), ShippedRules.Book, Case.Now);
        Assert.Equal(2, SignsTable.Write(none).TrimEnd().Split("\r\n").Length);
    }

    [Fact]
    public void A_record_that_nothing_is_wrong_with_is_in_no_doubt()
    {
        var well = CareFacts.Of(Case.Well.Record, ShippedRules.Book, Case.Now);
        Assert.Empty(well.Doubts);
        Assert.All(SignsTable.Write(well).TrimEnd().Split("\r\n").Skip(1), r => Assert.EndsWith(",", r, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_very_many_doubts_the_first_are_said_and_how_many_more_there_are()
    {
        var record = new CareRecord(
            Enumerable
                .Range(1, 50)
                .Select(i =>
                    EntryWriting.Write(new("b", i), Happened.At(Case.Now), Case.Now, "Tor", new Payload.OfNewerVersion("signs.tcken"))
                ),
            []
        );
        var doubts = CareFacts.Of(record, ShippedRules.Book, Case.Now).Doubts;
        Assert.Equal(22, doubts.Length);
        Assert.Equal("and 30 more doubts: see the log", doubts[^1]);
    }
}
