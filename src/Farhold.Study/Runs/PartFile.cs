using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Farhold.Physiology.Constants;

namespace Farhold.Study.Runs;

/// <summary>What two parts have to agree on before they are joined.</summary>
/// <param name="Inputs">SHA-256 of the study's file, its members sorted.</param>
/// <param name="Model">SHA-256 of the casualty model's constants.</param>
/// <param name="Engine">Rises with every change that changes a number.</param>
public sealed record PartHead(string Study, string Inputs, string Model, ulong Seed, int Engine, int Part, int Of, int Batches)
{
    public const int CurrentEngine = 1;

    /// <summary>First in the file: what it is not.</summary>
    [JsonPropertyOrder(-1)]
    public string Not => StudyTexts.NotGuidance;

    public static PartHead For(StudyPlan plan, RunPart part)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(plan.Id, plan.Hash, Models.Hash(plan.Model), plan.Seed, CurrentEngine, part.Number, part.Of, plan.Run.Batches);
    }

    /// <summary>Named by what it comes from: another study, model, seed or engine gives another name.</summary>
    public string FileName
    {
        get
        {
            var from = string.Join(
                '\n',
                Study,
                Inputs,
                Model,
                Seed.ToString(CultureInfo.InvariantCulture),
                Engine.ToString(CultureInfo.InvariantCulture)
            );
            var hash = FileHash.Of(Encoding.UTF8.GetBytes(from))[..12];
            return string.Create(CultureInfo.InvariantCulture, $"{Study}-{hash}-part-{Part:0000}-of-{Of:0000}.jsonl");
        }
    }
}

/// <summary>A part of a run as lines of JSON: its head, a line a batch, and at the end the SHA-256 of all lines before.</summary>
public static class PartFile
{
    public static string Head(PartHead head) => JsonSerializer.Serialize(head, Options);

    public static string Line(Batch batch)
    {
        ArgumentNullException.ThrowIfNull(batch);
        return JsonSerializer.Serialize(
            new Written(
                batch.Number,
                batch.Tally.Casualties,
                [.. batch.Tally.AllCounts],
                [.. batch.Tally.Harm],
                [.. batch.Tally.HarmSquared],
                batch.Limits is { } limits ? [.. limits.Minutes.ToArray().Select(m => double.IsInfinity(m) ? (double?)null : m)] : null
            ),
            Options
        );
    }

    /// <summary>A whole part. The last line seals it.</summary>
    public static string Whole(PartHead head, IEnumerable<Batch> batches)
    {
        var text = new StringBuilder(Head(head)).Append('\n');
        foreach (var batch in batches)
            text.Append(Line(batch)).Append('\n');
        return $"{text}{{\"sha256\":\"{Sealed(text.ToString())}\"}}\n";
    }

    /// <summary>What was kept of a part that was interrupted: its whole lines, where its head is the one asked for.</summary>
    public static ImmutableDictionary<int, Batch> Kept(StudyPlan plan, PartHead head, IEnumerable<string> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var kept = ImmutableDictionary.CreateBuilder<int, Batch>();
        var first = true;
        foreach (var line in lines)
        {
            if (first && line != Head(head))
                break;
            if (!first)
            {
                // A line that was cut off in the middle is run again.
                if (Batch(plan, line) is not { } batch)
                    break;
                kept[batch.Number] = batch;
            }

            first = false;
        }

        return kept.ToImmutable();
    }

    /// <summary>A whole part from a file, or why it can't be used, in a sentence.</summary>
    public static (PartHead? Head, ImmutableArray<Batch> Batches, string? Fault) Read(StudyPlan plan, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        PartHead? head;
        try
        {
            head = lines.Length > 0 ? JsonSerializer.Deserialize<PartHead>(lines[0], Options) : null;
        }
        catch (JsonException)
        {
            head = null;
        }

        if (head is null || head.Study is null || head.Inputs is null || head.Model is null)
            return (null, [], "is no part of a study");
        var end = text.LastIndexOf("{\"sha256\"", StringComparison.Ordinal);
        if (end < 0 || text[end..].TrimEnd() != $"{{\"sha256\":\"{Sealed(text[..end])}\"}}")
            return (head, [], "is not whole, or was changed: its seal does not fit");
        if (Differs(PartHead.For(plan, new(head.Part, head.Of)), head) is { } fault)
            return (head, [], fault);
        var batches = ImmutableArray.CreateBuilder<Batch>();
        foreach (var line in lines[1..^1])
            if (Batch(plan, line) is { } batch)
                batches.Add(batch);
            else
                return (head, [], "holds a batch of another shape");
        return (head, batches.ToImmutable(), null);
    }

    private static string? Differs(PartHead asked, PartHead found) =>
        asked.Study != found.Study ? $"is of another study: {found.Study}, not {asked.Study}"
        : asked.Seed != found.Seed ? $"was run with seed {found.Seed}, and the study has {asked.Seed}"
        : asked.Model != found.Model
            ? $"was run with another casualty model ({FileHash.Short(found.Model)}, not {FileHash.Short(asked.Model)})"
        : asked.Inputs != found.Inputs ? $"was run with other inputs ({FileHash.Short(found.Inputs)}, not {FileHash.Short(asked.Inputs)})"
        : asked.Engine != found.Engine ? $"was run by version {found.Engine} of the engine, and this is version {asked.Engine}"
        : asked != found ? "was cut into other batches"
        : null;

    private static Batch? Batch(StudyPlan plan, string line)
    {
        Written? written;
        try
        {
            written = JsonSerializer.Deserialize<Written>(line, Options);
        }
        catch (JsonException)
        {
            return null;
        }

        var tally = new Tally(plan);
        if (
            written is not { Counts: { } counts, Harm: { } harm, HarmSquared: { } squares }
            || counts.Length != tally.AllCounts.Length
            || harm.Length != tally.Harm.Length
            || squares.Length != harm.Length
        )
            return null;
        counts.CopyTo(tally.AllCounts);
        harm.CopyTo(tally.Harm);
        squares.CopyTo(tally.HarmSquared);
        tally.Casualties = written.Casualties;
        return new(written.Batch, tally, written.Limits is { } limits ? new([.. limits.Select(m => m ?? double.PositiveInfinity)]) : null);
    }

    private static string Sealed(string lines) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(lines)));

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    private sealed record Written(int Batch, long Casualties, long[] Counts, double[] Harm, double[] HarmSquared, double?[]? Limits);
}
