namespace Farhold.App.Tests.Doubles;

internal sealed class FakeHandOver : IHandOverPhone
{
    private Action<string>? seen;

    public bool CanShare { get; set; } = true;

    public string Shared { get; private set; } = "";

    /// <summary>Why the camera can't be used; empty: it can.</summary>
    public string Refusal { get; set; } = "";

    public bool Scanning => seen is not null;

    public Task<bool> ShareAsync(string text)
    {
        Shared = text;
        return Task.FromResult(true);
    }

    public Task<string> StartScanAsync(string video, Action<string> seen)
    {
        this.seen = Refusal.Length == 0 ? seen : null;
        return Task.FromResult(Refusal);
    }

    public void StopScan() => seen = null;

    /// <summary>The camera reads a code.</summary>
    public void See(string text) => seen?.Invoke(text);
}
