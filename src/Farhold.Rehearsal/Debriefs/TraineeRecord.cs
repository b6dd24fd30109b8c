using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using NodaTime;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>The record that a trainee kept on their own phone while somebody else led, as it is beside the truth of the run.</summary>
/// <remarks>
/// It was written by the wall's clock, and the run's clock stood, leapt and ran at paces: each time is put where the run was then. What
/// lies ahead (when help is expected) stays as far ahead as it was. Wounds get the run's names by their limb.
/// </remarks>
/// <param name="Entries">By the run's clock, with the ids that they came with.</param>
/// <param name="WoundsElsewhere">Wounds that the record has and the casualty has not, by the names that they have here.</param>
public sealed record TraineeRecord(ImmutableArray<Entry> Entries, RunClock Clock, ImmutableArray<string> WoundsElsewhere)
{
    /// <summary>Design: a record that was written for a lesson has a line from within so long of it.</summary>
    private static readonly Duration Near = Duration.FromMinutes(30);

    private static readonly JsonWriterOptions Plainly = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>What an entry says of a time that lies ahead or behind, beside when it happened.</summary>
    private static readonly ImmutableHashSet<string> Ahead = ["likely", "earliest", "latest", "until"];

    /// <param name="session">As it was led.</param>
    /// <param name="record">As it came from the trainee's phone.</param>
    /// <param name="file">Its name, for what is refused.</param>
    public static Read<TraineeRecord> On(RehearsalSession session, ImmutableArray<Entry> record, string file)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (RunClock.Of(session.Truth) is not { } clock)
            return Refused(file, 1, "nobody led this rehearsal, so there is no record beside its own");
        if (record.IsEmpty)
            return Refused(file, 1, "there is no entry in this record");
        if (IsSealed(session, record))
            return Refused(file, 1, "this is the record of the phone that led, and not of whoever treated");
        foreach (var (i, entry) in record.Index())
            if (!IsPractice(entry))
                return Refused(file, i + 1, "this entry is not marked as practice: a real casualty's record is compared with no rehearsal");
        var until = clock.WallAt(session.Time);
        if (!record.Any(e => e.Recorded >= clock.From - Near && e.Recorded <= until + Near))
            return Refused(
                file,
                1,
                "nothing in this record was written while the rehearsal ran, "
                    + $"from {WrittenInstant.Write(clock.From)} to {WrittenInstant.Write(until)}"
            );
        var wounds = Wounds(session.Scenario, record);
        return new Read<TraineeRecord>.Usable(
            new(
                [.. record.Select(e => Mapped(e, session, clock, wounds))],
                clock,
                [.. wounds.Values.Where(name => session.Scenario.Wounds.All(w => w.Name != name)).Order(StringComparer.Ordinal)]
            )
        );
    }

    /// <summary>Whether the record is the run's own, sealed by it, and no trainee's.</summary>
    public static bool IsSealed(RehearsalSession session, IEnumerable<Entry> record) =>
        record.Select(e => e.Payload).OfType<Payload.NoteWritten>().FirstOrDefault()?.Text?.Contains(session.Seal, StringComparison.Ordinal)
        == true;

    private static bool IsPractice(Entry entry)
    {
        using var json = JsonDocument.Parse(entry.Json.Utf8);
        return json.RootElement.TryGetProperty("practice", out var flag) && flag.ValueKind == JsonValueKind.True;
    }

    /// <summary>The run's name of each wound of the record: limb by limb, in the order in which they were found.</summary>
    private static Dictionary<string, string> Wounds(Scenario scenario, IEnumerable<Entry> record)
    {
        var left = scenario.Wounds.ToList();
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var found in record.OrderBy(e => e.Recorded).Select(e => e.Payload).OfType<Payload.WoundFound>())
        {
            if (names.ContainsKey(found.Wound))
                continue;
            var its = left.Find(w => w.Limb == found.Limb && w.Region == found.Region);
            if (its is not null)
                left.Remove(its);
            names[found.Wound] = its?.Name ?? (scenario.Wounds.Any(w => w.Name == found.Wound) ? Elsewhere(found.Wound) : found.Wound);
        }

        return names;
    }

    /// <summary>A name that no wound of the run has: <c>w1</c> of the wrong leg is not the run's <c>w1</c>.</summary>
    private static string Elsewhere(string name) => $"{name[..Math.Min(name.Length, EntryNames.Longest - 2)]}*";

    private static Entry Mapped(Entry entry, RehearsalSession session, RunClock clock, Dictionary<string, string> wounds)
    {
        Instant Scene(Instant wall) => session.At(Math.Min(clock.SceneAt(wall), Math.Max(0, session.Time)));
        var recorded = Scene(entry.Recorded);
        using var buffer = new MemoryStream(entry.Json.Utf8.Length);
        using (var json = JsonDocument.Parse(entry.Json.Utf8))
        using (var w = new Utf8JsonWriter(buffer, Plainly))
            Write(w, json.RootElement, "");
        return new EntryReader().Read(buffer.ToArray(), "record", 1) switch
        {
            Read<Entry>.Usable usable => usable.Value,
            Read<Entry>.Refused refused => throw new InvalidOperationException(string.Join("; ", refused.Refusals)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

        // An amendment carries the fields of another entry, so the names are looked for at any depth.
        void Write(Utf8JsonWriter w, JsonElement value, string name)
        {
            switch (value.ValueKind)
            {
                case JsonValueKind.Object:
                    w.WriteStartObject();
                    foreach (var member in value.EnumerateObject().Where(m => name.Length > 0 || m.Name != "previous"))
                    {
                        w.WritePropertyName(member.Name);
                        Write(w, member.Value, name == "happened" ? name : member.Name);
                    }

                    w.WriteEndObject();
                    break;
                case JsonValueKind.String when Time(name, value.GetString()!) is { } time:
                    w.WriteStringValue(WrittenInstant.Write(time));
                    break;
                case JsonValueKind.String when name == "wound" && wounds.GetValueOrDefault(value.GetString()!) is { } wound:
                    w.WriteStringValue(wound);
                    break;
                default:
                    value.WriteTo(w);
                    break;
            }
        }

        Instant? Time(string name, string text) =>
            name is "happened" or "recorded" && WrittenInstant.TryParse(text) is { } then ? Scene(then)
            : Ahead.Contains(name) && WrittenInstant.TryParse(text) is { } time ? recorded + (time - entry.Recorded)
            : null;
    }

    private static Read<TraineeRecord>.Refused Refused(string file, int line, string why) => new([new(file, line, 1, why)]);
}
