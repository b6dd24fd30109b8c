namespace Farhold.Study.Tests.Runs;

public sealed class PartTests : IDisposable
{
    private static readonly StudyPlan Plan = SomePlan.Read(SomePlan.Shares());

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("farhold-study-");

    public void Dispose() => folder.Delete(recursive: true);

    private void Run(RunPart part, StudyPlan? plan = null) => PartStore.Run(plan ?? Plan, part, folder.FullName, 2, _ => { });

    [Fact]
    public void Parts_joined_are_the_whole()
    {
        for (var i = 3; i >= 1; i--)
            Run(new(i, 3));
        var (batches, faults) = PartStore.Join(Plan, folder.FullName);
        Assert.Empty(faults);
        var whole = StudyRun.Run(Plan, RunPart.Whole, 1, new Dictionary<int, Batch>(), _ => { }, _ => { });
        Assert.Equal(whole.Select(PartFile.Line), batches.Take(whole.Length).Select(PartFile.Line));
        var (one, other) = (StoppingRule.Add(Plan, whole), StoppingRule.Add(Plan, batches));
        Assert.Equal((one.Batches, one.By), (other.Batches, other.By));
        Assert.Equal(one.Tally.Harm.ToArray(), other.Tally.Harm.ToArray());
    }

    [Fact]
    public void A_part_that_is_done_is_not_run_again_and_writes_the_same_bytes()
    {
        Run(new(1, 2));
        var path = Assert.Single(folder.GetFiles());
        var bytes = File.ReadAllBytes(path.FullName);
        var written = path.LastWriteTimeUtc;
        Run(new(1, 2));
        Assert.Equal(written, new FileInfo(path.FullName).LastWriteTimeUtc);
        path.Delete();
        Run(new(1, 2));
        Assert.Equal(bytes, File.ReadAllBytes(path.FullName));
    }

    /// <summary>Cancelled in the middle, and the last line cut off as a kill would leave it.</summary>
    [Fact]
    public void A_part_that_was_killed_goes_on_where_it_was()
    {
        using var stop = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() =>
            PartStore.Run(
                Plan,
                RunPart.Whole,
                folder.FullName,
                1,
                p =>
                {
                    if (p.Done == 5)
                        stop.Cancel();
                    stop.Token.ThrowIfCancellationRequested();
                },
                stop.Token
            )
        );
        var running = Assert.Single(folder.GetFiles("*.running"));
        var text = File.ReadAllText(running.FullName);
        File.WriteAllText(running.FullName, text[..^40]);
        var kept = PartFile.Kept(Plan, PartHead.For(Plan, RunPart.Whole), File.ReadLines(running.FullName));
        Assert.Equal([0, 1, 2, 3], kept.Keys.Order());
        Run(RunPart.Whole);
        var resumed = File.ReadAllText(Assert.Single(folder.GetFiles()).FullName);
        folder.GetFiles()[0].Delete();
        Run(RunPart.Whole);
        Assert.Equal(resumed, File.ReadAllText(Assert.Single(folder.GetFiles()).FullName));
    }

    [Fact]
    public void Missing_parts_are_named()
    {
        Run(new(1, 4));
        Run(new(3, 4));
        Assert.Equal(["missing of 4 parts: 2, 4"], PartStore.Join(Plan, folder.FullName).Faults);
    }

    [Fact]
    public void Nothing_to_join_is_said() =>
        Assert.Contains("no part of a study", PartStore.Join(Plan, folder.FullName).Faults[0], StringComparison.Ordinal);

    [Theory]
    [InlineData("seed", "was run with seed 20, and the study has 19")]
    [InlineData("inputs", "was run with other inputs")]
    [InlineData("study", "is of another study: another, not when-to-attempt")]
    public void Parts_of_another_run_are_refused(string what, string said)
    {
        var json = SomePlan.Shares();
        if (what == "seed")
            json["seed"] = 20;
        else if (what == "study")
            json["study"] = "another";
        else
            json["weights"]!["limb"] = 0.2;
        Run(new(1, 2));
        Run(new(2, 2), SomePlan.Read(json));
        var fault = PartStore.Join(Plan, folder.FullName).Faults;
        Assert.Contains(fault, f => f.Contains(said, StringComparison.Ordinal));
        Assert.Contains("missing of 2 parts: 2", fault);
    }

    [Theory]
    [InlineData("\"model\":\"", "\"model\":\"f", "its seal does not fit")]
    [InlineData("\"batch\":2", "\"batch\":3", "its seal does not fit")]
    public void A_part_that_was_changed_is_refused(string what, string by, string said)
    {
        Run(RunPart.Whole);
        var path = Assert.Single(folder.GetFiles()).FullName;
        File.WriteAllText(path, File.ReadAllText(path).Replace(what, by, StringComparison.Ordinal));
        Assert.Contains(said, PartStore.Join(Plan, folder.FullName).Faults[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_of_another_model_or_engine_are_refused()
    {
        var batches = StudyRun.Run(Plan, RunPart.Whole, 1, new Dictionary<int, Batch>(), _ => { }, _ => { });
        var head = PartHead.For(Plan, RunPart.Whole);
        File.WriteAllText(Path.Combine(folder.FullName, "a.jsonl"), PartFile.Whole(head with { Model = new('0', 64) }, batches));
        File.WriteAllText(Path.Combine(folder.FullName, "b.jsonl"), PartFile.Whole(head with { Engine = 99 }, batches));
        var faults = PartStore.Join(Plan, folder.FullName).Faults;
        Assert.Contains("another casualty model", faults[0], StringComparison.Ordinal);
        Assert.Contains("version 99 of the engine", faults[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Two_cuts_are_not_joined()
    {
        Run(new(1, 2));
        Run(new(2, 3));
        Assert.Contains(PartStore.Join(Plan, folder.FullName).Faults, f => f.Contains("different cuts: 2, 3", StringComparison.Ordinal));
    }
}
