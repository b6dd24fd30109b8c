using System.Text;
using CsCheck;

namespace Farhold.App.Tests.Browser;

public class IncomingFileTests
{
    [Fact]
    public void Lines_are_split_with_their_ids_whatever_the_line_end_and_the_mark_at_the_start()
    {
        var file = IncomingFile.Split(Encoding.UTF8.GetBytes("\uFEFF{\"id\":\"7k3f-1\"}\r\n\n  \n{\"id\":\"9-mwq-12\"}"));
        Assert.Equal([new EntryId("7k3f", 1), new EntryId("9-mwq", 12)], file.Lines.Select(l => l.Id!.Value));
    }

    [Theory]
    [InlineData("not JSON")]
    [InlineData("[1]")]
    [InlineData("{\"id\":7}")]
    [InlineData("{\"id\":\"7k3f-0\"}")]
    [InlineData("{\"kind\":\"note\"}")]
    [InlineData("{\"id\":\"\\ud800\"}")]
    [InlineData("{\"id\":\"7k3f-1\",\"kind\":\"casualty.opened\",\"alias\":\"\\ud800\"}")]
    public void A_line_without_a_usable_id_is_kept_without_one(string line)
    {
        var only = Assert.Single(IncomingFile.Split(Encoding.UTF8.GetBytes(line)).Lines);
        Assert.Null(only.Id);
        Assert.Equal(line, Encoding.UTF8.GetString(only.Bytes.Span));
    }

    [Fact]
    public void The_alias_and_the_mark_of_practice_are_found()
    {
        var file = IncomingFile.Split("""{"id":"7k3f-1","kind":"casualty.opened","practice":true,"alias":"Doll"}"""u8.ToArray());
        Assert.Equal(("Doll", true), (file.Alias, file.Practice));
    }

    [Fact]
    public void No_byte_of_a_line_is_lost_whatever_the_bytes() =>
        Gen
            .Byte.Where(b => b is not (10 or 13 or 32 or 9))
            .Array[1, 40]
            .Array[1, 10]
            .Where(lines => !lines[0].AsSpan().StartsWith("\uFEFF"u8))
            .Sample(lines =>
            {
                byte[] bytes = [.. lines.SelectMany(l => l.Append((byte)'\n'))];
                var split = IncomingFile.Split(bytes).Lines;
                return split.Length == lines.Length && split.Zip(lines).All(p => p.First.Bytes.Span.SequenceEqual(p.Second));
            });

    [Fact]
    public void A_practice_file_says_so_in_its_name()
    {
        var head = new CasualtyHead("c1", "Doll / 2", true, Instant.FromUtc(2031, 5, 4, 2, 0));
        Assert.Equal("PRACTICE-farhold-Doll2-20310504-0205Z.jsonl", IncomingFile.NameFor(head, Instant.FromUtc(2031, 5, 4, 2, 5)));
    }
}
