namespace Farhold.App.Tests.Doubles;

internal sealed class FakePositions : IPositions
{
    public bool Runs { get; private set; }

    public Fix Now { get; set; } = new(FixState.Waiting);

    public void Start() => Runs = true;

    public void Stop() => Runs = false;

    public Fix Latest() => Now;
}
