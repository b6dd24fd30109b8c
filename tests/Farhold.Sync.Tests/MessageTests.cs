using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Farhold.Sync.Tests;

/// <summary>The form of a message: what is in it, what of it is refused and where.</summary>
public class MessageTests
{
    private const string Line1 = """{"id":"a7k3-1","kind":"note","text":"one"}""";
    private const string Line2 = """{"id":"a7k3-2","kind":"note","text":"two"}""";

    private static LineSet Set(params ReadOnlySpan<string> lines)
    {
        var set = new LineSet();
        foreach (var line in lines)
            set.Add(Encoding.UTF8.GetBytes(line));
        return set;
    }

    /// <summary>Dₙ worked out here from its definition (docs/decisions/sync-by-vectors.md), with the framework's SHA-256.</summary>
    [Fact]
    public void The_running_hash_is_that_of_the_definition()
    {
        byte[] Hash(ReadOnlySpan<byte> of) => SHA256.HashData(of);
        var one = Hash([.. new byte[32], .. Hash(Encoding.UTF8.GetBytes(Line1))]);
        var two = Hash([.. one, .. Hash(Encoding.UTF8.GetBytes(Line2))]);
        Assert.Equal(
            """{"sync":1,"have":{"a7k3":[2,"RUNNING"]}}""".Replace(
                "RUNNING",
                Convert.ToHexStringLower(two)[..16],
                StringComparison.Ordinal
            ),
            Encoding.UTF8.GetString(Outgoing.To(null, Set(Line2, Line1)).Head.Write())
        );
    }

    /// <summary>Worked out by <c>printf x | sha256sum</c> of GNU coreutils.</summary>
    [Fact]
    public void A_line_without_an_id_is_odd_by_the_first_digits_of_its_hash() =>
        Assert.Equal("2d711642b726b044", Set("x").Vector.Odd.Single().ToString("x16", CultureInfo.InvariantCulture));

    [Fact]
    public void A_head_is_read_as_it_was_written()
    {
        var head = new Head(Set(Line1, "{\"id\":\"b-3\"}", "torn").Vector, Head.Empty.Hashes.Add("a7k3", [1, ulong.MaxValue]))
        {
            Now = Instant.FromUtc(2031, 5, 4, 2, 10),
        };
        var read = Assert.IsType<Read<Head>.Usable>(Head.Read(head.Write(), "head")).Value;
        Assert.Equal(head.Have, read.Have);
        Assert.Equal(head.Hashes["a7k3"], read.Hashes["a7k3"]);
        Assert.Equal(head.Now, read.Now);
    }

    [Theory]
    [InlineData("""{"have":{}}""", 1, "sync is missing")]
    [InlineData("""{"sync":2,"have":{}}""", 9, "sync has to be")]
    [InlineData("""{"sync":1}""", 1, "have is missing")]
    [InlineData("""{"sync":1,"have":[]}""", 18, "have has to be an object")]
    [InlineData("""{"sync":1,"have":{"a7k3":[0,"0123456789abcdef"]}}""", 27, "a7k3 has to be a whole number from 1")]
    [InlineData("""{"sync":1,"have":{"a7k3":[1.5,"0123456789abcdef"]}}""", 27, "a7k3 has to be a whole number from 1")]
    [InlineData("""{"sync":1,"have":{"a7k3":[1,"0123456789ABCDEF"]}}""", 29, "a7k3 has to be a hash")]
    [InlineData("""{"sync":1,"have":{"a7k3":[1]}}""", 26, "a7k3 has to be a list of a number and a hash")]
    [InlineData("""{"sync":1,"have":{"a 7":[1,"0123456789abcdef"]}}""", 19, "a 7 is no device")]
    [InlineData("""{"sync":1,"have":{},"odd":{}}""", 27, "odd has to be a list")]
    [InlineData("""{"sync":1,"have":{},"odd":["12"]}""", 28, "odd has to be a hash")]
    [InlineData("""{"sync":1,"have":{},"hashes":{"b":3}}""", 35, "b has to be a list of hashes")]
    [InlineData("""{"sync":1,"have":{},"more":true}""", 21, "more is not known here")]
    [InlineData("""{"sync":1,"have":{},"now":"noon"}""", 27, "now has to be an instant")]
    [InlineData("""{"sync":1,"sync":1,"have":{}}""", 11, "sync is given twice")]
    [InlineData("""{"sync":1,""", 10, "")]
    [InlineData("""{"id":"a7k3-1"}""", 1, "sync is missing")]
    public void What_is_wrong_with_a_head_is_refused_at_its_place(string head, int column, string reason)
    {
        var reader = new MessageReader(new LineSet(), "message");
        Assert.False(reader.Push(Encoding.UTF8.GetBytes(head + "\n" + Line1 + "\n")));
        Assert.Null(reader.Head);
        Assert.Empty(reader.TakeLines());
        var refusal = reader.Refusals[0];
        Assert.Equal(("message", 1, column), (refusal.File, refusal.Line, refusal.Column));
        Assert.StartsWith(reason, refusal.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void More_devices_than_the_limit_are_refused()
    {
        var devices = string.Join(',', Enumerable.Range(0, SyncLimits.MaxDevices + 1).Select(i => $"\"d{i}\":[1,\"0123456789abcdef\"]"));
        var read = Head.Read(Encoding.UTF8.GetBytes($"{{\"sync\":1,\"have\":{{{devices}}}}}"), "message");
        Assert.Contains("201 devices", Assert.Single(Assert.IsType<Read<Head>.Refused>(read).Refusals).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_is_too_long_ends_the_message_and_costs_none_before_it()
    {
        var reader = new MessageReader(new LineSet(), "message");
        Assert.True(reader.Push(Encoding.UTF8.GetBytes("{\"sync\":1,\"have\":{}}\n" + Line1 + "\n")));
        Assert.False(reader.Push(new byte[SyncLimits.MaxLine + 2]));
        Assert.Equal(3, Assert.Single(reader.Refusals).Line);
        Assert.Equal(Line1, Encoding.UTF8.GetString(Assert.Single(reader.TakeLines()).Span));
    }

    [Fact]
    public void A_message_that_is_too_long_is_not_read_to_its_end()
    {
        var reader = new MessageReader(new LineSet(), "message");
        reader.Push("{\"sync\":1,\"have\":{}}\n"u8);
        var line = new byte[SyncLimits.MaxLine / 2];
        line[^1] = (byte)'\n';
        var pushed = 0;
        while (reader.Push(line))
            pushed++;
        Assert.Equal(15, pushed); // 16 halves of a mebibyte, and the head takes a few bytes of the last
    }

    [Fact]
    public void A_line_without_its_end_does_not_count()
    {
        var reader = new MessageReader(new LineSet(), "message");
        Assert.True(reader.Push(Encoding.UTF8.GetBytes("{\"sync\":1,\"have\":{}}\n" + Line1)));
        Assert.Empty(reader.TakeLines());
    }

    [Fact]
    public void More_devices_and_more_odd_lines_than_the_limits_are_not_taken()
    {
        var set = new LineSet();
        for (var i = 0; i < SyncLimits.MaxDevices; i++)
            Assert.Equal(Addition.New, Add($"{{\"id\":\"d{i}-1\"}}"));
        Assert.Equal(Addition.TooManyDevices, Add("{\"id\":\"e-1\"}"));
        for (var i = 0; i < SyncLimits.MaxOdd; i++)
            Assert.Equal(Addition.New, Add($"{{\"id\":\"d1-{i + 3}\"}}"));
        Assert.Equal(Addition.TooManyOdd, Add("no line of ours"));
        Assert.Equal(Addition.New, Add("{\"id\":\"d1-2\"}")); // fills the gap: no more is odd
        Assert.Equal(Addition.New, Add("no line of ours"));

        Addition Add(string line) => set.Add(Encoding.UTF8.GetBytes(line));
    }

    [Fact]
    public void A_carriage_return_belongs_to_the_lines_end_and_a_blank_line_is_none()
    {
        var set = Set(Line1);
        Assert.Equal(Addition.Held, set.Add(Encoding.UTF8.GetBytes(Line1 + "\r")));
        Assert.Equal(Addition.Blank, set.Add(" \t\r"u8.ToArray()));
        Assert.Throws<ArgumentException>(() => set.Add("a\nb"u8.ToArray()));
    }

    [Fact]
    public void Of_several_lines_under_a_number_the_first_in_byte_order_counts_whichever_came_first()
    {
        string[] lines = [Line1, Line1.Replace("one", "One", StringComparison.Ordinal), Line2];
        Assert.Equal(Set(lines).Vector, Set([.. lines.Reverse()]).Vector);
        Assert.Equal(HeldLine.Of(Encoding.UTF8.GetBytes(Line1))!.Hash.Short, Set(lines).Vector.Odd.Single());
    }

    [Fact]
    public void What_is_known_to_be_missing_is_told_by_number_or_by_hash()
    {
        var mine = Set(Line1);
        Assert.True(
            KnownMissing.Here(mine, [Outgoing.To(null, mine).Head]) is { Last: var held, Unnumbered.IsEmpty: true } && held["a7k3"] == 1
        );
        var theirs = Outgoing.To(null, Set(Line1, Line2, "torn")).Head;
        var known = KnownMissing.Here(mine, [theirs, Head.Empty]);
        Assert.Equal(2, known.Last["a7k3"]);
        Assert.Single(known.Unnumbered);
        var other = Outgoing.To(null, Set(Line1.Replace("one", "other", StringComparison.Ordinal))).Head;
        Assert.StartsWith("a7k3 ", Assert.Single(KnownMissing.Here(mine, [other]).Unnumbered), StringComparison.Ordinal);
    }
}
