namespace Farhold.Tests.Records;

/// <summary>Where entries carry links and one does not fit, an attempt waits until a person has looked.</summary>
public class ChainDoubtTests
{
    private static Entry[] Linked => [.. Chained.Of(Case.Well.Record.Entries)];

    [Fact]
    public void A_record_that_hangs_together_raises_no_doubt()
    {
        var record = new CareRecord(Linked, []);
        Assert.Empty(record.Doubts);
        Assert.Equal(Verdict.Attempt, VerdictOf(record));
    }

    [Fact]
    public void An_entry_that_was_changed_blocks_an_attempt_until_someone_has_looked()
    {
        var record = new CareRecord(Changed(Linked, 3, "\"heartRate\":84", "\"heartRate\":85"), []);
        var doubt = Assert.Single(record.Doubts);
        Assert.Equal(
            "entry a-5 does not follow from the line before it: lines were changed after they were written, or another program rewrote "
                + "the file",
            doubt.Text
        );
        Assert.True(doubt.CanBeSettled);
        Assert.Equal(Verdict.CheckFirst, VerdictOf(record));
        Settle(record, doubt);
        Assert.Equal(Verdict.Attempt, VerdictOf(record));
    }

    /// <summary>Fields in another order and spaces: the same record to whoever reads it, another one to whoever counts bytes.</summary>
    [Fact]
    public void A_file_that_another_program_rewrote_is_one_doubt_for_each_device()
    {
        Entry[] two = [.. Chained.Of([.. Case.Well.Record.Entries, .. Notes("b", 4)])];
        var rewritten = two.Select(Spaced).ToArray();
        var record = new CareRecord(rewritten, []);
        Assert.Equal(2, record.Doubts.Length);
        Assert.Contains(
            record.Doubts,
            d =>
                d.Text.StartsWith(
                    "entry a-2 does not follow from the line before it, nor do 9 more of Ane's phone (a):",
                    StringComparison.Ordinal
                )
        );
        Assert.Contains(
            record.Doubts,
            d =>
                d.Text.StartsWith(
                    "entry b-2 does not follow from the line before it, nor do 2 more of Tor's phone (b):",
                    StringComparison.Ordinal
                )
        );
        foreach (var doubt in record.Doubts)
            Settle(record, doubt);
        Assert.Equal(Verdict.Attempt, VerdictOf(record));
        record.Add(Chained.Linked(Notes("a", 12).Last(), EntryChain.LinkTo(rewritten[10].Json)));
        Assert.Equal(Verdict.Attempt, VerdictOf(record));
    }

    [Fact]
    public void A_break_that_comes_after_one_was_settled_is_a_new_doubt()
    {
        var once = Changed(Linked, 3, "\"heartRate\":84", "\"heartRate\":85");
        var settled = Assert.Single(new CareRecord(once, []).Doubts);
        foreach (
            var again in (Entry[][])
                [Changed(once, 7, "\"able\":true", "\"able\" :true"), Changed(once, 3, "\"heartRate\":85", "\"heartRate\":86")]
        )
        {
            var record = new CareRecord(again, []);
            Settle(record, settled);
            Assert.NotEqual(settled.Id, Assert.Single(record.Doubts).Id);
            Assert.Equal(Verdict.CheckFirst, VerdictOf(record));
        }
    }

    [Fact]
    public void An_entry_without_a_link_among_linked_ones_is_a_doubt()
    {
        var entries = Linked;
        entries[8] = Case.Well.Record.Entries.ElementAt(8);
        Assert.StartsWith("entry a-9 does not follow", Assert.Single(new CareRecord(entries, []).Doubts).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Entries_from_before_there_were_links_are_not_held_to_them()
    {
        var entries = Case.Well.Record.Entries.ToArray();
        entries[10] = Chained.Linked(entries[10], EntryChain.LinkTo(entries[9].Json));
        Assert.Empty(new CareRecord(entries, []).Doubts);
    }

    [Fact]
    public void Of_a_missing_entry_the_gap_is_told_and_not_the_link()
    {
        var record = new CareRecord(Linked.Where((_, i) => i != 7), []);
        Assert.Equal(["gap-a-8"], record.Doubts.Select(d => d.Id));
    }

    /// <summary>The same entry came from two files, of which another program rewrote one.</summary>
    [Fact]
    public void A_link_fits_where_any_line_of_the_same_entry_is_the_one_it_names()
    {
        var entries = Linked;
        foreach (
            var record in (CareRecord[])[new([.. entries, .. entries.Select(Spaced)], []), new([.. entries.Select(Spaced), .. entries], [])]
        )
        {
            Assert.Empty(record.Doubts);
            Assert.Equal(entries.Length, record.Count);
        }
    }

    [Fact]
    public void The_order_in_which_entries_come_does_not_matter()
    {
        var entries = Changed(Linked, 3, "\"heartRate\":84", "\"heartRate\":85");
        var expected = new CareRecord(entries, []).Doubts;
        Assert.Single(expected);
        Assert.Equal(expected, new CareRecord(entries.Reverse(), []).Doubts);
        var growing = new CareRecord([], []);
        foreach (var entry in entries)
        {
            growing.Add(entry);
            _ = growing.Doubts;
        }

        Assert.Equal(expected, growing.Doubts);
    }

    private static IEnumerable<Entry> Notes(string device, int count) =>
        Enumerable
            .Range(1, count)
            .Select(n => EntryWriting.Write(new(device, n), Happened.At(Case.Now), Case.Now, "Tor", new Payload.NoteWritten("calm")));

    private static Entry Spaced(Entry entry) => Chained.Read("{ " + entry.Json.ToString()[1..]);

    private static Entry[] Changed(Entry[] entries, int which, string from, string to)
    {
        var line = entries[which].Json.ToString();
        Assert.Contains(from, line, StringComparison.Ordinal);
        return [.. entries[..which], Chained.Read(line.Replace(from, to, StringComparison.Ordinal)), .. entries[(which + 1)..]];
    }

    private static void Settle(CareRecord record, Doubt doubt) =>
        record.Add(
            EntryWriting.Write(
                record.NextId("z"),
                Happened.At(Case.Now),
                Case.Now,
                "Ane",
                new Payload.TaskDone(doubt.Id, "another program rewrote the file")
            )
        );

    private static Verdict VerdictOf(CareRecord record) => Judge.At(record, ShippedRules.Book, Case.Now).Limbs.Single().Verdict;
}
