using CsCheck;

namespace Farhold.Tests.Laws;

/// <summary>What a record says depends on the set of its entries, and on nothing else.</summary>
public class OrderTests
{
    private static readonly Gen<(Written Written, int[] Keys)> Shuffled = Gen.Select(Gens.StrangeRecord, Gen.Int.Array[40]);

    [Fact]
    public void Order_and_repetition_do_not_matter() =>
        Shuffled.Sample(
            s =>
            {
                var (written, keys) = s;
                var shuffled = written.Entries.Select((e, i) => (e, Key: keys[i % 40])).OrderBy(x => x.Key).Select(x => x.e).ToArray();
                var twice = shuffled.Concat(shuffled.Where((_, i) => keys[i % 40] % 2 == 0));
                var other = new CareRecord(twice, written.Damaged.Reverse());
                Same(written.Record, other, written.Now);
                Assert.Equal(written.Record.Entries.Select(e => e.Json.ToString()), other.Entries.Select(e => e.Json.ToString()));
            },
            iter: Gens.Cases(1_500)
        );

    [Fact]
    public void Adding_one_by_one_comes_to_the_same_as_all_at_once() =>
        Shuffled.Sample(
            s =>
            {
                var (written, keys) = s;
                var growing = new CareRecord([], []);
                var damage = written.Damaged.ToList();
                for (var i = 0; i < written.Entries.Length; i++)
                {
                    if (damage.Count > 0 && keys[i % 40] % 3 == 0)
                    {
                        growing.Add(damage[0]);
                        damage.RemoveAt(0);
                    }

                    growing.Add(written.Entries[i]);
                    _ = growing.Readings; // folds now, so that the next entry is laid on what is folded
                    Same(new(written.Entries.Take(i + 1), growing.Damaged), growing, written.Now);
                }
            },
            iter: Gens.LongCases(500)
        );

    [Fact]
    public void Judging_twice_says_the_same() =>
        Gens.StrangeRecord.Sample(written => Some.Json(written.Judged()).SequenceEqual(Some.Json(written.Judged())), iter: Gens.Cases(500));

    [Fact]
    public void Lines_of_one_meaning_are_one_entry()
    {
        var plain =
            """{"id":"a-1","happened":"2031-05-04T02:00:00Z","recorded":"2031-05-04T02:00:00Z","by":"Ane","kind":"note","text":"calm","n":1.50}""";
        var spaced =
            """{ "by":"Ane", "id":"a-1","happened":"2031-05-04T02:00:00Z","recorded":"2031-05-04T02:00:00Z","kind":"note","text":"c\u0061lm","n":1.5 }""";
        var record = new CareRecord([Read(plain)], []);
        Assert.False(record.Add(Read(spaced)));
        Assert.Empty(record.Conflicts);
    }

    private static void Same(CareRecord expected, CareRecord actual, Instant now)
    {
        Assert.Equal(
            System.Text.Encoding.UTF8.GetString(Some.Json(Judge.At(expected, ShippedRules.Book, now))),
            System.Text.Encoding.UTF8.GetString(Some.Json(Judge.At(actual, ShippedRules.Book, now)))
        );
        Assert.Equal(expected.Readings.Length, actual.Readings.Length);
        foreach (var (a, b) in expected.Readings.Zip(actual.Readings))
            Assert.Equal(a.All.Select(d => (d.Id, d.When)), b.All.Select(d => (d.Id, d.When)));
        Assert.Equal(expected.Doubts, actual.Doubts);
        Assert.Equal(expected.LastRecorded, actual.LastRecorded);
        Assert.Equal(expected.Count, actual.Count);
    }

    private static Entry Read(string line) =>
        ((Read<Entry>.Usable)new EntryReader().Read(System.Text.Encoding.UTF8.GetBytes(line), "line", 1)).Value;
}
