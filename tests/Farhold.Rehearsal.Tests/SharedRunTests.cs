using System.Text;
using CsCheck;

namespace Farhold.Rehearsal.Tests;

/// <summary>Two phones step the same casualty, and only what was asked and logged crosses between them.</summary>
public class SharedRunTests
{
    public static TheoryData<string> All => [.. Shipped.Names];

    [Theory, MemberData(nameof(All))]
    public void Of_a_run_in_few_words_the_same_truth_and_record_come_to_the_last_bit(string name)
    {
        var session = Shipped.Run(name);
        var text = SharedRun.Write(session);
        var run = Taken(text);
        var again = run.Again(Shipped.Scenario(name));
        Assert.Equal(TruthFile.Write(session.Truth), TruthFile.Write(again.Truth));
        Assert.Equal(run.Of.Truth, SharedRun.HashOf(again));
        Assert.Equal(session.Record.Select(e => e.Json.ToString()), again.Record.Select(e => e.Json.ToString()));
        Assert.Equal(session.EndedBy, again.EndedBy);
        // No key frame, draw or look of the model's crosses.
        Assert.InRange(text.Length, 300, TruthFile.Write(session.Truth).Length / 2);
        Assert.DoesNotContain("\"key\"", text, StringComparison.Ordinal);
    }

    /// <summary>A run that is not over is as far on the other phone as on this one, and in pieces it comes to the same.</summary>
    [Theory]
    [InlineData(45.5)]
    [InlineData(1_000)]
    [InlineData(2_500.5)]
    public void A_run_that_goes_on_is_as_far_there_as_here(double until)
    {
        var session = new RehearsalSession(Shipped.Scenario("bled-after-a-move"), 77);
        session.AdvanceTo(10);
        session.Look(LookKind.Pulse, by: "Bo");
        session.InjectNow(session.Scenario.Injects[0].Id);
        session.AdvanceTo(30);
        session.Log(new Payload.WoundPacked("w1", PackingMaterial.PlainGauze));
        session.Show(new(HeartRate: 141));
        session.AdvanceTo(until);
        session.Do(new(new Act.Press("w1"), 3));
        var run = Taken(SharedRun.Write(session));
        var again = run.InPieces(Shipped.Scenario("bled-after-a-move"), 7).Last();
        Assert.Equal((session.Time, session.IsOver), (again.Time, again.IsOver));
        Assert.Equal(TruthFile.Write(session.Truth), TruthFile.Write(again.Truth));
    }

    [Fact]
    public void Another_scenario_and_another_version_of_it_are_told_apart()
    {
        var run = Taken(SharedRun.Write(Shipped.Run("needless")));
        Assert.Null(run.Objection(Shipped.Scenario("needless"), "r"));
        Assert.Contains("not at hand", run.Objection(null, "r")!.Reason, StringComparison.Ordinal);
        var changed = Shipped.Scenario("needless") with { Hash = new('0', 64) };
        Assert.Contains("another version", run.Objection(changed, "r")!.Reason, StringComparison.Ordinal);
    }

    /// <summary>One act otherwise, and the hash of the truth says so.</summary>
    [Fact]
    public void What_was_changed_on_the_way_comes_to_another_truth()
    {
        var text = SharedRun.Write(Shipped.Run("needless"));
        var changed = text.Replace("\"act\":\"dress\"", "\"act\":\"release\"", StringComparison.Ordinal);
        Assert.NotEqual(text, changed);
        var run = Taken(changed);
        Assert.NotEqual(run.Of.Truth, SharedRun.HashOf(run.Again(Shipped.Scenario("needless"))));
    }

    [Theory]
    [InlineData("", 1, "no line")]
    [InlineData("{\"at\":1,\"asked\":{\"act\":\"move\"}}", 1, "begins with its head")]
    [InlineData("HEAD\n{\"at\":5,\"asked\":{\"act\":\"move\"}}\n{\"at\":4,\"asked\":{\"act\":\"move\"}}", 3, "earlier")]
    [InlineData("HEAD\n{\"at\":900,\"asked\":{\"act\":\"move\"}}", 2, "later than the run came")]
    [InlineData("HEAD\n{\"at\":5,\"entry\":{\"kind\":\"note\"}}", 2, "id")]
    [InlineData("HEAD\n{\"at\":5,\"draw\":\"x\",\"value\":1}", 2, "asked or an entry")]
    [InlineData("HEAD\nHEAD", 2, "second head")]
    public void What_is_no_run_is_refused_with_its_line(string text, int line, string why)
    {
        const string head =
            """{"run":1,"scenario":"x","scenarioSha256":"a","model":1,"seed":3,"until":600,"over":false,"truthSha256":"b"}""";
        var read = SharedRun.Read(Encoding.UTF8.GetBytes(text.Replace("HEAD", head, StringComparison.Ordinal)), "r");
        var refusal = ((Read<SharedRun>.Refused)read).Refusals[0];
        Assert.Equal(line, refusal.Line);
        Assert.Contains(why, refusal.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Whatever_comes_in_its_place_is_a_run_or_is_refused() =>
        Gen.Select(Gen.Int[0, 3_000], Gen.Byte)
            .Sample(
                (at, with) =>
                {
                    var bytes = Encoding.UTF8.GetBytes(SharedRun.Write(Short.Value));
                    bytes[at % bytes.Length] = with;
                    return SharedRun.Read(bytes, "r") is Read<SharedRun>.Usable or Read<SharedRun>.Refused { Refusals.Length: > 0 };
                },
                iter: 300
            );

    private static readonly Lazy<RehearsalSession> Short = new(() => Shipped.Run("needless"));

    private static SharedRun Taken(string text) => Shipped.Usable(SharedRun.Read(Encoding.UTF8.GetBytes(text), "r"));
}
