namespace Farhold.App.Tests.Doubles;

internal sealed class FakePractice : IPractice
{
    public bool IsRehearsing { get; set; }

    public string Run { get; set; } = "";

    public string Past { get; set; } = "";

    /// <summary>Where the tab was sent when a rehearsal ended; null while none has.</summary>
    public string? EndedTo { get; private set; }

    public bool HasModel { get; set; } = true;

    public bool KeepRun(string run)
    {
        Run = run;
        return true;
    }

    public bool KeepPast(string past)
    {
        Past = past;
        return true;
    }

    public Task<bool> BeginAsync(string run)
    {
        (Run, IsRehearsing) = (run, true);
        return Task.FromResult(true);
    }

    public bool GoOn() => IsRehearsing = true;

    public Task EndAsync(string address)
    {
        (Run, IsRehearsing, EndedTo) = ("", false, address);
        return Task.CompletedTask;
    }

    public Task LoadModelAsync() => HasModel ? Task.CompletedTask : Task.FromException(new IOException("No network."));
}
