using System.Collections.Immutable;

namespace Farhold.Study.Runs;

/// <summary>Parts of runs in a folder: kept line by line while they run, then written whole beside and renamed.</summary>
public static class PartStore
{
    private const string Running = ".running";

    /// <summary>Runs a part, or goes on with it; one that is done is read.</summary>
    /// <returns>Its path.</returns>
    /// <exception cref="IOException">The folder can't be written.</exception>
    public static (string Path, ImmutableArray<Batch> Batches) Run(
        StudyPlan plan,
        RunPart part,
        string folder,
        int threads,
        Action<RunProgress> progress,
        CancellationToken cancellation = default
    )
    {
        var head = PartHead.For(plan, part);
        Directory.CreateDirectory(folder);
        var path = Path.Combine(folder, head.FileName);
        if (File.Exists(path) && PartFile.Read(plan, File.ReadAllText(path)) is (_, var done, null))
            return (path, done);
        var running = path + Running;
        var had = File.Exists(running) ? PartFile.Kept(plan, head, File.ReadLines(running)) : ImmutableDictionary<int, Batch>.Empty;
        ImmutableArray<Batch> batches;
        using (var kept = new StreamWriter(running, append: false) { NewLine = "\n", AutoFlush = true })
        {
            kept.WriteLine(PartFile.Head(head));
            foreach (var batch in had.Values.OrderBy(b => b.Number))
                kept.WriteLine(PartFile.Line(batch));
            batches = StudyRun.Run(plan, part, threads, had, b => kept.WriteLine(PartFile.Line(Slim(plan, b))), progress, cancellation);
        }

        var beside = path + ".part";
        File.WriteAllText(beside, PartFile.Whole(head, batches));
        File.Move(beside, path, overwrite: true);
        File.Delete(running);
        return (path, batches);
    }

    /// <summary>Reads all parts of a study in a folder; or says why they can't be joined.</summary>
    public static (ImmutableArray<Batch> Batches, ImmutableArray<string> Faults) Join(StudyPlan plan, string folder)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (faults, heads) = (ImmutableArray.CreateBuilder<string>(), new List<PartHead>());
        var batches = new SortedDictionary<int, Batch>();
        foreach (var path in Directory.EnumerateFiles(folder, "*.jsonl").Order(StringComparer.Ordinal))
        {
            var (head, read, fault) = PartFile.Read(plan, File.ReadAllText(path));
            if (fault is not null)
                faults.Add($"{Path.GetFileName(path)} {fault}");
            else if (heads.Any(h => h.Part == head!.Part && h.Of == head.Of))
                faults.Add($"{Path.GetFileName(path)} is a second copy of part {head!.Part}");
            else
                heads.Add(head!);
            foreach (var batch in read)
                batches[batch.Number] = batch;
        }

        if (heads.Select(h => h.Of).Distinct().Count() > 1)
            faults.Add($"the parts are of different cuts: {string.Join(", ", heads.Select(h => h.Of).Distinct().Order())}");
        else if (heads is [var any, ..] && Enumerable.Range(1, any.Of).Except(heads.Select(h => h.Part)).ToArray() is [_, ..] missing)
            faults.Add($"missing of {any.Of} parts: {string.Join(", ", missing)}");
        if (heads.Count == 0 && faults.Count == 0)
            faults.Add($"{folder} holds no part of a study");
        return ([.. batches.Values], faults.ToImmutable());
    }

    private static Batch Slim(StudyPlan plan, Batch batch) => batch.Number < StudyRun.Pool(plan) ? batch : batch with { Limits = null };
}
