using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

namespace Farhold.Rehearsal.Runs;

/// <summary>The truth of a rehearsal as a file: JSON Lines, the header first.</summary>
/// <param name="Lines">Each with its place in the file, from 1, and as it stands there.</param>
public sealed record TruthFile(TruthLine.Header Header, ImmutableArray<(int Number, TruthLine Line, JsonText Json)> Lines)
{
    /// <summary>Whether the rehearsal came to its end; a file that was cut off says less, and nothing wrong.</summary>
    public bool IsComplete => Lines[^1].Line is TruthLine.Ended;

    private const double LatestS = SpanFields.Longest + 86_400;

    public static string Write(IEnumerable<TruthLine> truth) => string.Concat(truth.Select(line => line.Json() + "\n"));

    public static Read<TruthFile> Read(ReadOnlyMemory<byte> utf8, string file) =>
        LineFile.Read<TruthFile, Parsed>(utf8, file, "a truth file", Line, Whole);

    /// <summary>Runs the rehearsal again by what was asked for, and holds what comes of it against the file.</summary>
    /// <returns>The rehearsal as it really is, and the first line that differs; null where none does.</returns>
    public Read<Rerun> Again(Scenario scenario, string file)
    {
        if (Header.Scenario != scenario.Hash)
            return Refused(file, 1, "this truth belongs to another scenario, or to another version of its file");
        if (Header.Model > Models.Newest || Header.Version != RehearsalSession.TruthVersion)
            return Refused(file, 1, $"this truth is of model {Header.Model}, which this version does not have: its key frames can be read");
        var session = new RehearsalSession(scenario, Header.Seed);
        foreach (var (_, line, _) in Lines.Where(l => l.Line.At >= 0 && l.Line is not TruthLine.Header))
        {
            session.AdvanceTo(line.At);
            if (line is not TruthLine.Logged logged)
                AskedLine.Do(session, line);
            else if (!IsOpening(session, logged))
                session.LogAgain(logged);
        }

        // The end is judged as the next step begins.
        session.AdvanceTo(Lines[^1].Line.At + (IsComplete ? Header.StepS : 0));
        return new Read<Rerun>.Usable(new(session, Difference(session)));
    }

    /// <summary>The session itself writes the entries that a record begins with.</summary>
    private static bool IsOpening(RehearsalSession session, TruthLine.Logged logged) =>
        session.Truth.OfType<TruthLine.Logged>().Any(l => l == logged);

    private TruthDifference? Difference(RehearsalSession session)
    {
        for (var i = 0; i < Lines.Length; i++)
        {
            var (number, _, json) = Lines[i];
            var made = i < session.Truth.Count ? session.Truth[i].Json() : null;
            if (made is null || CanonicalJson.Of(JsonText.Of(made)) != CanonicalJson.Of(json))
                return new(number, made, json.ToString());
        }

        return null;
    }

    private static TruthFile? Whole(ImmutableArray<(int Number, Parsed Line)> lines, Action<int, string> refuse)
    {
        if (lines[0].Line.Truth is not TruthLine.Header header)
        {
            refuse(lines[0].Number, "a truth file begins with its header");
            return null;
        }

        foreach (var (number, _) in lines.Skip(1).Where(l => l.Line.Truth is TruthLine.Header))
            refuse(number, "a second header");
        var latest = double.NegativeInfinity;
        foreach (var (number, line) in lines.Skip(1))
            if (AskedLine.Is(line.Truth) || line.Truth is TruthLine.Logged or TruthLine.Key)
            {
                if (line.Truth.At < latest)
                    refuse(number, "this line is earlier than one before it");
                latest = Math.Max(latest, line.Truth.At);
            }

        return new(header, [.. lines.Select(l => (l.Number, l.Line.Truth, l.Line.Json))]);
    }

    private static Parsed? Line(LocatedObject o, ReadOnlyMemory<byte> text)
    {
        var at = ActFields.Needed(o, "at", -LatestS, LatestS, " s");
        var line = at is { } known ? Line(o, known) : null;
        o.Done();
        return line is null ? null : new(line, new(text));
    }

    private static TruthLine? Line(LocatedObject o, double at)
    {
        if (o.Has("truth"))
            return Head(o, at);
        if (o.Object("asked") is { } asked)
        {
            var line = AskedLine.Read(asked, at);
            asked.Done();
            return line;
        }

        if (o.Text("logged", EntryNames.Longest) is { } kind)
            return Kinds.Parse(Encoding.UTF8.GetBytes(kind)) is { } known && o.Text("sha256", EntryNames.Longest) is { } hash
                ? new TruthLine.Logged(at, known, hash)
                : Unknown(o, "logged");
        if (o.Object("began") is { } began)
        {
            var (act, until) = (ActFields.Read(began, []), ActFields.Needed(o, "until", -LatestS, 2 * LatestS, " s"));
            began.Done();
            return act is null || until is null ? null : new TruthLine.Began(at, act, until.Value);
        }

        if (o.Text("inject", EntryNames.Longest) is { } inject)
            return new TruthLine.Injected(at, inject);
        if (o.Text("draw", 500) is { } draw)
            return ActFields.Needed(o, "value", 0, 1) is { } value ? new TruthLine.Drawn(at, draw, value) : null;
        if (o.Has("look"))
            return Looked(o, at);
        if (o.Text("failed", EntryNames.Longest) is { } failed)
            return new TruthLine.Failed(at, failed);
        if (o.Flag("arrested") is not null)
            return new TruthLine.Arrested(at);
        if (o.Text("key", 100_000) is { } key)
            return State(key) is { } state ? new TruthLine.Key(at, state) : Unknown(o, "key");
        return o.Text("ended", EntryNames.Longest) is { } ended ? new TruthLine.Ended(at, ended) : null;
    }

    private static TruthLine.Header? Head(LocatedObject o, double at)
    {
        var (version, model) = (o.Whole("truth", 1, 1_000), o.Whole("model", 1, 1_000));
        o.Required("scenarioSha256", "64 hexadecimal digits");
        var (hash, step) = (o.Text("scenarioSha256", EntryNames.Longest), ActFields.Needed(o, "stepS", 0.1, 3, " s"));
        var seed = ActFields.Needed(o, "seed", 0, int.MaxValue);
        return version is null || model is null || hash is null || step is null || seed is null
            ? null
            : new(at, version.Value, model.Value, hash, (ulong)seed.Value, step.Value);
    }

    private static TruthLine.Looked? Looked(LocatedObject o, double at)
    {
        var (kind, wound) = (ActFields.Word<LookKind>(o, "look"), o.Text("wound", EntryNames.Longest));
        var asked = ActFields.Needed(o, "askedAt", -LatestS, LatestS, " s");
        var (shown, real) = (o.Text("shown", EntryNames.Longest), o.Text("true", EntryNames.Longest));
        return kind is null || asked is null || shown is null || real is null ? null : new(at, kind.Value, wound, asked.Value, shown, real);
    }

    private static ImmutableArray<double>? State(string base64)
    {
        var bytes = new byte[base64.Length];
        if (!Convert.TryFromBase64String(base64, bytes, out var length) || length == 0 || length % sizeof(double) != 0)
            return null;
        var state = new double[length / sizeof(double)];
        for (var i = 0; i < state.Length; i++)
            state[i] = System.Buffers.Binary.BinaryPrimitives.ReadDoubleLittleEndian(bytes.AsSpan(sizeof(double) * i));
        return [.. state];
    }

    private static TruthLine? Unknown(LocatedObject o, string name)
    {
        o.Refuse(name, $"what stands under {name} means nothing here");
        return null;
    }

    private static Read<Rerun>.Refused Refused(string file, int line, string why) => new([new(file, line, 1, why)]);

    private sealed record Parsed(TruthLine Truth, JsonText Json);
}

/// <summary>A rehearsal that was run again.</summary>
/// <param name="Differs">Where the file says something else; null where nothing was changed.</param>
public sealed record Rerun(RehearsalSession Session, TruthDifference? Differs);

/// <param name="Line">Of the file, from 1.</param>
/// <param name="Made">What the re-run made there; null where it made nothing more.</param>
public sealed record TruthDifference(int Line, string? Made, string Found);
