using System.Collections.Immutable;
using System.Text;
using static Farhold.Tests.Protocols.LocalFile;

namespace Farhold.Tests.Protocols;

/// <summary>Whether a changed rule lets attempts go ahead more often: looser (or not to be told) is refused, tighter is not.</summary>
public class StrictnessTests
{
    private const string Tighter = "tighter";

    private const string Looser = "looser";

    private const string Same = "same";

    [Theory]
    [InlineData(Numbers.Above100, Numbers.Above90, Tighter)]
    [InlineData(Numbers.Above100, Numbers.Above110, Looser)]
    [InlineData(Numbers.Above100, Numbers.Above100, Same)]
    [InlineData("""{"input":"heartRate","atLeast":100}""", """{"input":"heartRate","atLeast":90}""", Tighter)]
    [InlineData("""{"input":"heartRate","atLeast":100}""", """{"input":"heartRate","atLeast":110}""", Looser)]
    [InlineData("""{"input":"systolic","below":100}""", """{"input":"systolic","below":110}""", Tighter)]
    [InlineData("""{"input":"systolic","below":100}""", """{"input":"systolic","below":90}""", Looser)]
    [InlineData("""{"input":"systolic","atMost":100}""", """{"input":"systolic","atMost":110}""", Tighter)]
    [InlineData("""{"input":"systolic","atMost":100}""", """{"input":"systolic","atMost":90}""", Looser)]
    [InlineData(Numbers.Above100, """{"input":"heartRate","atLeast":90}""", Looser)] // held otherwise: not to be told
    [InlineData(Numbers.Above100, """{"input":"breathRate","above":90}""", Looser)]
    public void A_limit_that_is_met_more_often_is_tighter(string before, string after, string change) =>
        Becomes("forbids", before, after, change);

    [Theory]
    [InlineData(
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":5,"limit":150}]}""",
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":5,"limit":140}]}""",
        Tighter
    )]
    [InlineData(
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":5,"limit":150}]}""",
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":5,"limit":160}]}""",
        Looser
    )]
    [InlineData(
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":5,"limit":150}]}""",
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":4,"limit":150}]}""",
        Tighter
    )] // 100 from 4 years
    [InlineData(
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":5,"limit":150}]}""",
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":6,"limit":150}]}""",
        Looser
    )]
    [InlineData("""{"input":"heartRate","above":100,"byAge":[{"from":0,"under":5,"limit":150}]}""", Numbers.Above100, Tighter)]
    [InlineData(Numbers.Above100, """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":5,"limit":150}]}""", Looser)]
    [InlineData(
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":5,"limit":150}]}""",
        """{"input":"heartRate","above":110,"byAge":[{"from":0,"under":5,"limit":140}]}""",
        Looser
    )] // some ages tighter, some looser
    [InlineData(
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":1,"limit":150},{"from":1,"under":5,"limit":140}]}""",
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":1,"limit":150},{"from":1,"under":5,"limit":130}]}""",
        Tighter
    )]
    [InlineData(
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":1,"limit":150},{"from":1,"under":5,"limit":140}]}""",
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":1,"limit":150},{"from":1,"under":5,"limit":141}]}""",
        Looser
    )]
    [InlineData(
        """{"input":"heartRate","above":100,"byAge":[{"from":0,"under":5,"limit":150}]}""",
        """{"input":"heartRate","above":99,"byAge":[{"from":0,"under":5,"limit":150}]}""",
        Tighter
    )]
    public void Limits_are_compared_at_every_age(string before, string after, string change) => Becomes("forbids", before, after, change);

    /// <summary>A step that takes twice as long in some case is not to be spared that, nor told to wait in another case instead.</summary>
    [Fact]
    public void When_a_step_takes_twice_as_long_is_compared()
    {
        var step = ShippedProtocol.Protocol.Steps[0] with { Twice = null };
        Condition alert = new Condition.OneOf(Input.Mental, ["alert"]),
            voice = new Condition.OneOf(Input.Mental, ["voice"]);
        Assert.Equal(Change.Same, Strictness.Of(step, step));
        Assert.Equal(Change.Same, Strictness.Of(step with { Twice = alert }, step with { Twice = alert }));
        Assert.Equal(Change.Tighter, Strictness.Of(step, step with { Twice = alert }));
        Assert.Equal(Change.Different, Strictness.Of(step with { Twice = alert }, step));
        Assert.Equal(Change.Different, Strictness.Of(step with { Twice = alert }, step with { Twice = voice }));
    }

    [Theory]
    [InlineData("""["pain"]""", """["pain","unresponsive"]""", Tighter)]
    [InlineData("""["pain","unresponsive"]""", """["pain"]""", Looser)]
    [InlineData("""["pain","voice"]""", """["voice","pain"]""", Same)]
    [InlineData("""["pain"]""", """["voice"]""", Looser)]
    public void More_words_that_forbid_are_tighter(string before, string after, string change) =>
        Becomes("forbids", $$"""{"input":"mental","in":{{before}}}""", $$"""{"input":"mental","in":{{after}}}""", change);

    [Theory]
    [InlineData("[A]", "[A,B]", "any", Tighter)]
    [InlineData("[A,B]", "[A]", "any", Looser)]
    [InlineData("[A,B]", "[A,B]", "any", Same)]
    [InlineData("[A,B]", "[B,A]", "any", Looser)] // in another order: not to be told
    [InlineData("[A]", "[A,B]", "all", Looser)]
    [InlineData("[A,B]", "[A]", "all", Tighter)]
    [InlineData("[A]", "[C]", "any", Tighter)] // C is A at a lower limit
    [InlineData("[A,B]", "[C]", "any", Looser)]
    [InlineData("[A]", "[C,B]", "any", Tighter)]
    [InlineData("[C]", "[A,B]", "any", Looser)]
    [InlineData("[C]", "[A]", "all", Looser)]
    public void Parts_are_compared_one_by_one_and_those_that_come_or_go(string before, string after, string word, string change) =>
        Becomes("forbids", $$"""{"{{word}}":{{Put(before)}}}""", $$"""{"{{word}}":{{Put(after)}}}""", change);

    [Theory]
    [InlineData("A", """{"any":[A,B]}""", Tighter)]
    [InlineData("A", """{"any":[C,B]}""", Tighter)]
    [InlineData("C", """{"any":[A,B]}""", Looser)]
    [InlineData("A", """{"all":[A,B]}""", Looser)]
    [InlineData("""{"not":A}""", """{"not":C}""", Looser)]
    [InlineData("""{"not":C}""", """{"not":A}""", Tighter)]
    [InlineData("""{"not":A}""", """{"not":A}""", Same)]
    [InlineData("""{"not":A}""", "A", Looser)]
    public void Wrapped_in_another_condition_it_is_compared_by_what_that_means(string before, string after, string change) =>
        Becomes("forbids", Put(before), Put(after), change);

    [Theory]
    [InlineData("requires", Numbers.Above100, Numbers.Above90, Looser)]
    [InlineData("requires", Numbers.Above100, Numbers.Above110, Tighter)]
    [InlineData("awaits", Numbers.Above100, Numbers.Above90, Tighter)]
    public void A_requirement_that_is_met_more_often_is_looser(string role, string before, string after, string change) =>
        Becomes(role, before, after, change);

    [Theory]
    [InlineData("\"role\":\"awaits\"")]
    [InlineData("\"role\":\"forbids\",\"group\":\"shock\"")]
    [InlineData("\"role\":\"forbids\",\"hard\":true")]
    public void Another_role_group_or_hardness_is_not_to_be_told(string role) =>
        Assert.Contains(
            Refusals(Numbers.Above100, "\"role\":\"forbids\"", Numbers.Above90, role),
            r => r.Reason.StartsWith("x is changed: X. Asks: ", StringComparison.Ordinal)
        );

    [Theory]
    [InlineData("""{"haemostatic-gauze":"PT3M","plain-gauze":"PT10M"}""", false)] // cloth's is gone
    [InlineData("""{"haemostatic-gauze":"PT3M","plain-gauze":"PT10M","cloth":"PT11M"}""", true)]
    [InlineData("""{"haemostatic-gauze":"PT3M","plain-gauze":"PT10M","cloth":"PT10M","":"PT1M"}""", true)]
    [InlineData("""{"haemostatic-gauze":"PT3M","plain-gauze":"PT9M","cloth":"PT11M"}""", false)]
    public void Every_minimum_of_a_step_is_compared(string minimum, bool tighter)
    {
        var text = $$"""{{Head}},"steps":[{"id":"hold","text":"Press.","minimum":{{minimum}},"sources":["hut"]}]}""";
        Assert.Equal(tighter, Read(text) is Read<Protocol>.Usable { Value.Local.Loosened.IsEmpty: true });
    }

    [Theory]
    [InlineData("""[{"until":"PT15M"},{"until":"PT1H1M","every":"PT2M"},{"until":"PT2H","every":"PT15M"},{"every":"PT1H"}]""", true)]
    [InlineData("""[{"until":"PT15M"},{"until":"PT1H","every":"PT1M"},{"until":"PT2H","every":"PT15M"},{"every":"PT50M"}]""", true)]
    [InlineData("""[{"until":"PT15M"},{"until":"PT59M","every":"PT2M"},{"until":"PT2H","every":"PT15M"},{"every":"PT1H"}]""", false)]
    [InlineData(
        """[{"until":"PT15M","every":"PT1M"},{"until":"PT1H","every":"PT2M"},{"until":"PT2H","every":"PT15M"},{"every":"PT1H"}]""",
        false
    )]
    [InlineData("""[{"until":"PT3H"},{"every":"PT1H"}]""", true)]
    public void The_watch_is_compared_at_every_time_since_slackening(string periods, bool tighter)
    {
        var text = $$$"""{{{Head}}},"watch":{"text":"Look.","periods":{{{periods}}},"sources":["hut"]}}""";
        Assert.Equal(tighter, Read(text) is Read<Protocol>.Usable { Value.Local.Loosened.IsEmpty: true });
    }

    private static void Becomes(string role, string before, string after, string change)
    {
        var text = Overlay(after, $"\"role\":\"{role}\"");
        if (change == Looser)
        {
            Assert.StartsWith(
                "x is changed: X. Asks: ",
                Assert.Single(Refusals(before, $"\"role\":\"{role}\"", after, $"\"role\":\"{role}\"")).Reason,
                StringComparison.Ordinal
            );
            return;
        }

        var laid = Assert.IsType<Read<Protocol>.Usable>(Read(text, Under(before, $"\"role\":\"{role}\""))).Value;
        Assert.Equal(change == Same ? [] : ["x is changed: X"], laid.Local!.Changes.Skip(1).Select(c => c.Split('.')[0]));
    }

    private static ImmutableArray<Refusal> Refusals(string before, string roleBefore, string after, string roleAfter) =>
        Assert.IsType<Read<Protocol>.Refused>(Read(Overlay(after, roleAfter), Under(before, roleBefore))).Refusals;

    private static string Overlay(string when, string role) => $"{Head},\"criteria\":[{Criterion(when, role)}]}}";

    private static Protocol Under(string when, string role)
    {
        var text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "protocols", "farhold-base.json"))
            .Replace("\"criteria\": [", "\"criteria\": [" + Criterion(when, role) + ",", StringComparison.Ordinal);
        return Assert.IsType<Read<Protocol>.Usable>(ProtocolReader.Read(Encoding.UTF8.GetBytes(text), "p.json")).Value;
    }

    private static string Criterion(string when, string role) =>
        $$"""{"id":"x",{{role}},"text":"X.","sources":["common"],"when":{{when}}}""";

    private static string Put(string said) =>
        said.Replace("A", Numbers.Above100, StringComparison.Ordinal)
            .Replace("B", """{"input":"pale","is":true}""", StringComparison.Ordinal)
            .Replace("C", Numbers.Above90, StringComparison.Ordinal);

    private static class Numbers
    {
        public const string Above90 = """{"input":"heartRate","above":90}""";

        public const string Above100 = """{"input":"heartRate","above":100}""";

        public const string Above110 = """{"input":"heartRate","above":110}""";
    }
}
