using Farhold.Exchange.Message;

namespace Farhold.Tests.Exchange.Message;

/// <summary>Figures of 3GPP TS 23.038, section 6.2.1 (from memory).</summary>
public class Gsm7Tests
{
    [Theory]
    [InlineData("", 0)]
    [InlineData("Hello 123 @£$", 13)]
    [InlineData("ÅåΔΩñü¿", 7)]
    [InlineData("[x]", 5)]
    [InlineData("€^{}\\~|", 14)]
    public void Characters_of_the_extension_cost_two(string text, int septets) => Assert.Equal(septets, Gsm7.Septets(text));

    [Theory]
    [InlineData("ж")]
    [InlineData("雪")]
    [InlineData("`")]
    [InlineData("ç")]
    public void What_the_alphabet_lacks_has_no_length(string text) => Assert.Null(Gsm7.Septets(text));

    [Fact]
    public void The_default_alphabet_has_127_characters_beside_the_escape_and_the_extension_ten()
    {
        var lengths = Enumerable.Range(0, 0x3000).Select(c => Gsm7.Septets(((char)c).ToString())).ToArray();
        Assert.Equal((127, 10), (lengths.Count(l => l == 1), lengths.Count(l => l == 2)));
    }
}
