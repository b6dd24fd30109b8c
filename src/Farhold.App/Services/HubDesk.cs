using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>Why the hub does not hold what it should.</summary>
public enum HubTrouble
{
    None,

    /// <summary>It was not reached.</summary>
    NotReached,

    /// <summary>Nobody has compared the digits yet.</summary>
    Unconfirmed,

    /// <summary>This phone was let out.</summary>
    Out,

    /// <summary>The casualty is another team's at the hub.</summary>
    OtherTeam,

    /// <summary>The hub knows several that this may be: a person has to say.</summary>
    SeveralMatch,

    /// <summary>The record was erased at the hub.</summary>
    Erased,

    /// <summary>The hub has no room.</summary>
    Full,

    /// <summary>It refuses, for a reason that this version does not know.</summary>
    Refused,
}

/// <summary>Brings records to the hub and what is there to this phone, by itself; without a hub it does nothing at all.</summary>
public sealed class HubDesk : IDisposable
{
    private const string MemberKey = "hub";

    /// <summary>Entries logged within so long of each other go together.</summary>
    private static readonly TimeSpan Together = TimeSpan.FromSeconds(2);

    /// <summary>From one poll to the next: doubled while nothing comes of it.</summary>
    private static readonly TimeSpan Soonest = TimeSpan.FromSeconds(15),
        Latest = TimeSpan.FromMinutes(5);

    /// <summary>While an answer is awaited.</summary>
    private static readonly TimeSpan Awaiting = TimeSpan.FromSeconds(30);

    /// <summary>Exchanges of one casualty in a row. What is left then goes with the next poll.</summary>
    private const int MostExchanges = 12;

    private const string Lines = "application/jsonl",
        JsonType = "application/json";

    private readonly IHubLine line;
    private readonly Session session;
    private readonly ILogStore store;
    private readonly IPhone phone;
    private readonly Ticker ticker;
    private readonly TimeProvider time;
    private readonly KeptElsewhere elsewhere;
    private readonly Background background;
    private readonly CareDesk care;
    private readonly Dictionary<string, IRound> rounds = new(StringComparer.Ordinal);
    private readonly Dictionary<string, AtHub> kept = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HubTrouble> troubles = new(StringComparer.Ordinal);
    private TimeSpan pace = Soonest;
    private long due;
    private int seen;
    private bool busy;

    public HubDesk(
        IHubLine line,
        Session session,
        ILogStore store,
        IPhone phone,
        Ticker ticker,
        TimeProvider time,
        KeptElsewhere elsewhere,
        Background background,
        CareDesk care
    )
    {
        (this.line, this.session, this.store, this.phone) = (line, session, store, phone);
        (this.ticker, this.time, this.elsewhere) = (ticker, time, elsewhere);
        (this.background, this.care) = (background, care);
    }

    /// <summary>Something shown has changed.</summary>
    public event Action? Changed;

    /// <summary>Null while this phone belongs to no hub.</summary>
    public HubMember? Member { get; private set; }

    /// <summary>Of the last request; of a casualty see <see cref="TroubleWith"/>.</summary>
    public HubTrouble Trouble { get; private set; }

    /// <summary>When it last answered, by this phone's clock.</summary>
    public Instant? Heard { get; private set; }

    private Instant Now => Instant.FromDateTimeOffset(time.GetUtcNow());

    public async Task StartAsync()
    {
        line.Woken += Wake;
        ticker.Ticked += Tick;
        session.Changed += LookAtSession;
        if (HubMember.Read(phone.Get(MemberKey)) is not { } member || await line.KeyAsync() is not { } key || key.Thumb != member.Thumb)
            return;
        Member = member;
        Due(TimeSpan.Zero);
    }

    public AtHub Of(string casualty) =>
        kept.TryGetValue(casualty, out var held) ? held : kept[casualty] = AtHub.Read(phone.Get(AtHub.Key(casualty)));

    public HubTrouble TroubleWith(string casualty) => Trouble != HubTrouble.None ? Trouble : troubles.GetValueOrDefault(casualty);

    /// <summary>Lines of the open casualty that are not known to be at the hub.</summary>
    public int Waiting(CasualtyHead open) => Math.Max(Of(open.Id).Waiting, session.Lines.Length - Of(open.Id).Lines);

    /// <summary>Joins the hub by the code of an invitation.</summary>
    /// <returns>Empty; else the code of the refusal, <c>key</c> where this browser can't keep one, or <c>not-reached</c>.</returns>
    public async Task<string> JoinAsync(string code, string name)
    {
        if (await line.MakeKeyAsync() is not { } key)
            return "key";
        var body = Encoding.UTF8.GetBytes(
            Json.Text(w =>
            {
                w.WriteString("code", code);
                w.WriteString("key", key.Public);
                w.WriteString("device", store.Device);
                w.WriteString("name", name);
            })
        );
        var answer = await line.AskAsync("POST", "/hub/devices", JsonType, body);
        if (!answer.IsGood)
            return answer.IsReached ? (answer.Code.Length > 0 ? answer.Code : "refused") : "not-reached";
        Take(answer);
        (pace, Trouble) = (Soonest, HubTrouble.None);
        Due(TimeSpan.Zero);
        return "";
    }

    /// <summary>Leaves the hub: what is there stays there, and this phone's key is gone.</summary>
    public async Task LeaveAsync()
    {
        Member = null;
        phone.Set(MemberKey, "");
        await line.ForgetKeyAsync();
        rounds.Clear();
        Changed?.Invoke();
    }

    /// <summary>Asks now, whatever the pace is.</summary>
    public Task LookNowAsync() => RunAsync();

    /// <summary>A request of a screen.</summary>
    public async Task<HubAnswer> AskAsync(string method, string path, string json = "")
    {
        var answer = await line.AskAsync(method, path, json.Length > 0 || method == "POST" ? JsonType : "", Encoding.UTF8.GetBytes(json));
        if (answer.IsReached)
            Heard = Now;
        return answer;
    }

    /// <summary>Brings a casualty of the hub to this device, and answers by which id it is here; null where that failed.</summary>
    public async Task<string?> FetchAsync(string hubId, string alias)
    {
        if (session.Casualties.FirstOrDefault(c => Of(c.Id).Id == hubId) is { } here)
            return here.Id;
        var head = new CasualtyHead(store.NewCasualtyId(), alias, false, Now);
        Keep(head.Id, AtHub.Nothing with { Id = hubId });
        await ExchangeAsync(head, []);
        await session.ListAgainAsync();
        return session.Casualties.Any(c => c.Id == head.Id) ? head.Id : null;
    }

    public void Dispose()
    {
        line.Woken -= Wake;
        ticker.Ticked -= Tick;
        session.Changed -= LookAtSession;
    }

    private void Wake()
    {
        pace = Soonest;
        Due(TimeSpan.Zero);
    }

    private void LookAtSession()
    {
        if (Member is null || session.Open is not { Practice: false } || session.Lines.Length == seen)
            return;
        seen = session.Lines.Length;
        pace = Soonest;
        Due(Together);
    }

    private void Due(TimeSpan after) => due = time.GetTimestamp() + (long)(after.TotalSeconds * time.TimestampFrequency);

    private void Tick()
    {
        if (Member is { IsOut: false } && !busy && time.GetTimestamp() >= due)
            background.Start(RunAsync);
    }

    private async Task RunAsync()
    {
        if (busy || Member is not { IsOut: false })
            return;
        busy = true;
        try
        {
            var news = await LookAsync();
            pace = news ? Soonest : pace * 2;
            pace = pace > Latest ? Latest : pace;
        }
        finally
        {
            busy = false;
            var wait = IsAwaiting && pace > Awaiting ? Awaiting : pace;
            Due(wait * (0.9 + (0.2 * Jitter()))); // many phones that lost one network do not come back at once
            Changed?.Invoke();
        }
    }

    /// <summary>From 0 to 1, another for each phone and time; nothing depends on it but when it asks.</summary>
    private double Jitter() => (time.GetTimestamp() / 7 % 1000) / 1000.0;

    /// <summary>A question of the open casualty has no answer yet.</summary>
    private bool IsAwaiting => care.Record is { } record && Correspondence.OpenQuestion(record.Readings[0], care.Now) is not null;

    /// <returns>Whether anything came, or went.</returns>
    private async Task<bool> LookAsync()
    {
        if (Member is { IsConfirmed: false } || Heard is null)
        {
            var me = await AskAsync("GET", "/hub/me");
            if (me.IsGood)
                Take(me);
            else
                Note(me);
            if (!me.IsGood || Member is { IsConfirmed: false })
            {
                Trouble = me.IsGood ? HubTrouble.Unconfirmed : Trouble;
                return false;
            }
        }

        if (!await line.LoadAsync())
        {
            Trouble = HubTrouble.NotReached;
            return false;
        }

        Trouble = HubTrouble.None;
        var news = false;
        var open = session.Open?.Id;
        foreach (var head in session.Casualties.Where(c => !c.Practice).OrderByDescending(c => c.Id == open).ToArray())
        {
            if (head.Id != open && !IsToAsk(head))
                continue;
            news |= await ExchangeAsync(head, await line.LinesAsync(head.Id));
            if (Trouble != HubTrouble.None)
                return false;
        }

        return news;
    }

    /// <summary>One that is not open is asked about where it has changed here, or was not heard of for a while.</summary>
    private bool IsToAsk(CasualtyHead head) =>
        Of(head.Id) is var at
        && (
            at.Waiting > 0
            || at.Lines < head.Entries
            || at.Heard is not { } heard
            || Now - heard > Duration.FromTimeSpan(Latest)
            || Now < heard
        );

    /// <summary>Exchanges lines of one casualty until both hold the same, or it goes no further.</summary>
    private async Task<bool> ExchangeAsync(CasualtyHead head, ImmutableArray<ReadOnlyMemory<byte>> here)
    {
        if (!await line.LoadAsync())
            return false;
        var at = Of(head.Id);
        if (here.Length < at.Lines)
            rounds.Remove(head.Id); // something was taken back: a set of lines only grows
        if (!rounds.TryGetValue(head.Id, out var round))
            rounds[head.Id] = round = Rounds.Begin(at.Said);
        await round.AddAsync(here, phone.QuietAsync);
        var isNew = false;
        if (at.Id.Length == 0)
        {
            var found = await AskAsync("POST", "/hub/casualties/find", Encoding.UTF8.GetString(round.Roots()));
            if (!found.IsGood)
                return Note(found, head.Id);
            using var json = JsonDocument.Parse(found.Body);
            isNew = json.RootElement.GetProperty("opened").GetBoolean();
            at = Keep(head.Id, at with { Id = json.RootElement.Text("id") });
        }

        var news = false;
        for (var exchange = 0; exchange < MostExchanges; exchange++)
        {
            var answer = await line.AskAsync("POST", $"/hub/casualties/{at.Id}/sync", Lines, round.Message(isNew));
            if (!answer.IsGood)
            {
                if (answer.Status == 404)
                    Keep(head.Id, AtHub.Nothing); // another hub by now, or one that lost it: asked anew the next time
                return Note(answer, head.Id);
            }

            Heard = Now;
            troubles.Remove(head.Id);
            var before = round.Waiting;
            var fresh = round.Take(answer.Body);
            if (!fresh.IsEmpty)
                await session.MergeAsync(head, [.. fresh.Select(l => new IncomingLine(IdOf(l), l))], Source);
            elsewhere.Set(head.Id, round.Elsewhere());
            at = Keep(
                head.Id,
                at with
                {
                    Said = round.Said,
                    UpTo = round.UpTo(store.Device),
                    Waiting = round.Waiting,
                    Heard = Now,
                    Lines = here.Length + fresh.Length,
                }
            );
            here = [.. here, .. fresh];
            Changed?.Invoke();
            news |= !fresh.IsEmpty || round.Waiting != before;
            if (round.IsDone || (exchange > 0 && fresh.IsEmpty && round.Waiting == before))
                break;
        }

        return news;
    }

    /// <summary>As what the store keeps by what the hub brought: see store.js.</summary>
    private const string Source = "hub";

    private static EntryId? IdOf(ReadOnlyMemory<byte> bytes) => IncomingFile.IdOf(Encoding.UTF8.GetString(bytes.Span));

    private AtHub Keep(string casualty, AtHub at)
    {
        kept[casualty] = at;
        phone.Set(AtHub.Key(casualty), at == AtHub.Nothing ? "" : at.Write());
        return at;
    }

    private void Take(HubAnswer answer)
    {
        if (HubMember.Read(Encoding.UTF8.GetString(answer.Body.Span)) is not { } member)
            return;
        Member = member;
        phone.Set(MemberKey, member.Write());
        Changed?.Invoke();
    }

    /// <summary>Remembers why it goes no further. False, for what comes of it.</summary>
    private bool Note(HubAnswer answer, string? casualty = null)
    {
        if (answer.Wait > 0)
            pace = TimeSpan.FromSeconds(Math.Clamp(answer.Wait, (int)Soonest.TotalSeconds, (int)Latest.TotalSeconds));
        var trouble = answer switch
        {
            { IsReached: false } => HubTrouble.NotReached,
            { Code: "unconfirmed" } => HubTrouble.Unconfirmed,
            { Code: "revoked" } => HubTrouble.Out,
            { Code: "unknown-device" } => HubTrouble.Out,
            { Code: "other-team" } => HubTrouble.OtherTeam,
            { Status: 409 } => HubTrouble.SeveralMatch,
            { Status: 410 } => HubTrouble.Erased,
            { Status: 507 } => HubTrouble.Full,
            { Status: 429 or >= 500 } => HubTrouble.NotReached,
            _ => HubTrouble.Refused,
        };
        if (trouble == HubTrouble.Out && Member is { } member)
        {
            Member = member with { IsOut = true };
            phone.Set(MemberKey, Member.Write());
        }

        if (casualty is not null && trouble is HubTrouble.OtherTeam or HubTrouble.SeveralMatch or HubTrouble.Erased or HubTrouble.Refused)
            troubles[casualty!] = trouble;
        else
            Trouble = trouble;
        Changed?.Invoke();
        return false;
    }
}
