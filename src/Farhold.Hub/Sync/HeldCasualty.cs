using System.Collections.Immutable;
using Farhold.Hub.Access;
using Farhold.Hub.Storage;
using Farhold.Sync;
using NodaTime;

namespace Farhold.Hub.Sync;

/// <summary>One casualty's lines in memory, never more than are in the store; one request at a time looks at them.</summary>
/// <remarks>What another hub has written, or erased, is seen at the next turn.</remarks>
internal sealed class HeldCasualty(string id, IRecordStore store, Vouched vouched) : IDisposable
{
    /// <summary>Design: so often at most it is written when a device was last heard.</summary>
    private static readonly Duration HeardEvery = Duration.FromMinutes(1);

    private readonly SemaphoreSlim gate = new(1);
    private readonly IRecordStore store = store;
    private readonly Vouched vouched = vouched;
    private readonly Dictionary<string, int> sealedTo = [];
    private LineSet? lines;
    private long position;
    private ImmutableDictionary<string, Head> said = ImmutableDictionary<string, Head>.Empty;
    private ImmutableDictionary<string, Instant> heard = ImmutableDictionary<string, Instant>.Empty;

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

            if (lines is null || store.IsShared)
            {
                heard = await vouched.HeardAsync(id, cancel);
                said = await vouched.SaidAsync(id, cancel);
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

        /// <summary>What devices have said they hold; of some of it not all is here.</summary>
        public IEnumerable<Head> Said => of.said.Values;

        /// <summary>When anybody last exchanged lines; null: nobody since it was named.</summary>
        public Instant? Heard => of.heard.IsEmpty ? null : of.heard.Values.Max();

        /// <summary>The record as it is at the hub, with what is known to be missing as a doubt, and the time to judge it at.</summary>
        public (CareRecord Record, Instant At) Record(Instant now)
        {
            using var text = new MemoryStream();
            foreach (var line in Lines.Lines)
            {
                text.Write(line.Bytes.Span);
                text.WriteByte((byte)'\n');
            }

            var (record, at) = RecordReader.Read(text.ToArray(), "record") is Read<RecordFile>.Usable(var file)
                ? CareRecord.In(file, now)
                : (new CareRecord([], []), now);
            record.Elsewhere = KnownMissing.Here(Lines, Said);
            return (record, at);
        }

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

        /// <summary>
        /// An exchange with a device has ended, whole or broken off: what it said it holds is kept as far as it is lacking here.
        /// </summary>
        /// <remarks>A device's newest word stands in place of its older ones.</remarks>
        public async Task EndAsync(Device device, Head head, Instant now)
        {
            var lacking = KnownMissing.IsAny(Lines, head);
            if (lacking && of.said.GetValueOrDefault(device.Thumb)?.Have.Equals(head.Have) != true)
                await SayAsync(device.Thumb, head, now);
            foreach (var (thumb, old) in of.said)
                if (!KnownMissing.IsAny(Lines, old) || (thumb == device.Thumb && !lacking))
                    await SayAsync(thumb, null, now);
            var last = of.heard.GetValueOrDefault(device.Thumb);
            of.heard = of.heard.SetItem(device.Thumb, now);
            if (now - last >= HeardEvery)
                await of.vouched.HeardAsync(of.Id, device.Thumb, now, CancellationToken.None);
        }

        /// <summary>Keeps a device's signature over its own lines, where it reaches further than before.</summary>
        public async Task SealAsync(Device device, Head head, ReadOnlyMemory<byte> line, Caller by, Instant now)
        {
            var number = Lines.Confirmed(device.Id, head.Have);
            if (number == 0 || of.sealedTo.GetValueOrDefault(device.Thumb) >= number)
                return;
            await of.vouched.SealAsync(
                of.Id,
                new(device.Thumb, device.Id, number, line.ToArray(), by.Base, by.Signature.Value, now),
                CancellationToken.None
            );
            of.sealedTo[device.Thumb] = number;
        }

        public void Dispose() => of.gate.Release();

        private async Task SayAsync(string thumb, Head? head, Instant now)
        {
            await of.vouched.SaidAsync(of.Id, thumb, head, now, CancellationToken.None);
            of.said = head is null ? of.said.Remove(thumb) : of.said.SetItem(thumb, head);
        }
    }

    /// <summary>What is in memory is not sure to be in the store: it is read anew.</summary>
    private void Forget() => (lines, position) = (null, 0);
}
