using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.App.Rehearse;

/// <summary>A rehearsal that ended, in one line: what the date of the next one goes by. It names no casualty.</summary>
/// <param name="Mastered">Nothing was left to remark, and something real was packed.</param>
public sealed record PastRehearsal(string Scenario, Instant Ended, PackedFor Packed, bool Mastered);

/// <summary>The rehearsals of this phone, the newest last.</summary>
public sealed class PastRehearsals(IPractice practice)
{
    /// <summary>Design: more of them say nothing about the next.</summary>
    private const int Most = 200;

    public ImmutableArray<PastRehearsal> All => Json.Kept<Kept>(practice.Past, Read)?.All ?? [];

    public void Add(PastRehearsal one)
    {
        ImmutableArray<PastRehearsal> all = [.. All.TakeLast(Most - 1), one];
        practice.KeepPast(
            Json.Text(w =>
            {
                w.WriteStartArray("past");
                foreach (var past in all)
                {
                    w.WriteStartObject();
                    w.WriteString("scenario", past.Scenario);
                    w.WriteString("ended", WrittenInstant.Write(past.Ended));
                    w.WriteNumber("packed", (int)past.Packed);
                    w.WriteBoolean("mastered", past.Mastered);
                    w.WriteEndObject();
                }

                w.WriteEndArray();
            })
        );
    }

    private static Kept? Read(JsonElement root) =>
        new([
            .. root.GetProperty("past")
                .EnumerateArray()
                .Select(e => new PastRehearsal(
                    e.Text("scenario"),
                    WrittenInstant.TryParse(e.Text("ended")) ?? throw new FormatException(),
                    (PackedFor)e.Number("packed"),
                    e.GetProperty("mastered").GetBoolean()
                )),
        ]);

    private sealed record Kept(ImmutableArray<PastRehearsal> All);
}
