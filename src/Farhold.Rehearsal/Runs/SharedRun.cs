using System.Buffers;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Farhold.Rehearsal.Runs;

/// <summary>
/// A run in few words: its scenario, its seed, and what was asked and logged when. Whoever has the scenario makes the same truth of it.
/// </summary>
/// <remarks>
/// JSON Lines: a head, then lines of a truth file under <c>asked</c>, and entries as they stand in the record:
/// <c>{"at":70.5,"entry":{…}}</c>. Nothing that the model works out crosses, but the hash of it all.
/// </remarks>
/// <param name="Lines">In order.</param>
public sealed record SharedRun(SharedRun.Head Of, ImmutableArray<SharedRun.Line> Lines)
{
    public const int Version = 1;

    private const string Entry = "entry";

    /// <param name="Scenario">Its id.</param>
    /// <param name="ScenarioHash">SHA-256 of its file.</param>
    /// <param name="Until">How far it came, in seconds from the scenario's start.</param>
    /// <param name="Truth">SHA-256 of the truth file, which is the same to the last bit wherever the model is worked out alike.</param>
    public sealed record Head(string Scenario, string ScenarioHash, int Model, ulong Seed, double Until, bool IsOver, string Truth);

    /// <summary>Exactly one of the two is given.</summary>
    /// <param name="At">In seconds from the scenario's start.</param>
    public sealed record Line(double At, TruthLine? Asked, Entry? Logged);

    /// <summary>Of a run as far as it has come.</summary>
    public static string Write(RehearsalSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var text = new StringBuilder(
            Json(w =>
            {
                w.WriteNumber("run", Version);
                w.WriteString("scenario", session.Scenario.Id);
                w.WriteString("scenarioSha256", session.Scenario.Hash);
                w.WriteNumber("model", session.Scenario.Model);
                w.WriteNumber("seed", session.Seed);
                w.WriteNumber("until", session.Time);
                w.WriteBoolean("over", session.IsOver);
                w.WriteString("truthSha256", HashOf(session));
            })
        );
        text.Append('\n');
        var opened = session.Opened;
        var logged = 0;
        foreach (var line in session.Truth)
            if (AskedLine.Is(line))
                text.Append(line.Json()).Append('\n');
            else if (line is TruthLine.Logged && logged++ is var number && number >= opened)
                text.Append(
                        Json(w =>
                        {
                            w.WriteNumber("at", line.At);
                            w.WritePropertyName(Entry);
                            w.WriteRawValue(session.Record[number].Json.Utf8.Span);
                        })
                    )
                    .Append('\n');
        return text.ToString();
    }

    public static Read<SharedRun> Read(ReadOnlyMemory<byte> utf8, string file) =>
        LineFile.Read<SharedRun, Parsed>(utf8, file, "a run", Parse, Whole);

    /// <summary>SHA-256 of the truth file of a run, in lower-case hexadecimal digits.</summary>
    public static string HashOf(RehearsalSession session) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(TruthFile.Write(session.Truth))));

    /// <summary>Why it can't be run with a scenario; null where it can.</summary>
    /// <param name="file">Of the run.</param>
    public Refusal? Objection(Scenario? scenario, string file) =>
        scenario is null ? new(file, 1, 1, $"this run is of the scenario {Of.Scenario}, which is not at hand: take that one first")
        : scenario.Hash != Of.ScenarioHash
            ? new(file, 1, 1, $"this run is of another scenario than {scenario.Id} at hand, or of another version of its file")
        : Of.Model > Models.Newest ? new(file, 1, 1, $"this run is of model {Of.Model}, which this version does not have")
        : null;

    /// <summary>Runs it again from start to end.</summary>
    /// <param name="scenario">Without <see cref="Objection"/>.</param>
    public RehearsalSession Again(Scenario scenario) => InPieces(scenario, double.PositiveInfinity).Last();

    /// <summary>As <see cref="Again"/>, and asked on after each piece, so that a page can breathe meanwhile.</summary>
    /// <param name="piece">Seconds of the scene.</param>
    /// <returns>The session as far as it has come; the last one is where the run was.</returns>
    public IEnumerable<RehearsalSession> InPieces(Scenario scenario, double piece)
    {
        RehearsalSession? begun = null;
        foreach (var opening in RehearsalSession.Opening(Variation.Of(scenario, Of.Seed), Of.Seed, piece))
            yield return begun = opening;
        var session = begun!;
        foreach (var line in Lines)
        {
            foreach (var _ in session.InPieces(line.At, piece))
                yield return session;
            if (line.Logged is { } entry)
                session.Take(entry, acts: false);
            else
                AskedLine.Do(session, line.Asked!);
        }

        // The end is judged as the next step begins.
        foreach (var _ in session.InPieces(Of.Until + (Of.IsOver ? session.StepS : 0), piece))
            yield return session;
        yield return session;
    }

    /// <summary>Whether what was made of it is what it was, in words.</summary>
    public string Compared(RehearsalSession session) => HashOf(session) == Of.Truth ? RunTexts.Same : RunTexts.Recomputed;

    private static SharedRun? Whole(ImmutableArray<(int Number, Parsed Line)> lines, Action<int, string> refuse)
    {
        if (lines[0].Line.Head is not { } head)
        {
            refuse(lines[0].Number, "a run begins with its head: its scenario and its seed");
            return null;
        }

        var latest = double.NegativeInfinity;
        foreach (var (number, line) in lines.Skip(1))
            if (line.Body is not { } body)
                refuse(number, "a second head");
            else if (body.At < latest || body.At > head.Until)
                refuse(number, body.At < latest ? "this line is earlier than one before it" : "this line is later than the run came");
            else
                latest = body.At;
        return new(head, [.. lines.Skip(1).Select(l => l.Line.Body).OfType<Line>()]);
    }

    private static Parsed? Parse(LocatedObject o, ReadOnlyMemory<byte> line)
    {
        if (o.Has("run"))
            return ReadHead(o) is { } head ? new(head, null) : null;
        if (ActFields.Needed(o, "at", 0, SpanFields.Longest, " s") is not { } at)
            return null;
        if (o.Object("asked") is { } asked)
        {
            var what = AskedLine.Read(asked, at);
            asked.Done();
            o.Done();
            return what is null ? null : new(null, new(at, what, null));
        }

        if (o.Object(Entry) is null)
        {
            o.Refuse("at", "a line of a run is asked or an entry");
            return null;
        }

        o.Done();
        switch (new EntryReader().Read(Raw(line), "", 1))
        {
            case Read<Entry>.Usable(var entry):
                return new(null, new(at, null, entry));
            case Read<Entry>.Refused(var why):
                o.Refuse(Entry, string.Join("; ", why.Select(r => r.Reason)));
                return null;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private static Head? ReadHead(LocatedObject o)
    {
        foreach (var name in (string[])["scenario", "scenarioSha256", "truthSha256"])
            o.Required(name, "a text");
        var version = o.Whole("run", 1, Version);
        var (scenario, hash) = (o.Text("scenario", EntryNames.Longest), o.Text("scenarioSha256", EntryNames.Longest));
        var (model, seed) = (o.Whole("model", 1, 1_000), ActFields.Needed(o, "seed", 0, int.MaxValue));
        var (until, over) = (ActFields.Needed(o, "until", 0, SpanFields.Longest, " s"), o.Flag("over") ?? false);
        var truth = o.Text("truthSha256", EntryNames.Longest);
        o.Done();
        return version is null || scenario is null || hash is null || model is null || seed is null || until is null || truth is null
            ? null
            : new(scenario, hash, model.Value, (ulong)seed.Value, until.Value, over, truth);
    }

    /// <summary>The entry byte for byte, as its hash is of these.</summary>
    private static ReadOnlyMemory<byte> Raw(ReadOnlyMemory<byte> line)
    {
        var reader = new Utf8JsonReader(line.Span);
        while (reader.Read())
            if (reader.CurrentDepth == 1 && reader.TokenType == JsonTokenType.PropertyName && reader.ValueTextEquals(Entry))
            {
                reader.Read();
                var from = (int)reader.TokenStartIndex;
                reader.Skip();
                return line[from..(int)reader.BytesConsumed];
            }

        throw new System.Diagnostics.UnreachableException();
    }

    private static string Json(Action<Utf8JsonWriter> members)
    {
        var buffer = new ArrayBufferWriter<byte>(256);
        using (var w = new Utf8JsonWriter(buffer))
        {
            w.WriteStartObject();
            members(w);
            w.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private sealed record Parsed(Head? Head, Line? Body);
}
