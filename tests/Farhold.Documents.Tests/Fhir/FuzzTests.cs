using System.Globalization;
using System.Text;
using Farhold.Documents.Fhir;
using Farhold.Tests;

namespace Farhold.Documents.Tests.Fhir;

/// <summary>Documents changed at random are read, or refused with a reason; never a crash.</summary>
/// <remarks><c>FARHOLD_FUZZ</c> sets how many, <c>FARHOLD_FUZZ_SEED</c> another beginning.</remarks>
public class FuzzTests
{
    private static readonly int Inputs = Number("FARHOLD_FUZZ") ?? 1_500;
    private static readonly int Seed = Number("FARHOLD_FUZZ_SEED") ?? 20310504;

    private static readonly byte[][] Tokens =
    [
        .. new[]
        {
            "null",
            "{}",
            "[]",
            "\"\"",
            "-1e999",
            "\"entry\":",
            "\"resource\":",
            "\"resourceType\":\"Provenance\",",
            "\"extension\":[",
            "\"url\":\"https://farhold.example/fhir/StructureDefinition/record-line\",",
            "\"valueBase64Binary\":\"e30=\",",
            "\\ud800",
            "[[[[[[[[[[[[[[[[",
        }.Select(Encoding.UTF8.GetBytes),
        [0],
        [0xFF],
    ];

    [Fact]
    public void A_changed_document_is_read_or_refused_with_a_reason()
    {
        var original = FhirDocument.Write(Record(), ShippedRules.Book, Some.At("03:00"));
        var (read, refused) = (0, 0);
        for (var number = 0; number < Inputs; number++)
        {
            var random = new Random(unchecked((Seed * 31) + number));
            var bytes = original;
            for (var changes = random.Next(1, 4); changes > 0; changes--)
                bytes = Changed(bytes, random);
            switch (FhirReader.Read(bytes, "fuzz", ShippedRules.Book))
            {
                case Read<FhirRecord>.Usable { Value: var usable }:
                    Assert.NotEqual(0, usable.Record.Count);
                    read++;
                    break;
                case Read<FhirRecord>.Refused { Refusals: var refusals }:
                    Assert.NotEmpty(refusals);
                    Assert.All(refusals, r => Assert.True(r.Line >= 1 && r.Column >= 1 && r.Reason.Length > 10, $"input {number}: {r}"));
                    refused++;
                    break;
            }
        }

        Assert.True(read > 0 && refused > 0, $"{read} read, {refused} refused");
    }

    private static CareRecord Record() =>
        new(
            [
                EntryWriting.Write(
                    new("a7k3", 1),
                    Happened.At(Some.At("02:00")),
                    Some.At("02:00"),
                    "Ane",
                    new Payload.CasualtyOpened("Runa", Sex.Female, 34)
                ),
                EntryWriting.Write(new("a7k3", 2), Happened.At(Some.At("02:01")), Some.At("02:02"), "Ane", Some.GoodSigns),
            ],
            []
        );

    private static byte[] Changed(byte[] bytes, Random random)
    {
        var at = random.Next(bytes.Length);
        var end = Math.Min(bytes.Length, at + random.Next(1, 60));
        return random.Next(5) switch
        {
            0 => [.. bytes[..at], (byte)random.Next(256), .. bytes[(at + 1)..]],
            1 => [.. bytes[..at], .. bytes[end..]],
            2 => [.. bytes[..end], .. bytes[at..]],
            3 => random.Next(10) == 0 ? bytes[..(at + 1)] : [.. bytes[..at], .. "7"u8, .. bytes[(at + 1)..]],
            _ => [.. bytes[..at], .. Tokens[random.Next(Tokens.Length)], .. bytes[(random.Next(2) == 0 ? at : end)..]],
        };
    }

    private static int? Number(string variable) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : null;
}
