using System.Text.Json.Nodes;
using CsCheck;

namespace Farhold.Tests;

/// <summary>JSON texts that differ from a good one in one place.</summary>
internal static class JsonMutations
{
    /// <summary>One value somewhere in the file taken out, put twice, or made another.</summary>
    public static Gen<string> Of(string text) =>
        Gen.Select(Gen.Int[0, 100_000], Gen.Int[0, 7])
            .Select(
                (place, how) =>
                {
                    var root = JsonNode.Parse(text)!;
                    var all = Below(root).ToArray();
                    var node = all[place % all.Length];
                    JsonNode? other = how switch
                    {
                        0 => JsonValue.Create(7),
                        1 => JsonValue.Create("PT20M"),
                        2 => JsonValue.Create("words"),
                        3 => JsonValue.Create(false),
                        4 => new JsonArray(),
                        5 => all[(place / 7) % all.Length].DeepClone(),
                        _ => null,
                    };
                    if (node.Parent is JsonObject parent)
                    {
                        if (how >= 6)
                            parent.Remove(node.GetPropertyName());
                        else
                            parent[node.GetPropertyName()] = other;
                    }
                    else if (node.Parent is JsonArray list)
                    {
                        if (how >= 6)
                            list.RemoveAt(node.GetElementIndex());
                        else
                            list[node.GetElementIndex()] = other;
                    }

                    return root.ToJsonString();
                }
            );

    private static IEnumerable<JsonNode> Below(JsonNode node) =>
        node switch
        {
            JsonObject o => o.Select(m => m.Value).OfType<JsonNode>().SelectMany(v => Below(v).Prepend(v)),
            JsonArray a => a.OfType<JsonNode>().SelectMany(v => Below(v).Prepend(v)),
            _ => [],
        };
}
