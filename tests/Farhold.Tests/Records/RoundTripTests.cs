using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using CsCheck;

namespace Farhold.Tests.Records;

public class RoundTripTests
{
    private static readonly Gen<Entry> Entries = Gen.Select(
        Gens.Id,
        Gens.When,
        Gens.Moment,
        Gens.AnyPayload,
        (id, when, recorded, what) => EntryWriting.Write(id, when, recorded, "Ane", what)
    );

    [Fact]
    public void An_entry_reads_back_as_it_was_written() =>
        Gen.Select(Gens.Id, Gens.When, Gens.Moment, Gens.AnyPayload)
            .Sample(
                (id, when, recorded, what) =>
                {
                    var entry = EntryWriting.Write(id, when, recorded, "Ane", what);
                    Assert.Equal((id, when, recorded, "Ane"), (entry.Id, entry.Happened, entry.Recorded, entry.By));
                    Assert.Equal(Kinds.Of(what), Kinds.Of(entry.Payload));
                    Assert.Equal(Shown(what), Shown(entry.Payload));
                    // every field that is written is one that is read
                    Assert.Equal(what is Payload.OfNewerVersion, !entry.NotUnderstood.IsEmpty);
                    Assert.Equal(entry.Json, EntryWriting.Write(id, when, recorded, "Ane", entry.Payload).Json);
                },
                iter: Gens.Cases(6_000)
            );

    [Fact]
    public void Reading_and_writing_a_file_changes_no_byte() =>
        Entries
            .Array[1, 12]
            .Sample(
                entries =>
                {
                    using var first = new MemoryStream();
                    RecordReader.Write(first, entries, []);
                    var file = ((Read<RecordFile>.Usable)RecordReader.Read(first.ToArray(), "x")).Value;
                    using var second = new MemoryStream();
                    RecordReader.Write(second, file.Entries, file.Damaged);
                    Assert.Empty(file.Damaged);
                    Assert.Equal(first.ToArray(), second.ToArray());
                },
                iter: Gens.Cases(500)
            );

    [Fact]
    public void Every_kind_is_generated()
    {
        var seen = new System.Collections.Concurrent.ConcurrentDictionary<Kind, int>();
        Gens.AnyPayload.Sample(
            p =>
            {
                seen.AddOrUpdate(Kinds.Of(p), 1, (_, n) => n + 1);
            },
            iter: 3_000
        );
        Assert.Equal(Enum.GetValues<Kind>(), seen.Keys.Order());
    }

    [Fact]
    public void Every_kind_goes_by_its_word() =>
        Assert.All(
            Enum.GetValues<Kind>().SkipLast(1),
            kind => Assert.Equal(kind, Kinds.Parse(System.Text.Encoding.UTF8.GetBytes(Kinds.Wire(kind))))
        );

    [Fact]
    public void A_number_that_the_record_refuses_can_not_be_written() =>
        Assert.Throws<ArgumentException>(() =>
            EntryWriting.Write(
                new("a", 1),
                Happened.At(Some.At("02:00")),
                Some.At("02:00"),
                "Ane",
                new Payload.SignsTaken { HeartRate = 900 }
            )
        );

    /// <summary>A payload field by field, so that one that neither writer nor reader knows would be missed.</summary>
    private static string Shown(object? value) =>
        value switch
        {
            null => "-",
            string or double or bool or int or Enum or Instant or EntryId or JsonText => JsonSerializer.Serialize(value.ToString()),
            ImmutableArray<string> texts => texts.IsDefault ? "-" : $"[{string.Join(',', texts)}]",
            ImmutableSortedDictionary<Limb, DistalPulse> pulses => string.Join(',', pulses),
            _ => string.Join(
                ';',
                value
                    .GetType()
                    .GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
                    .Select(p => $"{p.Name}={Shown(p.GetValue(value))}")
            ),
        };
}
