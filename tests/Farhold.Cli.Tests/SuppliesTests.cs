using System.Text.Json;

namespace Farhold.Cli.Tests;

public class SuppliesTests
{
    private const string At = "2031-05-04T06:10:00Z";

    [Fact]
    public void What_is_left_is_told_with_what_can_stand_in()
    {
        var ran = Run.Farhold("supplies", Run.Demo, "--at", At, "--party", "3", "--zone", "Europe/Oslo");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.StartsWith("Get help first.", ran.Output);
        Assert.Contains(
            "Supplies for 3, times in Europe/Oslo:\n  haemostatic gauze: 0 rolls; used up\n    In its place: plain gauze, or clean "
                + "cloth strips.\n",
            ran.Output
        );
        Assert.Contains("the coming tasks of the care plan", ran.Output);
    }

    [Fact]
    public void What_was_never_counted_is_unknown_and_named_on_request()
    {
        var some = Run.Farhold("supplies", Run.Demo, "--at", At);
        Assert.Contains("more of the kit list were never counted: unknown, never enough", some.Output);
        Assert.DoesNotContain("  gloves:", some.Output);
        var all = Run.Farhold("supplies", Run.Demo, "--at", At, "--all");
        Assert.Contains("  gloves: not counted: count it\n", all.Output);
        Assert.DoesNotContain("never counted", all.Output);
    }

    [Fact]
    public void As_JSON_unknown_is_null_and_a_range_has_two_ends()
    {
        var ran = Run.Farhold("supplies", Run.Demo, "--at", At, "--party", "3", "--json");
        using var json = JsonDocument.Parse(ran.Output);
        Assert.Equal(
            (3, true),
            (json.RootElement.GetProperty("people").GetInt32(), json.RootElement.GetProperty("helpKnown").GetBoolean())
        );
        var items = json.RootElement.GetProperty("items").EnumerateArray().ToDictionary(i => i.GetProperty("item").GetString()!);
        Assert.Equal(
            (JsonValueKind.Null, "unknown"),
            (items["gloves"].GetProperty("left").ValueKind, items["gloves"].GetProperty("short").GetString())
        );
        Assert.Equal(3, items["plain-gauze"].GetProperty("left").GetProperty("high").GetDouble());
        Assert.Equal("met", items["haemostatic-gauze"].GetProperty("short").GetString());
    }

    [Fact]
    public void Coming_tasks_and_heat_draw_on_the_stock()
    {
        using var scratch = new Scratch();
        var record = scratch.Write(
            "r.jsonl",
            Lines.Opened,
            Lines.Entry("k1-2", "02:10", "supplies.stated", "\"item\":\"plain-dressing\",\"count\":4"),
            Lines.Entry("k1-3", "02:11", "supplies.stated", "\"item\":\"water-ml\",\"count\":6000")
        );
        JsonElement Of(string item, params string[] more)
        {
            using var json = JsonDocument.Parse(
                Run.Farhold(["supplies", record, "--at", "2031-05-04T03:00:00Z", "--json", .. more]).Output
            );
            return json.RootElement.GetProperty("items").EnumerateArray().Single(i => i.GetProperty("item").GetString() == item).Clone();
        }

        // one at most every 8 h: design
        Assert.Equal(0.125, Of("plain-dressing").GetProperty("plannedPerHour").GetProperty("high").GetDouble());
        var (cool, hot) = (Of("water-ml", "--heat", "cool", "--party", "1"), Of("water-ml", "--heat", "hot", "--party", "4"));
        // 3 L a day (JTS nursing guideline)
        Assert.Equal("2031-05-06T03:00:00Z", cool.GetProperty("runsOut").GetProperty("earliest").GetString());
        Assert.True(string.CompareOrdinal(hot.GetProperty("runsOut").GetProperty("earliest").GetString(), "2031-05-05") < 0);
    }

    [Theory]
    [InlineData("--party", "0", "--party is 1 to 200")]
    [InlineData("--party", "201", "--party is 1 to 200")]
    [InlineData("--party", "some", "farhold: ")]
    [InlineData("--heat", "mild", "--heat is one of cool, warm, hot")]
    [InlineData("--work", "play", "--work is one of rest, easy, hard")]
    [InlineData("--zone", "Nowhere/Else", "Nowhere/Else is no time zone")]
    [InlineData("--at", "noon", "--at noon is no instant")]
    [InlineData("--protocol", "none.json", "there is no such file")]
    public void An_option_that_is_none_is_refused(string option, string value, string reason)
    {
        var ran = Run.Farhold("supplies", Run.Demo, option, value);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains(reason, ran.Errors);
    }

    [Fact]
    public void A_record_that_is_none_is_refused_with_its_place()
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("supplies", scratch.Write("bad.jsonl", "not json at all"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("bad.jsonl:1:", ran.Errors);
    }

    [Fact]
    public void A_damaged_line_may_have_used_up_all()
    {
        using var scratch = new Scratch();
        var record = scratch.Write(
            "r.jsonl",
            Lines.Opened,
            Lines.Entry("k1-2", "02:10", "supplies.stated", "\"item\":\"plain-gauze\",\"count\":4"),
            "{\"id\":\"k1-3\","
        );
        var ran = Run.Farhold("supplies", record, "--at", "2031-05-04T03:00:00Z");
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("r.jsonl:3:", ran.Errors);
        Assert.Contains("  plain gauze: 0 to 4 rolls; may be used up", ran.Output);
    }
}
