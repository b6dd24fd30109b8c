using System.Collections.Immutable;
using System.Text;
using CsCheck;

namespace Farhold.Tests;

public static partial class Gens
{
    /// <summary>
    /// Inputs that someone looks at. What is derived from the record and always known (attempts, permission since a failed
    /// one) is left out: it stands on its worse side by itself, and only a protocol that asks for it the wrong way round could tell.
    /// </summary>
    public static readonly ImmutableArray<Input> LookedAt =
    [
        .. Input.All.Except([
            Input.LastAttempt,
            Input.FailedAttempts,
            Input.SinceFailedAttempt,
            Input.FurtherAttemptAllowed,
            Input.TimeOn,
            Input.CanFinish,
            Input.TourniquetTight,
            Input.SoftSigns,
            Input.SoftSignStays,
            Input.ClearLooks,
            Input.RateSilent,
            Input.AdviceRefuses,
            Input.NobodyReached,
            Input.HelpSoon,
            Input.OtherLimbFirst,
            Input.WatchAlone,
        ]),
    ];

    public static readonly Gen<Condition> Condition = Gen.Recursive<Condition>(
        (depth, again) =>
            depth > 3
                ? Leaf()
                : Gen.Frequency(
                    (3, Leaf()),
                    (1, again.Array[1, 3].Select(parts => (Condition)new Condition.All([.. parts]))),
                    (1, again.Array[1, 3].Select(parts => (Condition)new Condition.Any([.. parts]))),
                    (1, again.Select(part => (Condition)new Condition.Not(part)))
                )
    );

    /// <summary>The shipped protocol, and protocols with other limits, other freshness, and conditions of any form added to it.</summary>
    public static readonly Gen<Protocol> Protocol = Gen.Frequency(
        (1, Gen.Const(ShippedProtocol.Protocol)),
        (
            2,
            Gen.Select(
                Gen.Int[5, 120],
                Gen.Int[0, 240],
                Gen.Int[10, 240],
                Gen.Int[1, 90],
                Criterion().Array[0, 3],
                (window, more, soon, fresh, added) => Changed(ShippedProtocol.Protocol, window, window + more, soon, fresh, added)
            )
        )
    );

    private static Protocol Changed(Protocol p, int window, int limit, int soon, int fresh, Criterion[] added)
    {
        var clock = new ClockLimits(Duration.FromMinutes(window), Duration.FromMinutes(limit), Duration.FromMinutes(soon));
        return p with
        {
            Clock = clock,
            Freshness = p.Freshness.ToImmutableSortedDictionary(f => f.Key, _ => Duration.FromMinutes(fresh), StringComparer.Ordinal),
            Criteria = [.. p.Criteria.Select(c => c with { Condition = Reclocked(c.Condition, clock) }), .. added],
        };
    }

    private static Condition Reclocked(Condition condition, ClockLimits clock) =>
        condition switch
        {
            Condition.All all => new Condition.All([.. all.Parts.Select(p => Reclocked(p, clock))]),
            Condition.Any any => new Condition.Any([.. any.Parts.Select(p => Reclocked(p, clock))]),
            Condition.Compare { Clock: "window" } c => c with { Limit = clock.Window.TotalSeconds },
            Condition.Compare { Clock: "limit" } c => c with { Limit = clock.Limit.TotalSeconds },
            Condition.Compare { Clock: "soon" } c => c with { Limit = clock.Soon.TotalSeconds },
            _ => condition,
        };

    private static Gen<Criterion> Criterion() =>
        Gen.Select(
                Gen.Int[0, 999_999],
                Any<Role>(),
                Condition,
                Gen.Bool,
                (id, role, condition, shock) =>
                    new Criterion($"added.{id}", role, shock ? "shock" : null, false, "added", ["design"], condition)
            )
            .Select(c => c is { Role: Role.Soft, AsksOfSigns: false } ? c with { Role = Role.Asks } : c);

    private static Gen<Condition> Leaf() =>
        Gen.Select(
            Gen.OneOf(LookedAt.ToArray()),
            Gen.Int[0, 400],
            Any<Comparison>(),
            Gen.Int[1, 7],
            Gen.Bool,
            (input, number, comparison, mask, banded) =>
                input.Type switch
                {
                    InputType.Number => new Condition.Compare(
                        input,
                        Compared(comparison),
                        number,
                        null,
                        banded ? [new(0, 12, number / 2.0), new(12, 40, number + 5)] : []
                    ),
                    InputType.Duration => new Condition.Compare(input, Compared(comparison), number * 60, null, []),
                    _ => (Condition)new Condition.OneOf(input, [.. input.Words.Where((_, i) => (mask & (1 << (i % 3))) != 0)]),
                }
        );

    private static Comparison Compared(Comparison comparison) => comparison == Comparison.In ? Comparison.Above : comparison;

    /// <summary>What a service says of itself, each as a member with the comma before it.</summary>
    private static readonly string[] Said =
    [
        ""","mayAllow":[{"role":"duty physician","allows":["attempt"]},{"role":"team leader","allows":["late","shock.dizzy"]}]""",
        ""","contacts":[{"name":"Hut","role":"team leader","ways":[{"by":"phone","number":"0101"}]}]""",
        ""","emergency":[{"name":"Centre","number":"0112"}]""",
        ""","names":{"plain-gauze":"Flat pack","paracetamol":"White strip"}""",
        ""","words":{"terms":{"litter":"sledge"},"tasks":{"help":"Ask the hut"} }""",
    ];

    /// <summary>Local protocols over the shipped one: some tighten, some loosen, some name an authority, some are refused.</summary>
    public static readonly Gen<ReadOnlyMemory<byte>> Overlay = Gen.Select(
        Gen.Select(Gen.Int[1, 10], Gen.Int[1, 10], Gen.Int[1, 6], Gen.Int[0, 7]),
        Gen.Select(Gen.OneOf(Input.All.Where(i => i.Expires).Select(i => i.Name).ToArray()), Gen.Int[1, 40]).Array[0, 2],
        Edit().Array[0, 3],
        Gen.Frequency((4, Gen.Const(false)), (1, Gen.Const(true))),
        Gen.OneOf(Said).Array[0, 2],
        (clock, fresh, edits, signed, said) =>
        {
            var text = new StringBuilder(
                """{"local":"hut","version":"1","title":"Of the hut","over":"farhold-base","sources":{"hut":{"title":"The hut's book","known":"local"}}"""
            );
            text.Append(
                System.Globalization.CultureInfo.InvariantCulture,
                $$"""
                ,"clock":{{{string.Join(
                    ',',
                    new[]
                    {
                        $"\"window\":\"PT{clock.Item1 * 20}M\"",
                        $"\"limit\":\"PT{clock.Item2}H\"",
                        $"\"soon\":\"PT{clock.Item3}H\"",
                    }.Where((_, i) => (clock.Item4 & (1 << i)) != 0)
                )}}}
                """
            );
            text.Append(
                System.Globalization.CultureInfo.InvariantCulture,
                $$"""
                ,"freshness":{{{string.Join(',', fresh.DistinctBy(f => f.Item1).Select(f => $"\"{f.Item1}\":\"PT{f.Item2 * 5}M\""))}}}
                """
            );
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $""","criteria":[{string.Join(',', edits)}]""");
            text.AppendJoin("", said.Distinct());
            if (signed)
                text.Append(""","authority":{"name":"Dr Vigdis Holm","role":"medical lead","date":"2031-01-10"}""");
            return (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(text.Append('}').ToString());
        }
    );

    /// <summary>Local protocols that only touch numbers, as one without a signature may; many go too far.</summary>
    public static readonly Gen<ReadOnlyMemory<byte>> Numbers = Gen.Select(
        Gen.Select(Gen.Int[2, 10], Gen.Int[2, 8], Gen.Int[2, 7], Gen.Int[0, 7]),
        Gen.Select(Gen.OneOf(Input.All.Where(i => i.Expires).Select(i => i.Name).ToArray()), Gen.Int[1, 6]).Array[0, 2],
        (clock, fresh) =>
            (ReadOnlyMemory<byte>)
                Encoding.UTF8.GetBytes(
                    $$"""
                    {"local":"hut","version":"1","over":"farhold-base",
                     "clock":{{{string.Join(
                        ',',
                        new[]
                        {
                            $"\"window\":\"PT{clock.Item1 * 20}M\"",
                            $"\"limit\":\"PT{clock.Item2}H\"",
                            $"\"soon\":\"PT{clock.Item3}H\"",
                        }.Where((_, i) => (clock.Item4 & (1 << i)) != 0)
                    )}}},
                     "freshness":{{{string.Join(
                        ',',
                        fresh.DistinctBy(f => f.Item1).Select(f => $"\"{f.Item1}\":\"PT{f.Item2 * 10}M\"")
                    )}}} }
                    """
                )
    );

    private static Gen<string> Edit() =>
        Gen.OneOf(
            Gen.Int[60, 160]
                .Select(n =>
                    Criterion(
                        "shock.heart-rate",
                        "forbids",
                        "shock",
                        true,
                        $$"""{"input":"heartRate","above":{{n}},"byAge":[{"from":0,"under":1,"limit":180},{"from":1,"under":3,"limit":140},{"from":3,"under":6,"limit":120},{"from":6,"under":12,"limit":118},{"from":12,"under":16,"limit":100}]}"""
                    )
                ),
            Gen.Int[60, 160]
                .Select(n => Criterion("shock.heart-rate", "forbids", "shock", true, $$"""{"input":"heartRate","above":{{n}}}""")),
            Gen.Int[10, 40].Select(n => Criterion("hut.cool", "forbids", "shock", false, $$"""{"input":"temperatureC","below":{{n}}}""")),
            Gen.Int[1, 10]
                .Select(n => Criterion("limit.time", "forbids", null, true, $$"""{"input":"sinceFirstTightened","atLeast":"PT{{n}}H"}""")),
            Gen.Int[1, 10]
                .Select(n =>
                    Criterion(
                        "limit.time",
                        "forbids",
                        null,
                        true,
                        $$"""{"any":[{"input":"sinceFirstTightened","atLeast":"limit"},{"input":"occluded","above":"PT{{n}}H"}]}"""
                    )
                ),
            Gen.OneOf("confused", "voice", "alert")
                .Select(w =>
                    Criterion(
                        "shock.mental",
                        "forbids",
                        "shock",
                        true,
                        $$"""{"input":"mental","in":["confused","voice","pain","unresponsive","{{w}}"]}"""
                            .Replace(",\"confused\"]", "]", StringComparison.Ordinal)
                            .Replace(",\"voice\"]", "]", StringComparison.Ordinal)
                    )
                ),
            Gen.OneOf("oozing", "none")
                .Select(w => Criterion("bleeding.active", "forbids", null, true, $$"""{"input":"bleeding","in":["active","{{w}}"]}""")),
            Gen.Const(
                Criterion(
                    "watch.able",
                    "requires",
                    null,
                    true,
                    """{"any":[{"input":"watchAble","is":true},{"input":"dizzy","is":false}]}"""
                )
            ),
            Gen.Const(Criterion("late.oversight", "requires", null, false, """{"input":"oversight","is":true}""")),
            Gen.Int[1, 9].Select(n => Criterion("help.soon", "awaits", null, false, $$"""{"input":"helpWithin","atMost":"PT{{n}}H"}""")),
            Gen.OneOf("shock.pale", "shock.cool", "materials.dressing", "wound.amputation", "help.soon", "nothing")
                .Select(id => $$"""{"id":"{{id}}","drop":true}""")
        );

    private static string Criterion(string id, string role, string? group, bool hard, string when) =>
        $$"""{"id":"{{id}}","role":"{{role}}",{{(group is null ? "" : $"\"group\":\"{group}\",")}}"hard":{{(hard ? "true" : "false")}},"text":"Changed here.","sources":["hut"],"when":{{when}}}""";
}
