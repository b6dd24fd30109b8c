namespace Farhold.Cli;

/// <summary>Ends the work, not the process, at the first Ctrl+C; the second ends the process as usual.</summary>
internal sealed class Interrupt : IDisposable
{
    private readonly CancellationTokenSource source;

    public Interrupt(CancellationToken outer)
    {
        source = CancellationTokenSource.CreateLinkedTokenSource(outer);
        Console.CancelKeyPress += Pressed;
    }

    public CancellationToken Token => source.Token;

    public void Dispose()
    {
        Console.CancelKeyPress -= Pressed;
        source.Dispose();
    }

    private void Pressed(object? sender, ConsoleCancelEventArgs pressed)
    {
        pressed.Cancel = !source.IsCancellationRequested;
        source.Cancel();
    }
}
