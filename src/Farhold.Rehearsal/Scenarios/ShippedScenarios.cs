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

    /// <summary>The text of a scenario's file, for an author who begins with it; null where none of that id ships.</summary>
    public static string? TextOf(string id) => EasyToCruel.Contains(id) ? System.Text.Encoding.UTF8.GetString(Bytes(Name(id))) : null;

    private static string Name(string id) => id + ".scenario.json";

    private static byte[] Bytes(string name)
    {
        using var stream = typeof(ShippedScenarios).Assembly.GetManifestResourceStream(name)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static Scenario Load(string id)
    {
        var name = Name(id);
        return ScenarioReader.Read(Bytes(name), name) switch
        {
            Read<Scenario>.Usable usable => usable.Value,
            Read<Scenario>.Refused refused => throw new InvalidDataException(string.Join("; ", refused.Refusals)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
