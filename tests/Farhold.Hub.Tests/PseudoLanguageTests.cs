using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests;

public class PseudoLanguageTests
{
    [Theory]
    [InlineData("Now", "Ñóŵ ñó")]
    [InlineData("Hand over", "Ĥáñđ óṽéŕ Ĥáñđ óṽé")]
    [InlineData("{0:#minutes} min ago", "{0:#minutes} ɱíñ áǧó ɱíñ áǧó")]
    public void Short_texts_are_doubled_and_what_is_filled_in_stays(string english, string expected)
    {
        var made = PseudoLanguage.Of("AnyKey", english, PseudoLanguage.Long);
        Assert.StartsWith(expected[..(expected.Length / 2)], made, StringComparison.Ordinal);
        Assert.InRange(made.Length, (1.4 * english.Length) - 4, 2.4 * english.Length);
    }

    [Fact]
    public void Long_texts_grow_by_two_fifths_and_keep_their_forms()
    {
        const string English = "1 entry was taken in here|{0:#count} entries were taken in here";
        var made = PseudoLanguage.Of("AnyKey", English, PseudoLanguage.Long).Split('|');
        Assert.Equal(2, made.Length);
        Assert.Equal(35, made[0].Length);
        Assert.StartsWith("1 ", made[0], StringComparison.Ordinal);
        Assert.StartsWith("{0:#count} ", made[1], StringComparison.Ordinal);
        Assert.DoesNotContain("entr", string.Concat(made), StringComparison.Ordinal);
    }

    [Fact]
    public void What_machines_read_is_left_as_it_is()
    {
        Assert.Equal("rtl", PseudoLanguage.Of("Direction", "ltr", PseudoLanguage.RightToLeft));
        Assert.Equal("ltr", PseudoLanguage.Of("Direction", "ltr", PseudoLanguage.Long));
        Assert.Equal(".", PseudoLanguage.Of("DecimalMark", ".", PseudoLanguage.Long));
        Assert.Equal("{0:a} א 5", PseudoLanguage.Of("AnyKey", "{0:a} A 5", PseudoLanguage.RightToLeft));
    }
}
