using System.Text;

namespace Farhold.Tests.WayOut.Ground;

/// <summary>Text and places for a parser outside .NET; that parser itself is tried in a browser (TrackReadingTests).</summary>
public class FedXmlTests
{
    [Theory]
    [InlineData("a\nb\r\nc\rd\r\r\n\ne", 7)]
    [InlineData("\r\n\r\n", 3)]
    [InlineData("", 1)]
    public void Lines_are_the_same_however_the_text_is_cut(string text, int count)
    {
        for (var size = 1; size <= text.Length + 1; size++)
        {
            var lines = new XmlLines();
            for (var at = 0; at < text.Length; at += size)
                lines.Add(text.AsSpan(at, Math.Min(size, text.Length - at)));
            for (var at = 0; at < text.Length; at++)
                if (text[at] is not ('\r' or '\n'))
                    Assert.Equal(Place(text, at), lines.Place(at));
            Assert.Equal(count, lines.Place(text.Length).Line);
        }

        static (int, int) Place(string text, int at)
        {
            var before = text[..at].ReplaceLineEndings("\n");
            return (before.Count(c => c == '\n') + 1, before.Length - before.LastIndexOf('\n'));
        }
    }

    [Theory]
    [InlineData("utf-8", true)]
    [InlineData("utf-16", true)]
    [InlineData("utf-16", false)]
    [InlineData("utf-16BE", true)]
    [InlineData("utf-32", true)]
    [InlineData("iso-8859-1", false)]
    public void A_text_is_the_same_however_its_bytes_are_cut(string name, bool mark)
    {
        var encoding = Encoding.GetEncoding(name);
        var text =
            $"<?xml version='1.0' encoding='{name}'?><gpx>Überø</gpx>"
            + (name.StartsWith("utf", StringComparison.Ordinal) ? "\U0001F3D4" : "");
        byte[] bytes = [.. mark ? encoding.GetPreamble() : [], .. encoding.GetBytes(text)];
        for (var size = 1; size < 9; size++)
        {
            var decoder = new XmlDecoder(bytes);
            var read = new StringBuilder();
            while (!decoder.IsAtEnd)
                read.Append(decoder.Next(size));
            Assert.Equal(text, read.ToString());
        }
    }

    [Theory]
    [InlineData("<?xml version='1.0' encoding='no such'?><gpx/>")]
    [InlineData("<?xml version='1.0' encoding=\"UTF-16\"?><gpx/>")]
    public void An_encoding_that_cannot_be_so_is_not_read(string text) =>
        Assert.True(new XmlDecoder(Encoding.UTF8.GetBytes(text)).IsUnknown);

    [Fact]
    public void A_byte_that_cannot_be_read_becomes_what_no_xml_may_hold() =>
        Assert.Equal(
            "<gpx>\uFFFF</gpx>",
            new XmlDecoder("<gpx>"u8.ToArray().Concat(new byte[] { 0xE9 }).Concat("</gpx>"u8.ToArray()).ToArray()).Next(100)
        );
}
