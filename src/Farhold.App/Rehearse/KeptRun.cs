using System.Collections.Immutable;
using System.Text.Json;

namespace Farhold.App.Rehearse;

/// <summary>Whether the trainee packed a thing, said after the wound was packed.</summary>
public enum PackedFor
{
    Unsaid,
    Real,
    PressedOnly,
    ScreenOnly,
}

/// <summary>Something that a rehearsal does and no entry of a record says. Times are in seconds from the scenario's start.</summary>
/// <param name="What">Word of a look, or of a deed; where somebody leads, what the run is asked, as a truth file has it.</param>
/// <param name="Wound">Where a look is at a wound.</param>
/// <param name="By">Who did it, where several treat and one leads.</param>
public sealed record KeptDeed(double At, string What, string? Wound, string? By = null)
{
    /// <summary>Whether it is one object of a truth file, and no word.</summary>
    public static bool IsAsked(string what) => what.StartsWith('{');

    /// <summary>Whether somebody's hands do it.</summary>
    public static bool IsAct(string what) => what.StartsWith("{\"act\"", StringComparison.Ordinal);
}

/// <summary>
/// A run as the phone keeps it, so that a page loaded anew goes on from there: with the record, it makes the truth again.
/// </summary>
/// <param name="Scenario">Its id.</param>
/// <param name="File">The scenario itself where it did not come with the app.</param>
/// <param name="Zone">Time zone of the scene; null is the phone's.</param>
/// <param name="At">In seconds from the scenario's start.</param>
/// <param name="RunsOn">Time passes while the app is out of view.</param>
/// <param name="Lesson">Null where whoever holds the phone treats, alone.</param>
public sealed record KeptRun(
    string Scenario,
    string? File,
    ulong Seed,
    string? Zone,
    double At,
    bool RunsOn,
    PackedFor Packed,
    ImmutableArray<KeptDeed> Deeds,
    Lesson? Lesson = null
)
{
    private const int Version = 1;

    public string Write() =>
        Json.Text(w =>
        {
            w.WriteNumber("v", Version);
            w.WriteString("scenario", Scenario);
            w.WriteString("file", File);
            w.WriteNumber("seed", Seed);
            w.WriteString("zone", Zone);
            w.WriteNumber("at", At);
            w.WriteBoolean("runsOn", RunsOn);
            w.WriteNumber("packed", (int)Packed);
            w.WriteStartArray("deeds");
            foreach (var deed in Deeds)
            {
                w.WriteStartObject();
                w.WriteNumber("at", deed.At);
                w.WriteString("what", deed.What);
                w.WriteString("wound", deed.Wound);
                if (deed.By is not null)
                    w.WriteString("by", deed.By);
                w.WriteEndObject();
            }

            w.WriteEndArray();
            if (Lesson is null)
                return;
            w.WriteStartObject("lesson");
            w.WriteStartArray("people");
            foreach (var name in Lesson.People)
                w.WriteStringValue(name);
            w.WriteEndArray();
            w.WriteString("marks", Lesson.Marks);
            w.WriteEndObject();
        });

    /// <summary>Null where nothing is kept, or nothing that can be read.</summary>
    public static KeptRun? Read(string text) =>
        Json.Kept(
            text,
            e =>
                e.Number("v") != Version
                    ? null
                    : new KeptRun(
                        e.Text("scenario"),
                        e.GetProperty("file").GetString(),
                        e.GetProperty("seed").GetUInt64(),
                        e.GetProperty("zone").GetString(),
                        e.GetProperty("at").GetDouble(),
                        e.GetProperty("runsOn").GetBoolean(),
                        Enum.IsDefined((PackedFor)e.Number("packed")) ? (PackedFor)e.Number("packed") : PackedFor.Unsaid,
                        [
                            .. e.GetProperty("deeds")
                                .EnumerateArray()
                                .Select(d => new KeptDeed(
                                    d.GetProperty("at").GetDouble(),
                                    d.Text("what"),
                                    d.GetProperty("wound").GetString(),
                                    d.TryGetProperty("by", out var by) ? by.GetString() : null
                                )),
                        ],
                        e.TryGetProperty("lesson", out var lesson) ? ReadLesson(lesson) : null
                    )
        );

    private static Lesson ReadLesson(JsonElement e) =>
        new([.. e.GetProperty("people").EnumerateArray().Select(p => p.GetString() ?? "")], e.Text("marks"));
}
