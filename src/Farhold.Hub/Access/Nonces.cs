using System.Collections.Concurrent;
using NodaTime;

namespace Farhold.Hub.Access;

/// <summary>Requests that were answered lately, so that none is answered twice.</summary>
/// <remarks>
/// Kept in memory: a signature is good for five minutes before and after its time, so what a hub that was started anew has forgotten can be
/// replayed within that time at most. What is asked of it twice then, an owner finds in the audit.
/// </remarks>
internal sealed class Nonces
{
    /// <summary>As far as a device's clock may differ from the hub's.</summary>
    public static readonly Duration Window = Duration.FromMinutes(5);

    /// <summary>Design: more than a hundred requests a second, for twice the window.</summary>
    private const int Most = 100_000;

    private readonly ConcurrentDictionary<(string Thumb, string Nonce), Instant> used = new();

    /// <summary>False where it was used before, or so many were that none can be told apart any more.</summary>
    public bool Use(RequestSignature signature, Instant now)
    {
        if (used.Count >= Most)
            Sweep(now);
        return used.Count < Most && used.TryAdd((signature.Thumb, signature.Nonce), now);
    }

    private void Sweep(Instant now)
    {
        foreach (var (key, at) in used)
            if (now - at > 2 * Window)
                used.TryRemove(key, out _);
    }
}
