namespace Farhold.App.Tests.Doubles;

internal sealed class FakeOfflineCopy : IOfflineCopy
{
    public event Action? Changed;

    public CopyState State { get; set; } = new(true, "present", "", false, 1);

    public CopyCheck Check { get; set; } = new(50, []);

    public int Started { get; private set; }

    public Task<CopyState> StateAsync() => Task.FromResult(State);

    public Task LookAsync() => Task.CompletedTask;

    public Task ChangeAsync()
    {
        Started++;
        return Task.CompletedTask;
    }

    public Task<CopyCheck> VerifyAsync() => Task.FromResult(Check);

    public void Becomes(CopyState state)
    {
        State = state;
        Changed?.Invoke();
    }
}
