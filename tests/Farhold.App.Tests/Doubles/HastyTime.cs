using Microsoft.Extensions.Time.Testing;

namespace Farhold.App.Tests.Doubles;

/// <summary>A clock on which any work has lasted a second, so that it pauses wherever it can; a pause ends when time is advanced.</summary>
internal sealed class HastyTime(DateTimeOffset start) : FakeTimeProvider(start)
{
    private long asked;

    public override long GetTimestamp() => ++asked * TimestampFrequency;

    /// <summary>Ends one pause after another until it is so.</summary>
    public async Task PassAsync(Func<bool> until)
    {
        while (!until())
        {
            Advance(TimeSpan.FromMilliseconds(1));
            await Task.Yield();
            Xunit.TestContext.Current.CancellationToken.ThrowIfCancellationRequested();
        }
    }
}
