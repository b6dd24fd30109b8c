namespace Farhold.App.WayOut;

/// <summary>Lets the page draw and take touches in the midst of long work.</summary>
public sealed class Breath(TimeProvider time)
{
    /// <summary>Design: a long piece is noticed from 50 ms on; slow phones take several times what is meant.</summary>
    public static readonly TimeSpan Piece = TimeSpan.FromMilliseconds(8);

    private static readonly TimeSpan Blink = TimeSpan.FromMilliseconds(1);

    private long awake = time.GetTimestamp();

    /// <summary>
    /// Once a piece of work is full; <paramref name="early"/>: as soon as anything was done, because what follows takes its own time.
    /// </summary>
    /// <returns>Whether the page had its breath.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public async Task<bool> TakeAsync(CancellationToken cancellation, bool early = false)
    {
        cancellation.ThrowIfCancellationRequested();
        if (time.GetElapsedTime(awake) < (early ? Blink : Piece))
            return false;
        await Task.Delay(Blink, time, cancellation);
        awake = time.GetTimestamp();
        return true;
    }
}
