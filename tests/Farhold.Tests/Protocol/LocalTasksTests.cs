using static Farhold.Tests.Protocols.LocalFile;

namespace Farhold.Tests.Protocols;

/// <summary>Tasks, watch, steps and words that a local protocol changes.</summary>
public class LocalTasksTests
{
    private const string Task = """{"id":"ID","scope":"casualty","text":"TEXT","EVERY","doneBy":["signs.taken"],"sources":["hut"]}""";

    private static readonly CareTask Signs = ShippedProtocol.Protocol.Tasks.Single(t => t.Id == "signs");

    [Fact]
    public void A_task_beside_the_others_tightens()
    {
        var laid = Accepted(With("tasks", Of("hut.tea", "Warm tea.", "\"every\":\"PT2H\"")));
        Assert.Equal(ShippedProtocol.Protocol.Tasks.Length + 1, laid.Tasks.Length);
        Assert.Equal("Warm tea.", laid.Tasks[^1].Text);
        Assert.Equal(["added the task hut.tea: Warm tea."], laid.Local!.Changes);
        Assert.Empty(laid.Local.Loosened);
    }

    [Fact]
    public void The_first_task_can_be_changed_and_stays_first()
    {
        var first = ShippedProtocol.Protocol.Tasks[0];
        Assert.Equal("signs", first.Id);
        var laid = Accepted(With("tasks", Of("signs", "Signs more often.", "\"every\":\"PT30M\",\"unstable\":\"PT10M\"")));
        Assert.Equal(("signs", Duration.FromMinutes(30)), (laid.Tasks[0].Id, laid.Tasks[0].Every));
        Assert.Equal(ShippedProtocol.Protocol.Tasks.Length, laid.Tasks.Length);
        Assert.Equal(["the task signs is changed: Signs more often."], laid.Local!.Changes);
    }

    [Theory]
    [InlineData("\"every\":\"PT1H\",\"unstable\":\"PT16M\"")]
    [InlineData("\"every\":\"PT1H\"")]
    [InlineData("\"unstable\":\"PT15M\"")]
    [InlineData("\"every\":\"PT30M\",\"unstable\":\"PT16M\"")]
    public void Less_often_needs_a_signature_and_is_no_hard_limit(string every)
    {
        var text = With("tasks", Of("signs", "Signs.", every));
        Assert.Contains("needs a named authority: the task signs is changed: Signs.", Assert.Single(Refused(text)).Reason, StringComparison.Ordinal);
        Assert.Empty(Accepted(text[..^1] + Signed + "}").Local!.Loosened);
    }

    [Theory]
    [InlineData("\"scope\":\"casualty\"", "\"scope\":\"limb\"")]
    [InlineData("[\"signs.taken\"]", "[\"signs.taken\",\"note\"]")]
    [InlineData("[\"signs.taken\"]", "[]")]
    public void What_counts_as_done_is_not_changed_without_a_signature(string find, string put) => Assert.Contains(
        "needs a named authority",
        Assert.Single(Refused(With("tasks", Of("signs", "Signs.", "\"every\":\"PT1H\",\"unstable\":\"PT15M\"").Replace(find, put, StringComparison.Ordinal)))).Reason,
        StringComparison.Ordinal);

    [Fact]
    public void Other_words_for_the_same_task_are_told_and_need_none()
    {
        var local = Accepted(With("tasks", Of("signs", "Look at her.", "\"every\":\"PT1H\",\"unstable\":\"PT15M\""))).Local!;
        Assert.StartsWith("the task signs is reworded: Look at her.", Assert.Single(local.Changes), StringComparison.Ordinal);
        var same = Of("signs", Signs.Text, "\"every\":\"PT1H\",\"unstable\":\"PT15M\"");
        Assert.StartsWith($"the task signs is reworded: {Signs.Text}", Assert.Single(Accepted(With("tasks", same)).Local!.Changes), StringComparison.Ordinal); // another source
        Assert.Empty(Accepted(With("tasks", same.Replace("\"hut\"", "\"JTS-crush\"", StringComparison.Ordinal))).Local!.Changes);
    }

    [Fact]
    public void Words_for_a_child_that_are_not_given_stay_and_are_told()
    {
        var drink = Of("drink", "Offer tea.", "\"every\":\"PT2H\"").Replace("signs.taken", "fluid.given", StringComparison.Ordinal);
        var kept = Accepted(With("tasks", drink));
        Assert.Equal("the task drink keeps its words for a child: Offer a drink in small sips: {drink}.", kept.Local!.Changes[^1]);

        var given = Accepted(With("tasks", drink.Replace("\"sources\"", "\"child\":{\"text\":\"Tea: {drink}.\"},\"sources\"", StringComparison.Ordinal)));
        Assert.Equal(new ChildWords("Tea: {drink}.", "A child's need for water goes by mass."), given.Tasks.Single(t => t.Id == "drink").Child);
        Assert.DoesNotContain(given.Local!.Changes, c => c.Contains("keeps its words", StringComparison.Ordinal));
    }

    [Fact]
    public void A_dropped_task_is_gone()
    {
        var laid = Accepted(With("tasks", """{"id":"signs","drop":true}""")[..^1] + Signed + "}");
        Assert.DoesNotContain(laid.Tasks, t => t.Id == "signs");
        Assert.Equal(ShippedProtocol.Protocol.Tasks.Length - 1, laid.Tasks.Length);
        Assert.Equal(["the task signs is dropped"], laid.Local!.Changes);
        Assert.Equal(["the task signs is dropped"], laid.Local.Loosened); // its source says how long it may wait at most
        Assert.Empty(Accepted(With("tasks", """{"id":"help","drop":true}""")[..^1] + Signed + "}").Local!.Loosened);
    }

    [Fact]
    public void No_signature_lets_a_task_wait_longer_than_its_source_allows() => Assert.Contains(
        Refused(With("tasks", Of("signs", "Signs.", "\"every\":\"PT61M\",\"unstable\":\"PT15M\""))[..^1] + Signed + "}"),
        r => r.Reason.Contains("every is longer than atMost", StringComparison.Ordinal));

    [Theory]
    [InlineData("tasks", """{"id":"nap","drop":true}""", "there is no task nap to drop")]
    [InlineData("tasks", """{"id":"signs","drop":true,"mood":1}""", "mood is not known here")]
    [InlineData("criteria", """{"id":"help.soon","drop":true,"mood":1}""", "mood is not known here")]
    [InlineData("criteria", """{"id":"x","role":"forbids","text":"X.","sources":["nobody"],"when":{"input":"pale","is":true}}""", "nobody")]
    public void What_can_not_be_is_refused(string part, string item, string reason) =>
        Assert.Contains(Refused(With(part, item)[..^1] + Signed + "}"), r => r.Reason.Contains(reason, StringComparison.Ordinal));

    [Fact]
    public void An_authority_has_a_name_a_role_and_a_date_and_nothing_else() => Assert.Contains(
        Refused(Head + ",\"clock\":{\"limit\":\"PT4H\"}" + Signed.Replace("\"date\"", "\"mood\":1,\"date\"", StringComparison.Ordinal) + "}"),
        r => r.Reason.Contains("mood is not known here", StringComparison.Ordinal));

    [Fact]
    public void Watching_less_is_no_hard_limit_and_other_words_for_the_watch_are_told()
    {
        const string Less = """
            "watch":{"text":"Look.","periods":[{"every":"PT1H"}],"sources":["hut"]}
            """;
        Assert.Empty(Accepted($"{Head},{Less}{Signed}}}").Local!.Loosened);
        const string Same = """
            "watch":{"text":"Look.","periods":[{"until":"PT15M"},{"until":"PT1H","every":"PT2M"},{"until":"PT2H","every":"PT15M"},{"every":"PT1H"}],"sources":["hut"]}
            """;
        Assert.Equal(["the watch after slackening is reworded: Look."], Accepted($"{Head},{Same}}}").Local!.Changes);
    }

    [Theory]
    [InlineData("\"soon\":\"PT1H\"")]
    [InlineData("\"soonProbability\":0.6")]
    public void When_help_counts_as_soon_is_no_hard_limit(string clock) =>
        Assert.Empty(Accepted($"{Head},\"clock\":{{{clock}}}{Signed}}}").Local!.Loosened);

    [Theory]
    [InlineData("0.5", true)]
    [InlineData("0.999", true)]
    [InlineData("0.499", false)]
    [InlineData("0.9991", false)]
    public void A_share_of_forecasts_goes_from_a_half_to_nearly_all(string share, bool read) => Assert.Equal(
        read,
        LocalReader.Read(System.Text.Encoding.UTF8.GetBytes($"{Head},\"clock\":{{\"soonProbability\":{share}}}{Signed}}}"), "hut.json", ShippedProtocol.Protocol) is Read<Protocol>.Usable);

    [Fact]
    public void The_window_may_be_as_long_as_the_limit() =>
        Assert.Equal(Duration.FromHours(4), Accepted(Head + ",\"clock\":{\"window\":\"PT4H\",\"limit\":\"PT4H\"}" + Signed + "}").Clock.Window);

    [Fact]
    public void The_time_limit_may_be_written_as_eight_hours_beside_another_reason() => Assert.Equal(
        "L.",
        Accepted(With("criteria", """{"id":"limit.time","role":"forbids","hard":true,"text":"L.","sources":["hut"],"when":{"any":[{"input":"sinceFirstTightened","atLeast":"PT8H"},{"input":"dizzy","is":true}]}}""")[..^1] + Signed + "}")
            .Criteria.Single(c => c.Id == "limit.time").Text);

    private static string With(string part, string item) => $"{Head},\"{part}\":[{item}]}}";

    private static string Of(string id, string text, string every) => Task
        .Replace("ID", id, StringComparison.Ordinal).Replace("TEXT", text, StringComparison.Ordinal).Replace("\"EVERY\"", every, StringComparison.Ordinal);
}
