using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Farhold.Documents.Fhir;
using Farhold.Exchange.Document;
using Farhold.Tests;

namespace Farhold.Documents.Tests.Fhir;

public class ReadingBackTests
{
    [Fact]
    public void A_document_gives_back_the_same_entries_and_damaged_lines() =>
        Gens.StrangeRecord.Sample(
            w =>
            {
                var read = Usable(FhirReader.Read(FhirDocument.Write(w.Record, ShippedRules.Book, w.Now), "x", ShippedRules.Book));
                Assert.Equal(Lines(w.Record), Lines(read.Record));
                Assert.Empty(read.Differences);
            },
            iter: Gens.Cases(300)
        );

    /// <summary>The phone reads no more of a document than this.</summary>
    [Fact]
    public void What_a_document_carries_is_every_line_byte_for_byte() =>
        Gens.StrangeRecord.Sample(
            w =>
            {
                var document = FhirDocument.Write(w.Record, ShippedRules.Book, w.Now);
                var json = new LocatedJson(document, "x", CarriedLine.MaxFile);
                Assert.True(CarriedLine.MayBeIn(document));
                Assert.Equal(
                    w.Record.Entries.Select(e => e.Json.ToString()).Order(StringComparer.Ordinal),
                    CarriedLine
                        .Of(json.Parse()!, json)
                        .Where(l => !l.Damaged)
                        .Select(l => Encoding.UTF8.GetString(l.Utf8))
                        .Order(StringComparer.Ordinal)
                );
                Assert.Empty(json.Refusals);
            },
            iter: Gens.Cases(100)
        );

    [Fact]
    public void The_same_record_and_instant_give_the_same_bytes_in_whatever_order_it_came() =>
        Gens.StrangeRecord.Sample(
            w =>
                Assert.Equal(
                    FhirDocument.Write(w.Record, ShippedRules.Book, w.Now),
                    FhirDocument.Write(new(w.Entries.Reverse(), w.Damaged), ShippedRules.Book, w.Now)
                ),
            iter: Gens.Cases(100)
        );

    [Fact]
    public void What_was_changed_in_the_document_is_said_and_the_record_stays_as_written()
    {
        var document = Encoding.UTF8.GetString(FhirDocument.Write(Signs(), ShippedRules.Book, Some.At("03:00")));
        var changed = document.Replace("\"value\": 128,", "\"value\": 72,", StringComparison.Ordinal);
        Assert.NotEqual(document, changed);
        var read = Usable(FhirReader.Read(Encoding.UTF8.GetBytes(changed), "x", ShippedRules.Book));
        Assert.Equal(Lines(Signs()), Lines(read.Record));
        Assert.Equal("Observation", Assert.Single(read.Differences).Split(' ')[0]);
    }

    /// <summary>The hint that a line was cut off comes from its file; a document does not know of it.</summary>
    [Fact]
    public void An_untouched_document_of_a_record_with_a_cut_last_line_says_nothing_of_changes()
    {
        var file = Encoding.UTF8.GetBytes(Signs().Entries.Single().Json.ToString() + "\n{\"id\":\"a7k3-2\",\"happ");
        var record = CareRecord.Of(((Read<RecordFile>.Usable)RecordReader.Read(file, "r.jsonl")).Value);
        var read = Usable(FhirReader.Read(FhirDocument.Write(record, ShippedRules.Book, Some.At("03:00")), "x", ShippedRules.Book));
        Assert.Equal(Lines(record), Lines(read.Record));
        Assert.Empty(read.Differences);
    }

    /// <summary>What is not understood and a broken chain are doubts in the document too, and stay so when it is read back.</summary>
    [Fact]
    public void Doubts_of_every_kind_are_issues_of_the_document()
    {
        var all = Doubtful.Record();
        var record = new CareRecord(all.Entries, all.Damaged); // as a file: when its lines came in stays on the phone
        var document = FhirDocument.Write(record, ShippedRules.Book, Some.At("13:00"));
        var details = JsonNode.Parse(document)!["entry"]!
            .AsArray()
            .Select(e => (string?)e!["resource"]!["detail"])
            .OfType<string>()
            .ToArray();
        Assert.Equal(9, record.Doubts.Length);
        Assert.Superset(record.Doubts.Select(d => d.Text).ToHashSet(), details.ToHashSet());
        var read = Usable(FhirReader.Read(document, "x", ShippedRules.Book));
        Assert.Empty(read.Differences);
        Assert.Equal(record.Doubts, read.Record.Doubts);
    }

    [Theory]
    [InlineData("{}", "no FHIR document")]
    [InlineData("""{"resourceType":"Patient"}""", "no FHIR document")]
    [InlineData("""{"resourceType":"Bundle","type":"document"}""", "no resource")]
    [InlineData(
        """{"resourceType":"Bundle","type":"document","entry":[{"resource":{"resourceType":"Composition"}}]}""",
        "not written by Farhold"
    )]
    [InlineData(
        """{"resourceType":"Bundle","type":"document","entry":[{"resource":{"resourceType":"Patient"}}]}""",
        "begins with a Composition"
    )]
    [InlineData("""{"resourceType":"Bundle","type":"document",""", "not JSON")]
    public void What_is_no_document_of_ours_is_refused_with_its_place(string text, string reason)
    {
        var refused = Assert.IsType<Read<FhirRecord>.Refused>(FhirReader.Read(Encoding.UTF8.GetBytes(text), "x.json", ShippedRules.Book));
        Assert.Contains(
            refused.Refusals,
            r => r.File == "x.json" && r.Line == 1 && r.Column >= 1 && r.Reason.Contains(reason, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_document_that_nobody_waits_for_any_more_is_given_up()
    {
        var document = FhirDocument.Write(Signs(), ShippedRules.Book, Some.At("03:00"));
        Assert.Throws<OperationCanceledException>(() =>
            FhirDocument.Write(Signs(), ShippedRules.Book, Some.At("03:00"), new(canceled: true))
        );
        Assert.Throws<OperationCanceledException>(() => FhirReader.Read(document, "x", ShippedRules.Book, new(canceled: true)));
    }

    private static CareRecord Signs() =>
        new(
            [
                EntryWriting.Write(
                    new("a7k3", 1),
                    Happened.At(Some.At("02:00")),
                    Some.At("02:00"),
                    "Ane",
                    new Payload.SignsTaken { HeartRate = 128 }
                ),
            ],
            []
        );

    private static string[] Lines(CareRecord record) =>
        [.. record.Entries.Select(e => e.Json.ToString()), .. record.Damaged.Select(d => d.Raw.ToString()).Order(StringComparer.Ordinal)];

    private static FhirRecord Usable(Read<FhirRecord> read) => Assert.IsType<Read<FhirRecord>.Usable>(read).Value;
}
