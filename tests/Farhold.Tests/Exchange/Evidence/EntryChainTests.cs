using System.Security.Cryptography;
using System.Text;
using Farhold.Exchange.Evidence;

namespace Farhold.Tests.Exchange.Evidence;

public class EntryChainTests
{
    private static Entry[] Linked => [.. Chained.Of(LongWatch.Entries(90))];

    [Fact]
    public void A_record_as_it_was_written_is_unbroken()
    {
        var chains = EntryChain.Check(new CareRecord(Linked, []));
        Assert.Equal(["a7k3", "m2rt"], chains.Select(c => c.Device));
        Assert.All(chains, c => Assert.Empty(c.Breaks));
        Assert.Equal([50 - 1, 40 - 1], chains.Select(c => c.Linked));
    }

    [Fact]
    public void An_entry_that_was_changed_breaks_the_chain_just_after_it()
    {
        for (var i = 0; i < 49; i++)
        {
            var entries = Linked;
            entries[i] = Chained.Read(entries[i].Json.ToString().Replace("\"by\":\"Ane\"", "\"by\":\"Ana\"", StringComparison.Ordinal));
            Assert.Equal(new EntryId("a7k3", i + 2), EntryChain.Check(new CareRecord(entries, []))[0].Breaks[0].At);
        }
    }

    [Fact]
    public void An_entry_that_is_missing_leaves_the_next_unchecked_and_is_told_as_a_gap()
    {
        var record = new CareRecord(Linked.Where(e => e.Id != new EntryId("a7k3", 7)), []);
        Assert.Equal(1, EntryChain.Check(record)[0].Unchecked);
        Assert.Contains(record.Doubts, d => d.Id == "gap-a7k3-7");
    }

    [Fact]
    public void An_entry_pushed_in_without_a_link_breaks_the_chain()
    {
        var entries = Linked;
        entries[20] = LongWatch.Entries(90).Single(e => e.Id == entries[20].Id);
        Assert.Equal(entries[20].Id, EntryChain.Check(new CareRecord(entries, []))[0].Breaks[0].At);
    }

    [Fact]
    public void Records_without_links_have_nothing_to_check() =>
        Assert.All(EntryChain.Check(Demo.Record()), c => Assert.Equal((0, 0), (c.Linked, c.Breaks.Length)));

    [Fact]
    public void A_link_that_is_no_text_is_a_break() =>
        Assert.Single(
            EntryChain
                .Check(
                    new CareRecord(
                        [
                            Linked[0],
                            Chained.Read(
                                Linked[1].Json.ToString().Replace($"\"{EntryChain.LinkTo(Linked[0].Json)}\"", "7", StringComparison.Ordinal)
                            ),
                        ],
                        []
                    )
                )[0]
                .Breaks
        );

    /// <summary>What <c>sort -u | sha256sum</c> does, written out.</summary>
    [Fact]
    public void The_fingerprint_is_that_of_the_sorted_lines()
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "demo", "skarvedal.jsonl"))
            .Distinct()
            .Order(StringComparer.Ordinal);
        var digest = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Concat(lines.Select(l => l + "\n")))));
        Assert.Equal(digest[..20], Fingerprint.Of(Demo.Record()).Replace(" ", "", StringComparison.Ordinal));
    }

    [Fact]
    public void The_fingerprint_does_not_depend_on_the_order_of_arrival_and_changes_with_any_entry()
    {
        var entries = Linked;
        var whole = Fingerprint.Of(new CareRecord(entries, []));
        Assert.Equal(whole, Fingerprint.Of(new CareRecord(entries.Reverse().Concat(entries), [])));
        Assert.NotEqual(whole, Fingerprint.Of(new CareRecord(entries[..^1], [])));
    }
}
