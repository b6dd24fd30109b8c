using CsCheck;

namespace Farhold.Tests.Texts;

public class TextTableTests
{
    [Fact]
    public void Folding_loses_nothing_and_keeps_to_the_width() =>
        Gen.Select(Gen.Char["ab c"].Array[0, 60], Gen.Int[1, 12])
            .Sample(
                (letters, width) =>
                {
                    var text = new string(letters);
                    var lines = TextTable.Fold(text, width).ToArray();
                    Assert.All(lines, l => Assert.True(l.Length <= width));
                    Assert.Equal(text.Replace(" ", ""), string.Concat(lines).Replace(" ", ""));
                }
            );

    [Fact]
    public void Columns_stand_under_their_heads()
    {
        using var to = new StringWriter();
        var table = new TextTable(to, 5, 9);
        table.Row("when", "what");
        table.Rule();
        table.Row("02:10\nafter", "a pulse beyond");
        Assert.Equal("when   what\n-----  ---------\n02:10  a pulse\nafter  beyond\n", to.ToString());
    }
}
