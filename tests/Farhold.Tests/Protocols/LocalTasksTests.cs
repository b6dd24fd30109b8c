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
        Assert.Equal(
            [
                HutsBook,
                "added the task hut.tea: Warm tea. For the casualty. Every 2 h 00 min. Done by signs.taken, saying so. Source: hut.",
            ],
            laid.Local!.Changes
        );
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
        Assert.StartsWith(
            "the task signs is changed: Signs more often.",
            Assert.Single(laid.Local!.Changes.Except([HutsBook])),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("\"every\":\"PT1H\",\"unstable\":\"PT16M\"")]
    [InlineData("\"every\":\"PT1H\"")]
    [InlineData("\"unstable\":\"PT15M\"")]
    [InlineData("\"every\":\"PT30M\",\"unstable\":\"PT16M\"")]
    public void Less_often_is_a_loosening_and_told(string every)
    {
        var text = With("tasks", Of("signs", "Signs.", every));
        Assert.StartsWith("the task signs is changed: Signs.", Assert.Single(Accepted(text).Local!.Loosened), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"scope\":\"casualty\"", "\"scope\":\"limb\"")]
    [InlineData("[\"signs.taken\"]", "[\"signs.taken\",\"note\"]")]
    [InlineData("[\"signs.taken\"]", "[]")]
    public void What_counts_as_done_is_not_changed_without_being_told_as_a_loosening(string find, string put) =>
        Assert.StartsWith(
            "the task signs is changed",
            Assert.Single(
                Accepted(
                    With(
                        "tasks",
                        Of("signs", "Signs.", "\"every\":\"PT1H\",\"unstable\":\"PT15M\"").Replace(find, put, StringComparison.Ordinal)
                    )
                ).Local!.Loosened
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void Other_words_for_the_same_task_are_told()
    {
        var local = Accepted(With("tasks", Of("signs", "Look at her.", "\"every\":\"PT1H\",\"unstable\":\"PT15M\""))).Local!;
        Assert.StartsWith(
            "the task signs is reworded: Look at her.",
            Assert.Single(local.Changes.Except([HutsBook])),
            StringComparison.Ordinal
        );
        var same = Of("signs", Signs.Text, "\"every\":\"PT1H\",\"unstable\":\"PT15M\"");
        Assert.StartsWith(
            $"the task signs is reworded: {Signs.Text}",
            Assert.Single(Accepted(With("tasks", same)).Local!.Changes.Except([HutsBook])),
            StringComparison.Ordinal
        ); // another source
        Assert.Equal(
            [HutsBook],
            Accepted(With("tasks", same.Replace("\"hut\"", "\"JTS-crush\"", StringComparison.Ordinal))).Local!.Changes
        );
    }

    [Fact]
    public void Words_for_a_child_that_are_not_given_stay_and_are_told()
    {
        var drink = Of("drink", "Offer tea.", "\"every\":\"PT2H\"").Replace("signs.taken", "fluid.given", StringComparison.Ordinal);
        var kept = Accepted(With("tasks", drink));
        Assert.Equal("the task drink keeps its words for a child: Offer a drink in small sips: {drink}.", kept.Local!.Changes[^1]);

        var given = Accepted(
            With("tasks", drink.Replace("\"sources\"", "\"child\":{\"text\":\"Tea: {drink}.\"},\"sources\"", StringComparison.Ordinal))
        );
        Assert.Equal(
            new ChildWords("Tea: {drink}.", "A child's need for water goes by mass."),
            given.Tasks.Single(t => t.Id == "drink").Child
        );
        Assert.DoesNotContain(given.Local!.Changes, c => c.Contains("keeps its words", StringComparison.Ordinal));
    }

    [Fact]
    public void A_dropped_task_is_gone()
    {
        var laid = Accepted(With("tasks", """{"id":"signs","drop":true}""")[..^1] + Authorised + "}");
        Assert.DoesNotContain(laid.Tasks, t => t.Id == "signs");
        Assert.Equal(ShippedProtocol.Protocol.Tasks.Length - 1, laid.Tasks.Length);
        Assert.Equal([HutsBook, .. laid.Local!.Loosened], laid.Local.Changes);
        Assert.StartsWith("the task signs is dropped: Take the signs again", Assert.Single(laid.Local.Loosened), StringComparison.Ordinal);
    }

    /// <summary>JTS combat medic module: after every movement of the casualty.</summary>
    [Fact]
    public void What_is_due_after_every_move_stays_so_under_a_local_protocol()
    {
        var mine = Of("tourniquet", "Look at it.", "\"every\":\"PT30M\",\"unstable\":\"PT10M\"")
            .Replace("casualty", "limb", StringComparison.Ordinal)
            .Replace("[\"signs.taken\"]", "[\"bleeding.checked\",\"tourniquet.tightened\"]", StringComparison.Ordinal);
        var shipped = ShippedProtocol.Protocol.Tasks.Single(t => t.Id == "tourniquet").AfterMove;
        Assert.NotNull(shipped);
        var task = Accepted(With("tasks", mine)).Tasks.Single(t => t.Id == "tourniquet");
        Assert.Equal(("Look at it.", shipped), (task.Text, task.AfterMove));
    }

    [Fact]
    public void A_task_done_once_does_not_come_back_after_a_move() =>
        Assert.Contains(
            Refused(
                With(
                    "tasks",
                    Of("hut.once", "Once.", "\"once\":\"PT1H\",\"afterMove\":\"Again.\"")
                        .Replace("casualty", "limb", StringComparison.Ordinal)
                )[..^1]
                    + Authorised
                    + "}"
            ),
            r => r.Reason.Contains("afterMove goes with every or unstable", StringComparison.Ordinal)
        );

    [Fact]
    public void No_signature_lets_a_task_wait_longer_than_its_source_allows() =>
        Assert.Contains(
            Refused(With("tasks", Of("signs", "Signs.", "\"every\":\"PT61M\",\"unstable\":\"PT15M\""))[..^1] + Authorised + "}"),
            r => r.Reason.Contains("every is longer than atMost", StringComparison.Ordinal)
        );

    [Theory]
    [InlineData("tasks", """{"id":"nap","drop":true}""", "there is no task nap to drop")]
    [InlineData("tasks", """{"id":"tourniquet","drop":true}""", "due after every move: no local protocol drops it")]
    [InlineData("tasks", """{"id":"pulse-beyond","drop":true}""", "due after every move: no local protocol drops it")]
    [InlineData("tasks", """{"id":"signs","drop":true,"mood":1}""", "mood is not known here")]
    [InlineData("criteria", """{"id":"help.soon","drop":true,"mood":1}""", "mood is not known here")]
    [InlineData("criteria", """{"id":"x","role":"forbids","text":"X.","sources":["nobody"],"when":{"input":"pale","is":true}}""", "nobody")]
    public void What_can_not_be_is_refused(string part, string item, string reason) =>
        Assert.Contains(Refused(With(part, item)[..^1] + Authorised + "}"), r => r.Reason.Contains(reason, StringComparison.Ordinal));

    [Fact]
    public void An_authority_has_a_name_a_role_and_a_date_and_nothing_else() =>
        Assert.Contains(
            Refused(
                Head
                    + ",\"clock\":{\"limit\":\"PT4H\"}"
                    + Authorised.Replace("\"date\"", "\"mood\":1,\"date\"", StringComparison.Ordinal)
                    + "}"
            ),
            r => r.Reason.Contains("mood is not known here", StringComparison.Ordinal)
        );

    [Fact]
    public void Nobody_lets_the_watch_be_less_and_other_words_for_it_are_told()
    {
        const string Less = """
            "watch":{"text":"Look.","periods":[{"every":"PT1H"}],"sources":["hut"]}
            """;
        Assert.Contains(
            "can't be loosened, whoever signs",
            Assert.Single(Refused($"{Head},{Less}{Authorised}}}")).Reason,
            StringComparison.Ordinal
        );
        const string Same = """
            "watch":{"text":"Look.","periods":[{"until":"PT15M"},{"until":"PT1H","every":"PT2M"},{"until":"PT2H","every":"PT15M"},{"every":"PT1H"}],"sources":["hut"]}
            """;
        Assert.StartsWith(
            "the watch after slackening is reworded: Look. Up to 15 min: without a break.",
            Assert.Single(Accepted($"{Head},{Same}}}").Local!.Changes.Except([HutsBook])),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("0.6", true)]
    [InlineData("0.99", true)]
    [InlineData("0.599", false)]
    [InlineData("0.991", false)]
    public void A_share_of_forecasts_has_bounds_on_both_sides(string share, bool read) =>
        Assert.Equal(read, Read($"{Head},\"clock\":{{\"soonProbability\":{share}}}{Authorised}}}") is Read<Protocol>.Usable);

    [Fact]
    public void The_window_may_be_as_long_as_the_limit() =>
        Assert.Equal(
            Duration.FromHours(3),
            Accepted(Head + ",\"clock\":{\"window\":\"PT3H\",\"limit\":\"PT3H\"}" + Authorised + "}").Clock.Window
        );

    [Fact]
    public void The_time_limit_may_stand_beside_another_reason() =>
        Assert.Equal(
            "L.",
            Accepted(
                With(
                    "criteria",
                    """{"id":"limit.time","role":"forbids","hard":true,"stops":true,"text":"L.","sources":["hut"],"when":{"any":[{"input":"timeOn","atLeast":"PT6H"},{"input":"dizzy","is":true}]}}"""
                )[..^1]
                    + Authorised
                    + "}"
            )
                .Criteria.Single(c => c.Id == "limit.time")
                .Text
        );

    private static string With(string part, string item) => $"{Head},\"{part}\":[{item}]}}";

    private static string Of(string id, string text, string every) =>
        Task.Replace("ID", id, StringComparison.Ordinal)
            .Replace("TEXT", text, StringComparison.Ordinal)
            .Replace("\"EVERY\"", every, StringComparison.Ordinal);
}
