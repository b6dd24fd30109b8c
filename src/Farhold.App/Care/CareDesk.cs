using System.Collections.Immutable;
using System.Text;
using Farhold.App.Phone;
using Farhold.App.Shell;
using Farhold.App.Store;
using Farhold.App.Sustain;
using NodaTime;

namespace Farhold.App.Care;

/// <summary>The open casualty's record, judged now. Every screen shows this one picture and logs through it.</summary>
public sealed class CareDesk : IDisposable
{
    /// <summary>How often the picture is made anew while nothing is logged (a design choice); clocks count in between.</summary>
    private static readonly Duration Pace = Duration.FromSeconds(5);

    /// <summary>The same to save the battery, while no attempt is under way.</summary>
    private static readonly Duration SavingPace = Duration.FromSeconds(30);

    /// <summary>Design: entries read between two breaths of a start.</summary>
    private const int Piece = 200;

    private readonly Session session;
    private readonly Preferences preferences;
    private readonly Ticker ticker;
    private readonly ShiftParty party;
    private readonly IPhone phone;
    private readonly EntryReader reader = new();
    private string casualty = "";
    private ImmutableArray<StoredLine> taken = [];
    private Prepared? ready;

    public CareDesk(Session session, Preferences preferences, Ticker ticker, ShiftParty party, IPhone phone)
    {
        (this.session, this.preferences, this.ticker, this.party, this.phone) = (session, preferences, ticker, party, phone);
        session.Opening = PrepareAsync;
        session.Changed += TakeIn;
        ticker.Ticked += Tick;
        party.Changed += Show;
    }

    /// <summary>The picture has been made anew.</summary>
    public event Action? Changed;

    /// <summary>The rules for a casualty, whose id is empty where none is open, at an instant.</summary>
    public Func<string, Instant, Protocol> RulesOf { get; set; } = (_, _) => ShippedProtocol.Protocol;

    /// <summary>The rules in force now.</summary>
    public Protocol Protocol => RulesOf(session.Open?.Id ?? "", Now);

    /// <summary>Null while no casualty is open.</summary>
    public CareRecord? Record { get; private set; }

    /// <summary>Null while no casualty is open.</summary>
    public Judgement? Picture { get; private set; }

    /// <summary>The phone's clock, but never before its own newest entry: a clock set back must not shorten any limb's time.</summary>
    public Instant Now => NowOf(Record);

    /// <summary>Day and night here, and when the watch changes.</summary>
    public Rhythm Rhythm => party.Rhythm(Now);

    /// <summary>The rules have changed.</summary>
    public void JudgeAgain() => Show();

    /// <summary>What in an entry looks like a slip, and is asked back before it is logged.</summary>
    public ImmutableArray<string> Doubts(Payload payload) =>
        Plausible.Doubts(payload, payload as Payload.CasualtyOpened ?? Person, ShippedFormulary.Formulary);

    /// <summary>Fields of an entry that the record asks back until somebody says that they are right.</summary>
    public ImmutableArray<string> Questioned(Payload payload) =>
    [
        .. (payload switch
        {
            Payload.SignsTaken signs => Implausible.Of(signs, Person?.AgeYears),
            Payload.CasualtyOpened opened => Implausible.Of(opened),
            _ => [],
        }).Where(o => o.BySaying).Select(o => o.Field).Distinct(),
    ];

    private Payload.CasualtyOpened? Person => Record is { } record ? CasualtyProfile.At(record.Readings[0], Now) : null;

    /// <summary>Logs an entry of the open casualty by the carer. Confirmed only once it is on disk.</summary>
    public Task<Appended> LogAsync(Payload payload, Happened happened) =>
        LogAsync(session.Open ?? throw new InvalidOperationException("An entry needs an open casualty."), payload, happened);

    /// <summary>The same of this casualty, whichever is open by now: what takes several entries keeps to the one it began with.</summary>
    /// <remarks>Where this device judges by other rules than its record says, that is logged first.</remarks>
    public async Task<Appended> LogAsync(CasualtyHead into, Payload payload, Happened? happened = null)
    {
        if (payload is not Payload.RulesStated && session.Open?.Id == into.Id && UnstatedRules() is { } rules)
            await WriteAsync(into, rules, null);
        return await WriteAsync(into, payload, happened);
    }

    private Task<Appended> WriteAsync(CasualtyHead into, Payload payload, Happened? happened) => session.LogAsync(
        into, EntryWriting.Body(happened ?? Happened.At(session.Now), session.Now, preferences.Carer, into.Practice, payload));

    /// <summary>The rules in force, if the record does not say them yet; a record that only ever knew the shipped ones need not.</summary>
    private Payload.RulesStated? UnstatedRules()
    {
        var rules = RulesWords.Stated(Protocol);
        var stated = Record?.Readings[0].Of(Kind.RulesStated).LastOrDefault(r => r.Id.Device == session.Device)?.As<Payload.RulesStated>();
        return stated is null ? rules.Standing is null ? null : rules : stated.SameRules(rules) ? null : rules;
    }

    public void Dispose()
    {
        session.Changed -= TakeIn;
        ticker.Ticked -= Tick;
        party.Changed -= Show;
    }

    private void TakeIn()
    {
        if (session.Open is not { } open)
        {
            (casualty, taken, Record, Picture) = ("", [], null, null);
            Changed?.Invoke();
            return;
        }

        var lines = session.Lines;
        var goesOn = casualty == open.Id && Record is not null && GoOn(taken, lines);
        if (goesOn && lines.Length == taken.Length)
            return;
        var prepared = !goesOn && ready is { } r && r.Casualty == open.Id && GoOn(r.Lines, lines) ? r : null;
        ready = null;
        var from = goesOn ? taken.Length : prepared?.Lines.Length ?? 0;
        Record = goesOn ? Record : prepared?.Record ?? Empty();
        for (var i = from; i < lines.Length; i++)
            Add(Record!, lines[i], i + 1);
        (casualty, taken) = (open.Id, lines);
        Show(from == lines.Length && ReferenceEquals(prepared?.Picture.Protocol, Protocol) ? prepared!.Picture : null);
    }

    /// <summary>What opening a casualty takes, in pieces: on a slow phone it lasts seconds, and touches come through in between.</summary>
    private async Task PrepareAsync(string of, ImmutableArray<StoredLine> lines)
    {
        var before = ready is { } r && r.Casualty == of && GoOn(r.Lines, lines) ? r : null;
        var record = before?.Record ?? Empty();
        for (var i = before?.Lines.Length ?? 0; i < lines.Length; i++)
        {
            if (i % Piece == 0)
                await phone.QuietAsync();
            Add(record, lines[i], i + 1);
        }

        await phone.QuietAsync();
        var picture = JudgeNow(record, of);
        await phone.QuietAsync();
        ready = new(of, lines, record, picture);
    }

    private static bool GoOn(ImmutableArray<StoredLine> before, ImmutableArray<StoredLine> lines) =>
        lines.Length >= before.Length && (before.IsEmpty || ReferenceEquals(lines[before.Length - 1], before[^1]));

    private CareRecord Empty() => new([], []) { Writer = session.Device };

    private void Add(CareRecord record, StoredLine line, int number)
    {
        var bytes = Encoding.UTF8.GetBytes(line.Text);
        if (line.State == LineState.Claimed)
        {
            record.Add(new DamagedLine(number, new(bytes), [new("record", number, 1, "it says that this phone wrote it, which is not so")]));
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

    private void Tick()
    {
        if (Picture is { } picture && (Now - picture.At >= PaceOf(picture) || Now < picture.At))
            Show();
    }

    private Duration PaceOf(Judgement picture) =>
        preferences.Look == Look.Saving && picture.Limbs.All(l => l.Attempt is null) && picture.Observed.All(w => w.Attempt is null) ? SavingPace : Pace;

    private Instant NowOf(CareRecord? record) => record?.LastWritten is { } last ? Instant.Max(ticker.Now, last) : ticker.Now;

    private Judgement JudgeNow(CareRecord record, string of)
    {
        var now = NowOf(record);
        return Judge.At(record, RulesOf(of, now), now, party.Rhythm(now));
    }

    private void Show() => Show(null);

    private void Show(Judgement? judged)
    {
        Picture = Record is null ? null : judged ?? JudgeNow(Record, casualty);
        Changed?.Invoke();
    }

    private sealed record Prepared(string Casualty, ImmutableArray<StoredLine> Lines, CareRecord Record, Judgement Picture);
}
