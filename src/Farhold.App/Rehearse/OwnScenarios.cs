using System.Collections.Immutable;
using System.Text.Json;

namespace Farhold.App.Rehearse;

/// <summary>Scenarios that this phone's carer wrote or took over from others, each as the text of its file.</summary>
public sealed class OwnScenarios(IPhone phone)
{
    private const string Key = "own-scenarios";

    /// <summary>Design: with the longest texts some 3 MB, which a phone's small store still takes.</summary>
    public const int Most = 40;

    /// <summary>Design, in characters: the longest that is shipped has some 5,000.</summary>
    public const int Longest = 60_000;

    /// <summary>The text of each by its id, in the order in which they were kept; empty where what is kept can't be read.</summary>
    public ImmutableDictionary<string, string> Files => All.ToImmutableDictionary(s => s.Id, s => s.File, StringComparer.Ordinal);

    public ImmutableArray<(string Id, string File)> All => Json.Kept<Kept>(phone.Get(Key), Read)?.All ?? [];

    /// <summary>Keeps one, in place of another of the same id.</summary>
    /// <returns>False if the phone did not take it, or has as many as it takes.</returns>
    public bool Keep(string id, string file)
    {
        var others = All.RemoveAll(s => s.Id == id);
        return file.Length <= Longest && others.Length < Most && Write(others.Add((id, file)));
    }

    public bool Remove(string id) => Write(All.RemoveAll(s => s.Id == id));

    private bool Write(ImmutableArray<(string Id, string File)> all) =>
        phone.Set(
            Key,
            Json.Text(w =>
            {
                w.WriteStartArray("own");
                foreach (var (id, file) in all)
                {
                    w.WriteStartObject();
                    w.WriteString("id", id);
                    w.WriteString("file", file);
                    w.WriteEndObject();
                }

                w.WriteEndArray();
            })
        );

    private static Kept Read(JsonElement root) =>
        new([.. root.GetProperty("own").EnumerateArray().Select(e => (e.Text("id"), e.Text("file"))).DistinctBy(s => s.Item1)]);

    private sealed record Kept(ImmutableArray<(string Id, string File)> All);
}
