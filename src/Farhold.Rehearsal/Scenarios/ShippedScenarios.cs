using System.Collections.Immutable;

namespace Farhold.Rehearsal.Scenarios;

/// <summary>The scenarios that come with the app, from easy to cruel.</summary>
public static class ShippedScenarios
{
    /// <summary>The order is a judgement of ours (design). A test holds that none is left out.</summary>
    private static readonly string[] EasyToCruel =
    [
        "held-at-once",
        "needless",
        "child",
        "bled-at-slackening",
        "two-limbs",
        "bled-after-a-move",
        "found-late",
        "cold-and-dark",
        "warning-on-day-two",
    ];

    private static readonly Lazy<ImmutableArray<Scenario>> Read = new(() => [.. EasyToCruel.Select(Load)]);

    public static ImmutableArray<Scenario> All => Read.Value;

    private static Scenario Load(string id)
    {
        var name = id + ".scenario.json";
        using var stream = typeof(ShippedScenarios).Assembly.GetManifestResourceStream(name)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return ScenarioReader.Read(bytes, name) switch
        {
            Read<Scenario>.Usable usable => usable.Value,
            Read<Scenario>.Refused refused => throw new InvalidDataException(string.Join("; ", refused.Refusals)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
