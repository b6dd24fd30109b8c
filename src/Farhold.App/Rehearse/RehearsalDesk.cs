using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Rehearse;

/// <summary>What the trainee noticed.</summary>
/// <param name="IsPressing">It takes the clock back to its own pace, and stands on every screen until it was seen.</param>
public sealed record Noticed(Instant At, string Text, bool IsPressing);

/// <summary>The rehearsal of this tab: lets its time pass, hands on what is logged and done, and tells what is noticed.</summary>
public sealed class RehearsalDesk : IDisposable
{
    private readonly IPractice practice;
    private readonly Session session;
    private readonly ILogStore store;
    private readonly CareDesk care;
    private readonly Ticker ticker;
    private readonly IPhone phone;
    private readonly RehearsalClock? clock;
    private readonly TimeProvider time;
    private readonly HashSet<string> lookedAt = new(StringComparer.Ordinal);
    private KeptRun? kept;
    private IRun? running;
    private int noticed;
    private int seen;
    private double keptAt;
    private bool skipping;

    public RehearsalDesk(
        IPractice practice,
        Session session,
        ILogStore store,
        CareDesk care,
        Ticker ticker,
        IPhone phone,
        TimeProvider time
    )
    {
        (this.practice, this.session, this.store, this.care) = (practice, session, store, care);
        (this.ticker, this.phone, this.time) = (ticker, phone, time);
        clock = time as RehearsalClock;
    }

    /// <summary>Something shown has changed.</summary>
    public event Action? Changed;

    /// <summary>This tab rehearses.</summary>
    public bool IsOn => practice.IsRehearsing;

    /// <summary>The model is there, and time can pass.</summary>
    public bool IsRunning => running is { IsOver: false };

    public bool IsOver => running is { IsOver: true };

    public bool IsSkipping => skipping;

    public double Rate => clock?.Rate ?? 0;

    public string Briefing => running?.Briefing ?? "";

    /// <summary>Looks that are begun and not done.</summary>
    public int Looking =>
        running is null || kept is null
            ? 0
            : kept.Deeds.Count(d => !Deeds.All.Contains(d.What) && !KeptDeed.IsAsked(d.What)) - running.LooksDone;

    /// <summary>Null where whoever holds the phone treats, alone.</summary>
    public Lesson? Lesson => kept?.Lesson;

    /// <summary>For the screens of who leads; null where nobody does.</summary>
    public ILedRun? Led => Lesson is null ? null : running?.Led;

    /// <summary>Where a rehearsal that is over goes on, as an address within the app.</summary>
    public string AfterEnd => Lesson is null ? "debrief" : $"casualty/{session.Casualties[0].Id}/lesson";

    public string Title => running?.Title ?? "";

    /// <summary>Wounds that can be looked at, by the names that the record gives them.</summary>
    public ImmutableArray<string> Wounds => running?.Wounds ?? [];

    /// <summary>The newest first.</summary>
    public IEnumerable<Noticed> Noticed => running?.Noticed.Reverse() ?? [];

    /// <summary>What was noticed and stands until it was seen, the first of it.</summary>
    public Noticed? Pressing => running?.Noticed.Skip(seen).FirstOrDefault(n => n.IsPressing);

    /// <summary>The wound was packed, and whether anything real was is not said yet.</summary>
    public bool AsksPacked =>
        kept is { Packed: PackedFor.Unsaid }
        && care.Record?.Readings[0].Of(Kind.WoundPacked).Any(e => e.Id.Device == session.Device) == true;

    internal IRun? Running => running;

    /// <summary>Takes up the run of this tab: a new one opens its record first.</summary>
    /// <param name="breathe">Lets touches through.</param>
    public async Task StartAsync(Func<Task> breathe)
    {
        if (!IsOn || (kept = KeptRun.Read(practice.Run)) is not { } run)
            return;
        await practice.LoadModelAsync();
        if (session.Casualties.IsEmpty)
        {
            running = RunFactory.Begin(run);
            clock!.Begin(running.Now);
            await OpenAsync(running);
        }
        else
        {
            var lines = await store.ReadAsync(session.Casualties[0].Id);
            var own = lines.Where(l => IncomingFile.IdOf(l.Text)?.Device == store.Device).Select(l => l.Text);
            running = await RunFactory.AgainAsync(run, own, breathe);
            clock!.Begin(running.Now);
        }

        (noticed, seen, keptAt) = (running.Noticed.Count, running.Noticed.Count, running.Time);
        session.Changed += TakeIn;
        ticker.Ticked += Tick;
        phone.Hidden += Leave;
        clock.Run(1);
        MarkPace();
    }

    /// <summary>From now on time passes so fast; 0 stands still.</summary>
    public void Run(double rate)
    {
        Pass();
        clock?.Run(IsOver ? 0 : rate);
        MarkPace();
        Keep();
        Changed?.Invoke();
    }

    /// <summary>Lets time pass up to what is due next, or until something is noticed.</summary>
    public async Task ToNextAsync(Func<Task> breathe)
    {
        if (running is not { } run || skipping || !IsRunning)
            return;
        Pass();
        skipping = true;
        clock!.Run(0);
        MarkPace();
        Changed?.Invoke();
        try
        {
            var to = Math.Min(run.NextAt(care.Rules), run.Time + Furthest);
            var before = run.Noticed.Count;
            while (IsRunning && run.Time < to && run.Noticed.Count == before)
            {
                run.AdvanceTo(Math.Min(to, run.Time + Piece), stop: true);
                clock.PutOn(run.Now);
                await breathe();
            }
        }
        finally
        {
            skipping = false;
            clock.Run(IsOver ? 0 : 1);
            Notice();
            MarkPace();
            Keep();
            care.JudgeAgain();
            Changed?.Invoke();
        }
    }

    /// <summary>Begins a look, or does something that no entry says.</summary>
    /// <param name="by">Who, where several treat.</param>
    /// <returns>Why nothing comes of it, or null.</returns>
    public string? Do(string what, string? wound = null, string? by = null)
    {
        if (running is not { } run || kept is null)
            return null;
        Pass();
        var deed = new KeptDeed(run.Time, what, wound, by);
        if (run.Do(deed) is { } why)
            return why;
        kept = kept with { Deeds = kept.Deeds.Add(deed) };
        Keep();
        Changed?.Invoke();
        return null;
    }

    /// <summary>What there is to learn from the rehearsal so far; null where none runs.</summary>
    /// <remarks>Where somebody led, by the trainee's record, and null before it is taken.</remarks>
    public Debriefing? Debrief() =>
        Lesson is null ? running?.Debrief(care.Rules, phone.Room)
        : Trainee is var (bytes, name) ? running?.Debrief(bytes, name, care.Rules, phone.Room).Shown
        : null;

    /// <summary>The run so far in few words, for another phone; empty where none runs.</summary>
    public string Share() => running?.Share() ?? "";

    /// <summary>The record that a trainee kept while this phone's carer led, as it came; null before it was taken.</summary>
    public (ReadOnlyMemory<byte> Bytes, string Name)? Trainee { get; private set; }

    /// <summary>Takes a trainee's record for the debrief. It is held as long as this page is open, and kept nowhere.</summary>
    /// <returns>Why it is of no use here; empty where it is taken.</returns>
    public ImmutableArray<Refusal> TakeTrainee(ReadOnlyMemory<byte> record, string name)
    {
        if (running is null)
            return [];
        var (shown, refusals) = running.Debrief(record, name, care.Rules, phone.Room);
        if (shown is not null)
            Trainee = (record, name);
        Changed?.Invoke();
        return refusals;
    }

    /// <summary>Design: so many casualties alike are counted by a what-if.</summary>
    internal int Alike { get; set; } = 200;

    /// <summary>What one change would have come to; see <see cref="IRun.WhatIfAsync"/>.</summary>
    public Task WhatIfAsync(string change, Action<WhatIfShown> show, Func<Task> breathe) =>
        running?.WhatIfAsync(change, Alike, show, breathe) ?? Task.CompletedTask;

    /// <summary>Keeps the line of it that the date of the next practice goes by, and ends it: the tab is real again.</summary>
    /// <param name="again">The same scenario is offered once more.</param>
    public async Task EndAsync(PastRehearsals past, bool isClean, bool again)
    {
        var ended = kept!;
        past.Add(new(ended.Scenario, Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow()), ended.Packed, isClean));
        await practice.EndAsync(again && ended.File is null ? $"rehearse/{ended.Scenario}" : "rehearse");
    }

    /// <summary>Ends a lesson, whose one who leads has rehearsed nothing.</summary>
    /// <param name="again">The same scenario is offered once more.</param>
    public Task EndLessonAsync(bool again) =>
        practice.EndAsync(again && kept is { File: null } ended ? $"rehearse/{ended.Scenario}" : "rehearse");

    /// <summary>What the one who leads saw, yes or no; null takes it back.</summary>
    public void Mark(int item, bool? saw)
    {
        kept = kept! with { Lesson = Lesson!.With(item, saw) };
        Keep();
        Changed?.Invoke();
    }

    public void See()
    {
        seen = running?.Noticed.Count ?? 0;
        Changed?.Invoke();
    }

    public void SayPacked(PackedFor packed)
    {
        kept = kept! with { Packed = packed };
        Keep();
        Changed?.Invoke();
    }

    public void Dispose()
    {
        session.Changed -= TakeIn;
        ticker.Ticked -= Tick;
        phone.Hidden -= Leave;
    }

    private async Task OpenAsync(IRun run)
    {
        var file = IncomingFile.Split(run.Opening());
        var head = new CasualtyHead(store.NewCasualtyId(), file.Alias, Practice: true, run.Now);
        await session.MergeAsync(head, file.Lines, run.Title);
        await session.OpenAsync(head.Id);
    }

    private void Tick()
    {
        if (skipping || !IsRunning)
            return;
        Pass();
        if (running!.Time - keptAt >= KeepEvery)
            Keep();
        Changed?.Invoke();
    }

    /// <summary>Design: seconds that are skipped at once, where nothing is due for longer.</summary>
    private const double Furthest = 600;

    /// <summary>Design: seconds of the scene between two breaths, a few milliseconds on a slow phone.</summary>
    internal const double Piece = 20;

    /// <summary>Design: as many seconds of the scene are made again at most beyond what was kept.</summary>
    private const double KeepEvery = 60;

    /// <summary>The model takes up what has passed on the clock.</summary>
    private void Pass()
    {
        if (running is not { } run || skipping)
            return;
        run.AdvanceTo(run.SecondsAt(Instant.FromDateTimeOffset(time.GetUtcNow())));
        Notice();
    }

    private void Notice()
    {
        var all = running!.Noticed;
        if (all.Skip(noticed).Any(n => n.IsPressing))
        {
            clock!.Run(IsOver ? 0 : Math.Min(clock.Rate, 1));
            MarkPace();
        }

        noticed = all.Count;
    }

    /// <summary>Those who treat while somebody leads log by the wall's clock: what the run's was then is written down.</summary>
    private void MarkPace()
    {
        if (Lesson is null || running is not { IsOver: false } run || clock is null)
            return;
        var deed = new KeptDeed(
            run.Time,
            Json.Text(w =>
            {
                w.WriteString("wall", WrittenInstant.Write(clock.Wall));
                w.WriteNumber("rate", clock.Rate);
            }),
            null
        );
        run.Do(deed);
        kept = kept! with { Deeds = kept.Deeds.Add(deed) };
    }

    private void TakeIn()
    {
        if (running is not { } run)
            return;
        var any = false;
        foreach (var line in session.Lines)
            if (line.State == LineState.Kept && lookedAt.Add(line.Text) && IncomingFile.IdOf(line.Text)?.Device == store.Device)
                any |= run.Take(line.Text);
        if (!any)
            return;
        Notice();
        Keep();
        Changed?.Invoke();
    }

    private void Leave()
    {
        if (kept is { RunsOn: false })
            Run(0);
        else
            Keep();
    }

    private void Keep()
    {
        if (running is not { } run || kept is null)
            return;
        keptAt = run.Time;
        kept = kept with { At = keptAt };
        practice.KeepRun(kept.Write());
    }
}
