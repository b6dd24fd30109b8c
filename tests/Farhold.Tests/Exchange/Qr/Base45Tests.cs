using System.Text;
using CsCheck;
using Farhold.Exchange.Qr;

namespace Farhold.Tests.Exchange.Qr;

/// <summary>Examples of RFC 9285 (2022), sections 4.3 and 4.4 (from memory).</summary>
public class Base45Tests
{
    [Theory]
    [InlineData("AB", "BB8")]
    [InlineData("Hello!!", "%69 VD92EX0")]
    [InlineData("base-45", "UJCLQE7W581")]
    [InlineData("ietf!", "QED8WEX0")]
    [InlineData("", "")]
    public void Published_examples(string text, string encoded)
    {
        Assert.Equal(encoded, Base45.Encode(Encoding.ASCII.GetBytes(text)));
        Assert.Equal(text, Encoding.ASCII.GetString(Base45.Decode(encoded)!));
    }

    [Theory]
    [InlineData("GGW")] // 65536, one more than two bytes hold
    [InlineData(":::")]
    [InlineData("::")]
    [InlineData("A")]
    [InlineData("abc")]
    [InlineData("AB\u00C5")]
    public void What_is_none_is_refused(string text) => Assert.Null(Base45.Decode(text));

    [Fact]
    public void Any_bytes_come_back() =>
        Gen.Byte.Array[0, 300].Sample(b => Assert.Equal(b, Base45.Decode(Base45.Encode(b))!), iter: Gens.Cases(2_000));

    [Fact]
    public void Any_text_is_decoded_to_what_encodes_to_it_or_refused() =>
        Gen.String[Gen.Char[' ', '`'], 0, 40]
            .Sample(t => Assert.True(Base45.Decode(t) is not { } bytes || Base45.Encode(bytes) == t), iter: Gens.Cases(3_000));
}
