using System.Collections.Immutable;
using System.Text;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>Makes a record of stored lines, and a picture of the record.</summary>
public sealed class Judging(ILogStore store, Ticker ticker, RulesInForce rules, ShiftParty party, IPhone phone, KeptElsewhere elsewhere)
{
    /// <summary>Design: entries read between two breaths of a start.</summary>
    private const int Piece = 200;

    private readonly EntryReader reader = new();
    private Prepared? ready;

    /// <summary>
    /// The phone's clock, but never before the record's own newest entry: a clock set back must not shorten any limb's time.
    /// </summary>
    public Instant NowOf(CareRecord? record) => record?.LastWritten is { } last ? Instant.Max(ticker.Now, last) : ticker.Now;

    public Judgement Judge(CareRecord record, string casualty)
    {
        var now = NowOf(record);
        return Verdicts.Judge.At(record, rules.Of(casualty, now), now, party.Rhythm(now));
    }

    /// <summary>What opening a casualty takes, in pieces: on a slow phone it lasts seconds, and touches come through in between.</summary>
    public async Task PrepareAsync(string casualty, ImmutableArray<StoredLine> lines)
    {
        var before = ready is { } r && r.Casualty == casualty && GoOn(r.Lines, lines) ? r : null;
        ready = await MakeAsync(casualty, lines, before?.Record ?? Empty(casualty), before?.Lines.Length ?? 0);
    }

    /// <summary>The record and the picture of a casualty that is not opened, made in the same pieces.</summary>
    public async Task<Prepared> LookAtAsync(string casualty) =>
        await MakeAsync(casualty, await store.ReadAsync(casualty), Empty(casualty), 0);

    private async Task<Prepared> MakeAsync(string casualty, ImmutableArray<StoredLine> lines, CareRecord record, int from)
    {
        for (var i = from; i < lines.Length; i++)
        {
            if (i % Piece == 0)
                await phone.QuietAsync();
            Add(record, lines[i], i + 1);
        }

        await phone.QuietAsync();
        LookElsewhere(record, casualty);
        var picture = Judge(record, casualty);
        await phone.QuietAsync();
        return new(casualty, lines, record, picture);
    }

    /// <summary>What was prepared of these lines, or of the first of them; null for nothing. It is handed out once.</summary>
    public Prepared? Take(string casualty, ImmutableArray<StoredLine> lines)
    {
        var taken = ready is { } r && r.Casualty == casualty && GoOn(r.Lines, lines) ? r : null;
        ready = null;
        return taken;
    }

    /// <summary>A record of a casualty without a line yet, which knows what exists of it elsewhere.</summary>
    public CareRecord Empty(string casualty) => new([], []) { Writer = store.Device, Elsewhere = elsewhere.Of(casualty) };

    /// <summary>What exists of a casualty's record elsewhere may have changed.</summary>
    /// <returns>Whether it has.</returns>
    public bool LookElsewhere(CareRecord record, string casualty)
    {
        if (ReferenceEquals(record.Elsewhere, elsewhere.Of(casualty)))
            return false;
        record.Elsewhere = elsewhere.Of(casualty);
        return true;
    }

    /// <param name="number">Of the line, from 1.</param>
    public void Add(CareRecord record, StoredLine line, int number)
    {
        var bytes = Encoding.UTF8.GetBytes(line.Text);
        if (line.State == LineState.Claimed)
        {
            record.Add(
                new DamagedLine(number, new(bytes), [new("record", number, 1, "it says that this phone wrote it, which is not so")])
            );
            return;
        }

        switch (reader.Read(bytes, "record", number))
        {
            case Read<Entry>.Usable usable:
                record.Add(usable.Value, line.Received);
                break;
            case Read<Entry>.Refused refused:
                record.Add(new DamagedLine(number, new(bytes), refused.Refusals));
                break;
        }
    }

    /// <summary>Whether lines are those before and perhaps more.</summary>
    public static bool GoOn(ImmutableArray<StoredLine> before, ImmutableArray<StoredLine> lines) =>
        lines.Length >= before.Length && (before.IsEmpty || ReferenceEquals(lines[before.Length - 1], before[^1]));
}

/// <summary>A record and its picture, made before it is shown.</summary>
public sealed record Prepared(string Casualty, ImmutableArray<StoredLine> Lines, CareRecord Record, Judgement Picture);
