using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>A casualty's lines beside what the hub says of itself: what goes up, what comes down, and what is still missing.</summary>
internal interface IRound
{
    /// <summary>Takes in what this phone holds; what is known already costs nothing.</summary>
    /// <param name="breathe">Lets touches through in between.</param>
    Task AddAsync(ImmutableArray<ReadOnlyMemory<byte>> lines, Func<Task> breathe);

    /// <summary>By what the hub may know the casualty.</summary>
    byte[] Roots();

    /// <summary>The next message.</summary>
    /// <param name="all">The hub is known to hold nothing of it.</param>
    byte[] Message(bool all);

    /// <summary>Takes the hub's answer.</summary>
    /// <returns>Lines that are not on this phone.</returns>
    ImmutableArray<ReadOnlyMemory<byte>> Take(ReadOnlyMemory<byte> answer);

    /// <summary>What the hub last said it holds, as it is kept on the phone.</summary>
    string Said { get; }

    /// <summary>Lines that the hub has not said it holds.</summary>
    int Waiting { get; }

    /// <summary>Both hold the same.</summary>
    bool IsDone { get; }

    /// <summary>When the last entry of a device that the hub surely holds was written; null where it holds none.</summary>
    Instant? UpTo(string device);

    /// <summary>What exists and is not here, as far as the hub knows; nothing where all is here.</summary>
    KnownElsewhere Elsewhere();
}

/// <summary>Makes rounds, once what they take is loaded.</summary>
/// <remarks>What names the types of that assembly stands behind a call, as in <c>RunFactory</c>.</remarks>
internal static class Rounds
{
    /// <param name="said">What the hub last said, as kept; empty for nothing.</param>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static IRound Begin(string said) => new SyncRound(said);
}
