using System.Text;

namespace Farhold.Tests.Text;

/// <summary>Fields of hand-written files at the edges of what is accepted.</summary>
public class LocatedFieldsTests
{
    [Theory]
    [InlineData(0, "\"\"")]
    [InlineData(1, null)]
    [InlineData(1000, null)]
    [InlineData(1001, "\"aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa…\"")]
    public void A_text_has_1_to_1000_characters(int length, string? found)
    {
        var json = Json($$"""{"title":"{{new string('a', length)}}"}""");
        var text = json.Text(json.Parse()!, "title");
        Assert.Equal(
            found is null ? (length, "") : (0, $"x.json:1:10: title has to be a text of 1 to 1000 characters, not {found}"),
            (text.Length, string.Join('\n', json.Refusals))
        );
    }

    [Fact]
    public void Blanks_alone_are_no_text()
    {
        var json = Json("""{"title":"  "}""");
        Assert.Empty(json.Text(json.Parse()!, "title"));
        Assert.Single(json.Refusals);
    }

    [Theory]
    [InlineData("\"ten\"", "\"ten\"")]
    [InlineData("61", "61")]
    [InlineData("2.5", "2.5")]
    [InlineData("1e999", "1e999")]
    [InlineData("null", "null")]
    [InlineData("true", "true")]
    [InlineData("{}", "an object")]
    [InlineData("[]", "an empty list")]
    [InlineData("[1,2]", "a list of 2")]
    [InlineData("\"a\\nb\\u202ec\"", "\"a bc\"")]
    public void A_refusal_says_what_is_accepted_and_what_was_found(string value, string found)
    {
        var json = Json($$"""{"days":{{value}}}""");
        var days = new LocatedObject(json, json.Parse()!, "a trip");
        Assert.Null(days.Whole("days", 1, 60));
        Assert.Equal($"x.json:1:9: days has to be a whole number from 1 to 60, not {found}", json.Refusals.Single().ToString());
    }

    [Fact]
    public void What_nobody_asked_for_is_refused_with_what_is_known_and_what_may_be_meant()
    {
        var json = Json("""{"distanceKM":3,"colour":1}""");
        var leg = new LocatedObject(json, json.Parse()!, "a stage");
        Assert.Null(leg.Number("distanceKm", 0, 5000));
        Assert.Null(leg.Text("name", 200));
        leg.Done();
        Assert.Equal(
            [
                "x.json:1:2: distanceKM is not known here (is distanceKm meant?); known are distanceKm, name",
                "x.json:1:17: colour is not known here; known are distanceKm, name",
            ],
            json.Refusals.Select(r => r.ToString())
        );
    }

    [Theory]
    [InlineData("\"PT0S\"", false)]
    [InlineData("\"PT1S\"", true)]
    [InlineData("\"PT-5M\"", false)]
    [InlineData("\"P30D\"", true)]
    [InlineData("\"P30DT1S\"", false)]
    [InlineData("5", false)]
    public void A_span_is_above_zero_and_at_most_thirty_days(string value, bool accepted)
    {
        var json = Json($$"""{"every":{{value}}}""");
        Assert.Equal(accepted, json.OptionalSpan(json.Parse()!, "every") is not null);
        Assert.Equal(accepted, json.Refusals.Count == 0);
    }

    private static LocatedJson Json(string text) => new(Encoding.UTF8.GetBytes(text), "x.json");
}
