using System.Collections.Immutable;
using Farhold.Hub.Storage;
using Farhold.Sync;
using NodaTime;

namespace Farhold.Hub.Sync;

/// <summary>One casualty's lines in memory, never more than are in the store; one request at a time looks at them.</summary>
/// <remarks>What another hub has written, or erased, is seen at the next turn.</remarks>
internal sealed class HeldCasualty(string id, IRecordStore store) : IDisposable
{
    private readonly SemaphoreSlim gate = new(1);
    private readonly IRecordStore store = store;
    private LineSet? lines;
    private long position;

    public string Id => id;

    /// <summary>Waits for the lines; they are given back when the result is disposed.</summary>
    /// <returns>Null where the store knows no such casualty.</returns>
    /// <exception cref="ErasedException">It was erased.</exception>
    public async Task<Turn?> TakeTurnAsync(CancellationToken cancel)
    {
        await gate.WaitAsync(cancel);
        var turn = new Turn(this);
        try
        {
            if (await store.SinceAsync(id, position, cancel) is not { } stored)
            {
                turn.Dispose();
                return null;
            }

            lines ??= new();
            foreach (var line in stored)
            {
                lines.Add(line.Bytes);
                position = line.Position;
            }
        }
        catch
        {
            Forget();
            turn.Dispose();
            throw;
        }

        return turn;
    }

    public void Dispose() => gate.Dispose();

    internal sealed class Turn(HeldCasualty of) : IDisposable
    {
        public LineSet Lines => of.lines!;

        /// <summary>Keeps what is new of some lines, first in the store.</summary>
        /// <returns>Why one of them could not be taken; null where all were. Those before it are kept.</returns>
        public async Task<Addition?> AddAsync(ImmutableArray<ReadOnlyMemory<byte>> added, string via, Instant at)
        {
            Addition? objection = null;
            var fresh = ImmutableArray.CreateBuilder<HeldLine>();
            foreach (var bytes in added)
            {
                var outcome = Lines.Add(bytes);
                if (outcome == Addition.New)
                    fresh.Add(HeldLine.Of(bytes)!);
                if (outcome is not (Addition.New or Addition.Held or Addition.Blank))
                    objection ??= outcome;
            }

            if (fresh.Count == 0)
                return objection;
            try
            {
                await of.store.AppendAsync(new(of.Id, fresh.ToImmutable(), via, at), CancellationToken.None);
            }
            catch
            {
                of.Forget();
                throw;
            }

            return objection;
        }

        public void Dispose() => of.gate.Release();
    }

    /// <summary>What is in memory is not sure to be in the store: it is read anew.</summary>
    private void Forget() => (lines, position) = (null, 0);
}
