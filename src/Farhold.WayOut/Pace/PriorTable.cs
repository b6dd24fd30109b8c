using System.Collections.Immutable;
using System.Diagnostics;

namespace Farhold.WayOut.Pace;

/// <summary>A figure that forecasts take where a plan says nothing better.</summary>
/// <param name="Spread">Standard deviation of the logarithm; null for a figure without one.</param>
public sealed record Figure(string Id, string What, double Value, double? Spread, Evidence Mark, string Source)
{
    /// <summary>As "what this rests on" shows it.</summary>
    public Basis Basis
    {
        get
        {
            var what = Translation.Prior(What) ?? What;
            var (said, value) = ($"{char.ToUpperInvariant(what[0])}{what[1..]}", Say.Number(Value));
            return new(Spread is { } s ? PaceTexts.FigureSpread(said, value, Say.Number(s)) : PaceTexts.Figure(said, value), Mark, Source);
        }
    }
}

/// <summary>A suggested time for something plans often contain, to be offered and changed, never applied unasked.</summary>
/// <param name="What">In English, as a plan that takes it names its stage.</param>
public sealed record Prior(string Id, string What, double P10Minutes, double P50Minutes, double P90Minutes, Evidence Mark, string Source)
{
    /// <summary>What it is the time of, in the language that is spoken.</summary>
    public string Title => Translation.Prior(What) ?? What;
}

/// <summary>What forecasts take where nobody knows better: <c>plans/priors.json</c>, each figure with its source.</summary>
public static class PriorTable
{
    private const string File = "priors.json";
    private const int LongestText = 2000;
    private const int LongestName = 200;
    private const double MostMinutes = 43_200;

    private static readonly (string, Evidence)[] Marks =
    [
        ("read", Evidence.Read),
        ("computed", Evidence.Computed),
        ("memory", Evidence.Memory),
        ("assumption", Evidence.Assumption),
    ];

    private static readonly Tables Known = Load();

    public static ImmutableArray<Figure> Figures => Known.Figures;

    public static ImmutableArray<Prior> Times => Known.Times;

    /// <exception cref="ArgumentException">There is no such figure.</exception>
    public static Figure Figure(string id) =>
        Figures.FirstOrDefault(f => f.Id == id) ?? throw new ArgumentException($"The priors hold no figure '{id}'.", nameof(id));

    /// <summary>Reads a table of priors, wholly or not at all. Its form is plans/priors.schema.json.</summary>
    private static Read<Tables> Read(ReadOnlyMemory<byte> utf8, string file) =>
        new LocatedJson(utf8, file).Whole(
            "the priors",
            (json, root) =>
            {
                var fields = new LocatedObject(json, root, "the priors");
                fields.Text("$schema", LongestText);
                fields.Text("note", LongestText);
                var read = new Tables([.. Items(fields, "figures", FigureOf)], [.. Items(fields, "times", TimeOf)]);
                fields.Done();
                return read;
            }
        );

    private static IEnumerable<T> Items<T>(LocatedObject fields, string name, Func<LocatedObject, T> read)
    {
        foreach (var item in fields.Any(name)?.Items ?? [])
        {
            var entry = new LocatedObject(fields.File, item, "a prior");
            yield return read(entry);
            entry.Done();
        }
    }

    private static Figure FigureOf(LocatedObject f) =>
        new(Name(f, "id"), Name(f, "what"), f.Number("value", 0, 10_000) ?? 0, f.Number("spread", 0, 5), Mark(f), Name(f, "source"));

    private static Prior TimeOf(LocatedObject f) =>
        new(
            Name(f, "id"),
            Name(f, "what"),
            f.Number("p10", 0, MostMinutes) ?? 0,
            f.Number("p50", 0, MostMinutes) ?? 0,
            f.Number("p90", 0, MostMinutes) ?? 0,
            Mark(f),
            Name(f, "source")
        );

    private static string Name(LocatedObject f, string name)
    {
        f.Required(name, "a text");
        return f.Text(name, LongestName) ?? "";
    }

    private static Evidence Mark(LocatedObject f) => f.Word("mark", Marks.Select(m => (m.Item1, new Marked(m.Item2))))?.Evidence ?? default;

    private static Tables Load()
    {
        using var stream =
            typeof(PriorTable).Assembly.GetManifestResourceStream(File) ?? throw new UnreachableException($"{File} is built in");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return Read(copy.ToArray(), File) switch
        {
            Read<Tables>.Usable(var tables) => tables,
            Read<Tables>.Refused(var why) => throw new InvalidOperationException(string.Join("; ", why)),
            _ => throw new UnreachableException(),
        };
    }

    private sealed record Tables(ImmutableArray<Figure> Figures, ImmutableArray<Prior> Times);

    private sealed record Marked(Evidence Evidence);
}
