using CsCheck;
using Farhold.Documents.Fhir;
using Farhold.Tests;

namespace Farhold.Documents.Tests.Fhir;

/// <summary>Every document is valid R4, vital-signs profiles included, by the Firely validator.</summary>
/// <remarks><c>FARHOLD_CASES</c> is a percentage: 2000 checks a thousand records of each kind.</remarks>
public class ValidatorTests
{
    /// <summary>Warnings that stay, each with its reason: <c>accepted-warnings.txt</c>, a line of text and a line of reason.</summary>
    private static readonly string[] Accepted =
    [
        .. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Fhir", "accepted-warnings.txt"))
            .Where(l => l.Length > 0 && l[0] is not ('#' or ' ')),
    ];

    private static readonly Lazy<Validating> Validator = new(() => new());

    [Fact]
    public void The_document_of_the_demo_is_valid()
    {
        var demo = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "demo", "skarvedal.jsonl"));
        Valid(CareRecord.Of(((Read<RecordFile>.Usable)RecordReader.Read(demo, "demo")).Value), Some.At("05:00"));
    }

    [Fact]
    public void Documents_of_generated_records_are_valid() =>
        Gens.Record.Sample(w => Valid(w.Record, w.Now), iter: Gens.Cases(50), threads: 1);

    [Fact]
    public void Documents_of_strange_records_are_valid() =>
        Gens.StrangeRecord.Sample(w => Valid(w.Record, w.Now), iter: Gens.Cases(50), threads: 1);

    [Fact]
    public void Every_kind_of_entry_is_valid_alone() =>
        Gen.Select(Gens.When, Gens.AnyPayload)
            .Array[25]
            .Sample(
                said =>
                    Valid(
                        new(
                            [.. said.Select((s, i) => EntryWriting.Write(new("a7k3", i + 1), s.Item1, s.Item1.Latest, "Ane", s.Item2))],
                            []
                        ),
                        Some.At("12:00")
                    ),
                iter: Gens.Cases(20),
                threads: 1
            );

    [Fact]
    public void Amendments_that_name_themselves_or_each_other_make_no_circle()
    {
        Entry Amends(int number, int target) =>
            EntryWriting.Write(
                new("a7k3", number),
                Happened.At(Some.At("02:00")),
                Some.At("02:00"),
                "Ane",
                new Payload.EntryAmended(new("a7k3", target), JsonText.Of("""{"note":null}"""))
            );
        Valid(
            new(
                [
                    Amends(1, 1),
                    Amends(2, 3),
                    Amends(3, 2),
                    EntryWriting.Write(
                        new("a7k3", 4),
                        Happened.At(Some.At("02:00")),
                        Some.At("02:00"),
                        "Ane",
                        new Payload.EntryWithdrawn(new("a7k3", 4), "mistaken")
                    ),
                ],
                []
            ),
            Some.At("03:00")
        );
    }

    [Fact]
    public void Practice_is_marked_in_every_resource_and_valid()
    {
        var line =
            """{"id":"a7k3-1","happened":"2031-05-04T02:00:00Z","recorded":"2031-05-04T02:00:00Z","by":"Ane","kind":"casualty.opened","alias":"Runa","practice":true}""";
        var record = CareRecord.Of(((Read<RecordFile>.Usable)RecordReader.Read(System.Text.Encoding.UTF8.GetBytes(line), "x")).Value);
        var bundle = FhirDocument.Of(record, ShippedRules.Book, Some.At("03:00"));
        Assert.All(bundle.Entry.Select(e => e.Resource!).Prepend(bundle), r => Assert.Contains(r.Meta!.Security, s => s.Code == "HTEST"));
        Assert.StartsWith("PRACTICE", ((Hl7.Fhir.Model.Composition)bundle.Entry[0].Resource!).Title, StringComparison.Ordinal);
        Valid(record, Some.At("03:00"));
    }

    [Fact]
    public void A_fault_would_be_found()
    {
        var document = System.Text.Encoding.UTF8.GetString(FhirDocument.Write(Case(), ShippedRules.Book, Some.At("12:00")));
        var wrong = document.Replace("\"code\": \"/min\"", "\"code\": \"bpm\"", StringComparison.Ordinal);
        Assert.NotEqual(document, wrong);
        Assert.Contains(Validator.Value.Of(System.Text.Encoding.UTF8.GetBytes(wrong)), f => f.IsError);
    }

    private static CareRecord Case() =>
        new(
            [
                EntryWriting.Write(
                    new("a7k3", 1),
                    Happened.At(Some.At("02:00")),
                    Some.At("02:00"),
                    "Ane",
                    new Payload.SignsTaken { HeartRate = 88 }
                ),
            ],
            []
        );

    private static void Valid(CareRecord record, Instant at)
    {
        var faults = Validator
            .Value.Of(FhirDocument.Write(record, ShippedRules.Book, at))
            .Where(f => f.IsError || !Accepted.Any(a => f.Words.Contains(a, StringComparison.Ordinal)))
            .Select(f => f.ToString())
            .Distinct()
            .ToArray();
        Assert.True(faults.Length == 0, string.Join('\n', faults));
    }
}
