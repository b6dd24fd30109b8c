using System.Text;

namespace Farhold.Tests.Text;

/// <summary>Fields of hand-written files at the edges of what is accepted.</summary>
public class LocatedFieldsTests
{
    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    [InlineData(1000, true)]
    [InlineData(1001, false)]
    public void A_text_has_1_to_1000_characters(int length, bool accepted)
    {
        var json = new LocatedJson(Encoding.UTF8.GetBytes($$"""{"title":"{{new string('a', length)}}"}"""), "x.json");
        var text = json.Text(json.Parse()!, "title");
        Assert.Equal(accepted ? (length, "") : (0, "x.json:1:10: title has to be a text of 1 to 1000 characters"), (text.Length, string.Join('\n', json.Refusals)));
    }

    [Fact]
    public void Blanks_alone_are_no_text()
    {
        var json = new LocatedJson("""{"title":"  "}"""u8.ToArray(), "x.json");
        Assert.Empty(json.Text(json.Parse()!, "title"));
        Assert.Single(json.Refusals);
    }
}
