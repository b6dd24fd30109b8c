using System.Collections.Immutable;
using System.Globalization;

namespace Farhold.Rehearsal.Trust;

public enum TargetFit
{
    Met,
    Outside,

    /// <summary>No source says by how much it may differ.</summary>
    NotJudged,
}

/// <summary>A sign of a published figure beside what the casualty model gives.</summary>
/// <param name="Number">Of the target, 1 to 26; most have several signs.</param>
/// <param name="Input">What was done.</param>
/// <param name="Sign">With its unit.</param>
/// <param name="Accepted">This project's judgement; empty where nothing is judged.</param>
/// <param name="Found">Three digits.</param>
public sealed record Target(
    int Number,
    string Input,
    string Sign,
    string Published,
    string Source,
    string Accepted,
    string Found,
    TargetFit Fit
);

/// <summary>What the model was held against: the table that its tests work out anew in every run.</summary>
public static class Targets
{
    private static readonly Lazy<ImmutableArray<Target>> Read = new(() => [.. Lines().Skip(1).Select(Target)]);

    /// <summary>A line a sign, in order of their targets.</summary>
    public static ImmutableArray<Target> All => Read.Value;

    public static ImmutableArray<Target> That(TargetFit fit) => [.. All.Where(t => t.Fit == fit)];

    private static IEnumerable<string> Lines()
    {
        using var reader = new StreamReader(typeof(Targets).Assembly.GetManifestResourceStream("targets.csv")!);
        while (reader.ReadLine() is { } line)
            yield return line;
    }

    private static Target Target(string line)
    {
        var f = line.Split(',');
        return new(
            int.Parse(f[0], CultureInfo.InvariantCulture),
            f[1],
            $"{f[2]}, {f[3]}",
            f[4],
            f[5],
            f[6],
            f[7],
            Wire.Parse<TargetFit>(f[8]) ?? throw new InvalidDataException(line)
        );
    }
}
