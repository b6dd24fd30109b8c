using System.Collections.Immutable;

namespace Farhold.Tests.Verdicts;

/// <summary>
/// The order of what to look at, against counting: every unknown leaf is set to both values in every combination with the
/// others, and an input weighs as often as its leaf alone turns the decision (Birnbaum 1969; Banzhaf index). What asks for
/// something first and is met is a leaf of its own: settled or not.
/// </summary>
public class WeighingTests
{
    [Fact]
    public void The_order_is_that_of_counting_in_how_many_cases_an_answer_decides()
    {
        var random = new Random(20310504);
        var several = 0;
        for (var n = 0; n < 3_000; n++)
        {
            var made = new Made(random);
            var findings = Enumerable.Range(0, random.Next(1, 5)).Select(_ => made.Finding()).ToImmutableArray();
            var counted = Counted(findings, made.Unknown);
            var order = InputWeights.Order(findings);
            Assert.Equal(counted.Keys.Where(i => i.Look.Length > 0).Select(i => i.Name).Order(), order.Select(i => i.Name).Order());
            Assert.Equal(order.Select(i => counted[i]).OrderDescending(), order.Select(i => counted[i]));
            several += counted.Values.Distinct().Count() > 1 ? 1 : 0;
        }

        Assert.True(several > 500, $"too few cases in which the weights differ: {several}");
    }

    [Fact]
    public void Of_equal_weights_the_order_of_the_protocol_stays()
    {
        ImmutableArray<string> names = ["pale", "dizzy", "cool"];
        Assert.Equal(names, InputWeights.Order([.. names.Select(n => Of(Role.Forbids, Leaf(n, Truth.Unknown)))]).Select(i => i.Name));
    }

    [Fact]
    public void One_that_stands_alone_outweighs_one_that_needs_another()
    {
        var both = new Trace(
            new Condition.All([Flag("dizzy"), Flag("pale")]),
            Truth.Unknown,
            [Leaf("dizzy", Truth.Unknown), Leaf("pale", Truth.Unknown)],
            [],
            null
        );
        Assert.Equal("cool", InputWeights.Order([Of(Role.Forbids, both), Of(Role.Forbids, Leaf("cool", Truth.Unknown))])[0].Name);
    }

    [Fact]
    public void What_can_no_longer_decide_is_not_asked_for()
    {
        Assert.Empty(InputWeights.Order([Of(Role.Forbids, Leaf("dizzy", Truth.Met)), Of(Role.Forbids, Leaf("pale", Truth.Unknown))]));
        Assert.Empty(InputWeights.Order([Of(Role.Requires, Leaf("dizzy", Truth.NotMet)), Of(Role.Awaits, Leaf("pale", Truth.Unknown))]));
        Assert.Equal(
            ["pale"],
            InputWeights
                .Order([Of(Role.Requires, Leaf("dizzy", Truth.Met)), Of(Role.Awaits, Leaf("pale", Truth.Unknown))])
                .Select(i => i.Name)
        );
    }

    [Theory]
    [InlineData("rest.trunk", "oversight")] // advice settles it
    [InlineData("shock.soft-sign", "clearLooks")]
    [InlineData("rest.bleeding", "bleedingElsewhere")]
    public void What_asks_for_something_first_is_settled_by_what_lifts_it(string criterion, string asked)
    {
        var met = ShippedProtocol.Protocol.Criteria.Single(c => c.Id == criterion);
        Assert.Equal([asked], InputWeights.Order([new(met, new(met.Condition, Truth.Met, [], [], null))]).Select(i => i.Name));
    }

    [Fact]
    public void A_soft_sign_that_is_there_asks_for_nothing_by_itself_and_one_that_is_not_known_does()
    {
        Assert.Empty(InputWeights.Order([Of(Role.Soft, Leaf("pale", Truth.Met))]));
        Assert.Equal(
            ["dizzy"],
            InputWeights.Order([Of(Role.Soft, Leaf("pale", Truth.Met)), Of(Role.Soft, Leaf("dizzy", Truth.Unknown))]).Select(i => i.Name)
        );
    }

    private static Dictionary<Input, double> Counted(ImmutableArray<Finding> findings, List<Trace> unknown)
    {
        Input[] leaves =
        [
            .. unknown.Select(u => u.Needs!),
            .. findings.Where(AsksFirst).Select(f => Settling(f.Criterion.Condition.Inputs.First())),
        ];
        var cases = 1 << leaves.Length;
        var weights = new Dictionary<Input, double>();
        for (var leaf = 0; leaf < leaves.Length; leaf++)
        {
            var turns = 0;
            for (var set = 0; set < cases; set++)
                if (Decided(findings, unknown, set | (1 << leaf)) != Decided(findings, unknown, set & ~(1 << leaf)))
                    turns++;
            if (turns > 0 && leaves[leaf].Look.Length > 0)
                weights[leaves[leaf]] = weights.GetValueOrDefault(leaves[leaf]) + ((double)turns / cases);
        }

        return weights;
    }

    /// <summary>How many signs there are nobody can look at; the looks settle it.</summary>
    private static Input Settling(Input input) => input == Input.SoftSigns ? Input.ClearLooks : input;

    private static bool AsksFirst(Finding finding) => finding is { Criterion.Role: Role.Asks, State: Truth.Met };

    /// <summary>0: forbidden; 1: help is awaited; 2: an attempt.</summary>
    private static int Decided(ImmutableArray<Finding> findings, List<Trace> unknown, int set)
    {
        bool Met(Trace trace) =>
            trace.Condition switch
            {
                Condition.All => trace.Parts.All(Met),
                Condition.Any => trace.Parts.Any(Met),
                Condition.Not => !Met(trace.Parts[0]),
                _ => trace.State == Truth.Unknown
                    ? (set >> unknown.FindIndex(u => ReferenceEquals(u, trace)) & 1) == 1
                    : trace.State == Truth.Met,
            };
        var asked = unknown.Count;
        foreach (var finding in findings)
            if (
                finding.Criterion.Role switch
                {
                    Role.Requires => !Met(finding.Trace),
                    Role.Forbids => Met(finding.Trace),
                    Role.Asks => AsksFirst(finding) ? (set >> asked++ & 1) == 0 : Met(finding.Trace),
                    Role.Soft => finding.State != Truth.Met && Met(finding.Trace),
                    _ => false,
                }
            )
                return 0;
        return findings.Any(f => f.Criterion.Role == Role.Awaits && Met(f.Trace)) ? 1 : 2;
    }

    private static Condition.OneOf Flag(string name) => new(Input.Named(name, Input.All)!, ["true"]);

    private static Trace Leaf(string name, Truth state) =>
        new(Flag(name), state, [], [], state == Truth.Unknown ? Input.Named(name, Input.All) : null);

    private static Finding Of(Role role, Trace trace) => new(new("x", role, null, false, "X.", ["common"], trace.Condition), trace);

    /// <summary>Findings made at random, of at most eight unknown leaves, each about an input of its own.</summary>
    private sealed class Made(Random random)
    {
        private readonly Queue<Input> inputs = new(Input.All.OrderBy(_ => random.Next()).ToArray());

        public List<Trace> Unknown { get; } = [];

        public Finding Finding() => Of((Role)random.Next(5), Trace(2));

        private Trace Trace(int depth)
        {
            switch (depth == 0 ? 3 : random.Next(5))
            {
                case 0:
                    var all = Parts(depth);
                    return new(
                        new Condition.All([.. all.Select(p => p.Condition)]),
                        all.Aggregate(Truth.Met, (t, p) => t.And(p.State)),
                        all,
                        [],
                        null
                    );
                case 1:
                    var any = Parts(depth);
                    return new(
                        new Condition.Any([.. any.Select(p => p.Condition)]),
                        any.Aggregate(Truth.NotMet, (t, p) => t.Or(p.State)),
                        any,
                        [],
                        null
                    );
                case 2:
                    var part = Trace(depth - 1);
                    return new(new Condition.Not(part.Condition), part.State.Not(), [part], [], null);
                default:
                    return Leaf();
            }
        }

        private ImmutableArray<Trace> Parts(int depth) => [.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => Trace(depth - 1))];

        private Trace Leaf()
        {
            var input = inputs.Dequeue();
            var state = Unknown.Count >= 8 || random.Next(3) == 0 ? (random.Next(2) == 0 ? Truth.Met : Truth.NotMet) : Truth.Unknown;
            var leaf = new Trace(new Condition.OneOf(input, ["x"]), state, [], [], state == Truth.Unknown ? input : null);
            inputs.Enqueue(input);
            if (state == Truth.Unknown)
                Unknown.Add(leaf);
            return leaf;
        }
    }
}
