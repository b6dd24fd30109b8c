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

    private readonly Session session;
    private readonly Preferences preferences;
    private readonly Ticker ticker;
    private readonly WatchParty party;
    private readonly EntryReader reader = new();
    private string casualty = "";
    private ImmutableArray<StoredLine> taken = [];

    public CareDesk(Session session, Preferences preferences, Ticker ticker, WatchParty party)
    {
        (this.session, this.preferences, this.ticker, this.party) = (session, preferences, ticker, party);
        session.Changed += TakeIn;
        ticker.Ticked += Tick;
        party.Changed += Show;
    }

    /// <summary>The picture has been made anew.</summary>
    public event Action? Changed;

    public Protocol Protocol { get; private set; } = ShippedProtocol.Protocol;

    /// <summary>Null while no casualty is open.</summary>
    public CareRecord? Record { get; private set; }

    /// <summary>Null while no casualty is open.</summary>
    public Judgement? Picture { get; private set; }

    /// <summary>The phone's clock, but never before the newest entry: a clock set back must not shorten any limb's time.</summary>
    public Instant Now => Record?.LastRecorded is { } last ? Instant.Max(ticker.Now, last) : ticker.Now;

    /// <summary>Day and night here, and when the watch changes.</summary>
    public Rhythm Rhythm => party.Rhythm(Now);

    /// <summary>Judges by this protocol from now on.</summary>
    public void Use(Protocol protocol)
    {
        Protocol = protocol;
        Show();
    }

    /// <summary>What in an entry looks like a slip, and is asked back before it is logged.</summary>
    public ImmutableArray<string> Doubts(Payload payload) => Plausible.Doubts(
        payload, payload as Payload.CasualtyOpened ?? (Record is { } record ? Circumstances.Opened(record.Readings[0], Now) : null), ShippedFormulary.Formulary);

    /// <summary>Logs an entry of the open casualty by the carer. Confirmed only once it is on disk.</summary>
    public Task<Appended> LogAsync(Payload payload, Happened happened) =>
        LogAsync(session.Open ?? throw new InvalidOperationException("An entry needs an open casualty."), payload, happened);

    /// <summary>The same of this casualty, whichever is open by now: what takes several entries keeps to the one it began with.</summary>
    public Task<Appended> LogAsync(CasualtyHead into, Payload payload, Happened? happened = null) => session.LogAsync(
        into, EntryWriting.Body(happened ?? Happened.At(session.Now), session.Now, preferences.Carer, into.Practice, payload));

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
        var goesOn = casualty == open.Id && Record is not null && lines.Length >= taken.Length
            && (taken.IsEmpty || ReferenceEquals(lines[taken.Length - 1], taken[^1]));
        if (goesOn && lines.Length == taken.Length)
            return;
        Record = goesOn ? Record : new CareRecord([], []) { Writer = session.Device };
        for (var i = goesOn ? taken.Length : 0; i < lines.Length; i++)
            Add(Record!, lines[i].Text, i + 1);
        (casualty, taken) = (open.Id, lines);
        Show();
    }

    private void Add(CareRecord record, string line, int number)
    {
        var bytes = Encoding.UTF8.GetBytes(line);
        switch (reader.Read(bytes, "record", number))
        {
            case Read<Entry>.Usable usable:
                record.Add(usable.Value);
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
        preferences.Look == Look.Saving && picture.Limbs.All(l => l.Attempt is null) && picture.Watched.All(w => w.Attempt is null) ? SavingPace : Pace;

    private void Show()
    {
        Picture = Record is null ? null : Judge.At(Record, Protocol, Now, Rhythm);
        Changed?.Invoke();
    }
}
