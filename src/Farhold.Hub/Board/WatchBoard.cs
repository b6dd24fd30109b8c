using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Data.Common;
using System.Threading.Channels;
using Farhold.Hub.Access;
using Farhold.Hub.Storage;
using Farhold.Hub.Sync;
using Farhold.Sync;
using NodaTime;

namespace Farhold.Hub.Board;

/// <summary>Every casualty judged: when lines of it arrive, and again and again as time passes.</summary>
/// <remarks>
/// A judgement takes a tenth of a millisecond, so all are judged every few seconds instead of keeping a list of the moments at which each
/// may change; only what has changed goes out.
/// </remarks>
internal sealed class WatchBoard(SyncDesk desk, AccessStore access, HubRules rules, TimeProvider clock) : BackgroundService
{
    /// <summary>Design: as long as a verdict may be late on the board.</summary>
    public static readonly TimeSpan Sweep = TimeSpan.FromSeconds(5);

    /// <summary>Events that wait for one who watches; with more, that one begins again.</summary>
    private const int MostWaiting = 4_000;

    private readonly ConcurrentDictionary<string, Standing> standings = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, (long Version, CareRecord Record, Instant At)> records = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<Channel<Standing>, byte> watching = new();
    private readonly Channel<string> changed = Channel.CreateUnbounded<string>();
    private readonly SemaphoreSlim judging = new(1); // a record is not for several at once

    /// <summary>Lines of a casualty have arrived, or it is known of more that has not.</summary>
    public void Changed(string id)
    {
        records.TryRemove(id, out _);
        changed.Writer.TryWrite(id);
    }

    /// <summary>Those that a device may see.</summary>
    public async Task<ImmutableArray<Standing>> AllAsync(Device device, Reach reach, CancellationToken cancel)
    {
        var all = ImmutableArray.CreateBuilder<Standing>();
        foreach (var (casualty, team, given) in await access.CasualtiesAsync(cancel))
            if (given.Contains(device.Thumb) || (reach == Reach.Team && team == device.Team))
                if ((standings.GetValueOrDefault(casualty) ?? await JudgeAsync(casualty, cancel)) is { } one)
                    all.Add(one);
        return all.ToImmutable();
    }

    /// <summary>What changes from now on, of whatever casualty; ends where the reader is too slow.</summary>
    public ChannelReader<Standing> Watch(CancellationToken until)
    {
        var channel = Channel.CreateBounded<Standing>(MostWaiting);
        watching[channel] = 0;
        until.Register(() => watching.TryRemove(channel, out _));
        return channel.Reader;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        foreach (var casualty in await CasualtiesAsync(stoppingToken))
            await GuardAsync(casualty, stoppingToken);
        using var timer = new PeriodicTimer(Sweep, clock);
        var tick = timer.WaitForNextTickAsync(stoppingToken).AsTask();
        var news = changed.Reader.WaitToReadAsync(stoppingToken).AsTask();
        while (!stoppingToken.IsCancellationRequested)
        {
            await Task.WhenAny(tick, news);
            if (news.IsCompletedSuccessfully)
            {
                var some = new HashSet<string>(StringComparer.Ordinal);
                while (changed.Reader.TryRead(out var id))
                    some.Add(id);
                foreach (var id in some)
                    await GuardAsync(id, stoppingToken);
                news = changed.Reader.WaitToReadAsync(stoppingToken).AsTask();
            }

            if (tick.IsCompletedSuccessfully)
            {
                foreach (var id in (await CasualtiesAsync(stoppingToken)).Union(standings.Keys)) // another hub may have opened some
                    await GuardAsync(id, stoppingToken);
                tick = timer.WaitForNextTickAsync(stoppingToken).AsTask();
            }
        }
    }

    public override void Dispose()
    {
        judging.Dispose();
        base.Dispose();
    }

    /// <summary>One casualty that can't be judged must not end the judging of the others; it stays as it was last seen.</summary>
    private async Task GuardAsync(string id, CancellationToken cancel)
    {
        try
        {
            await JudgeAsync(id, cancel);
        }
        catch (Exception e) when (e is IOException || Outage.IsOne(e))
        {
            // The store can't be read now; the next sweep asks again.
        }
    }

    /// <summary>Those that there are, once the database can be asked.</summary>
    private async Task<ImmutableArray<string>> CasualtiesAsync(CancellationToken cancel)
    {
        while (true)
            try
            {
                return [.. (await access.CasualtiesAsync(cancel)).Select(c => c.Casualty)];
            }
            catch (DbException e) when (Outage.IsOne(e))
            {
                await Task.Delay(Sweep, clock, cancel);
            }
    }

    private async Task<Standing?> JudgeAsync(string id, CancellationToken cancel)
    {
        await judging.WaitAsync(cancel);
        try
        {
            return await JudgeAloneAsync(id, cancel);
        }
        catch (ErasedException)
        {
            standings.TryRemove(id, out _);
            records.TryRemove(id, out _);
            return null;
        }
        finally
        {
            judging.Release();
        }
    }

    private async Task<Standing?> JudgeAloneAsync(string id, CancellationToken cancel)
    {
        var now = clock.Now();
        CareRecord record;
        Instant? heard;
        int? missing;
        using (var turn = await desk.Casualty(id).TakeTurnAsync(cancel))
        {
            if (turn is null)
            {
                standings.TryRemove(id, out _);
                return null;
            }

            (heard, missing) = (turn.Heard, Standing.Missing(turn.Lines, KnownMissing.Here(turn.Lines, turn.Said)));
            record = RecordOf(id, turn, now);
        }

        // Where every device wrote later than the hub's clock says, it is the clock that is wrong.
        var at =
            record.LastRecorded is { } last && records.TryGetValue(id, out var kept) ? Instant.Max(now, Instant.Min(kept.At, last)) : now;
        if (rules.At(at) is not Read<Rulebook>.Usable(var book))
            return null;
        var standing = Standing.Of(id, record, Judge.At(record, book, at), heard, missing);
        if (standings.TryGetValue(id, out var before) && before.Json == standing.Json)
            return before;
        standings[id] = standing;
        foreach (var (channel, _) in watching)
            if (!channel.Writer.TryWrite(standing))
                channel.Writer.TryComplete();
        return standing;
    }

    private CareRecord RecordOf(string id, HeldCasualty.Turn turn, Instant now)
    {
        if (records.TryGetValue(id, out var kept) && kept.Version == turn.Lines.Count)
            return kept.Record;
        var (record, at) = turn.Record(now);
        records[id] = (turn.Lines.Count, record, at);
        return record;
    }
}
