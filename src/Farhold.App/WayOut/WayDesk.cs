using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.WayOut;

/// <summary>The way out of the open casualty: its plan as kept on this phone, the trials under way, and what they say.</summary>
public sealed class WayDesk(CareDesk care, Session session, IPhone phone, PhoneClock clock, TimeProvider time, Background background)
    : IDisposable
{
    /// <summary>Same plan, same answer, on every phone.</summary>
    private static readonly Rng Luck = new(1);

    /// <summary>Trials between two breaths while plans are compared (design: under 8 ms on a slow phone).</summary>
    private const int ComparedAtOnce = 256;

    private readonly Breath breath = new(time);
    private string casualty = "";
    private KeptWay? kept;
    private CancellationTokenSource? working;

    public event Action? Changed;

    /// <summary>Null before anyone made one.</summary>
    public Plan? Plan { get; private set; }

    /// <summary>Why there is no forecast of the plan as it stands.</summary>
    public ImmutableArray<Refusal> Faults { get; private set; } = [];

    /// <summary>Null while no trial runs.</summary>
    public SimulationProgress? Progress { get; private set; }

    /// <summary>Of the plan as it stands; null before its trials, or once they were broken off.</summary>
    public Forecast? Forecast { get; private set; }

    /// <summary>False if the phone did not take the plan.</summary>
    public bool IsKept { get; private set; } = true;

    public ImmutableArray<string> Cautions => kept?.Cautions ?? [];

    /// <summary>The track; none where the plan was made by hand.</summary>
    public TrackLine Line => kept?.Line ?? TrackLine.None;

    /// <summary>Whether a position noted tells how much of a stage under way is done.</summary>
    public bool IsPlaced => Plan is { } plan && SoFar(plan) is { } soFar && soFar.Marks.Any(mark => mark.Share is not null);

    /// <summary>Plans that stood here before, the newest first.</summary>
    public ImmutableArray<Plan> Earlier => kept?.Earlier ?? [];

    /// <summary>The plan and the earlier ones on the same luck; null until that is asked for.</summary>
    public SideBySide? Beside { get; private set; }

    /// <summary>Takes up what is kept for the open casualty.</summary>
    public void Open()
    {
        var id = session.Open?.Id ?? "";
        if (id == casualty)
            return;
        Stop();
        (casualty, Forecast, Faults, IsKept) = (id, null, [], true);
        kept = id.Length == 0 ? null : KeptWay.Read(phone.Get(Key));
        Plan = kept?.Plan;
    }

    /// <summary>A plan made or changed by hand, or loaded.</summary>
    /// <param name="cautions">What is doubtful of the tracks; null leaves what is known.</param>
    /// <param name="line">The track it was made from; null leaves what is known.</param>
    /// <param name="keep">Whether the plan at hand is kept beside the new one.</param>
    public void Use(Plan plan, ImmutableArray<string>? cautions = null, TrackLine? line = null, bool keep = false)
    {
        Open();
        Stop();
        (Forecast, Beside) = (null, null);
        var told = cautions ?? Cautions;
        var (drawn, earlier) = (line ?? Line, keep && Plan is { } old ? [old, .. Earlier] : Earlier);
        switch ((plan with { TimeZone = clock.Zone }).Settled())
        {
            case Read<Plan>.Usable(var whole):
                (Plan, Faults) = (whole.Named(), []);
                Keep(new(Plan, told, null) { Line = drawn, Earlier = [.. earlier.Where(e => e.Id != Plan.Id).Take(SideBySide.Most - 1)] });
                background.Start(WorkAsync);
                break;
            case Read<Plan>.Refused(var why):
                // Not kept: it could not be read back.
                (Plan, Faults) = (plan, why);
                Changed?.Invoke();
                break;
        }
    }

    /// <summary>An earlier plan takes the place of the one at hand, which is kept in its turn.</summary>
    public void TakeUp(Plan plan) => Use(plan, [], TrackLine.None, keep: true);

    public void Forget(Plan plan)
    {
        if (kept is not { } way)
            return;
        Beside = null;
        Keep(way with { Earlier = way.Earlier.Remove(plan) });
        Changed?.Invoke();
    }

    /// <summary>Sets the plan beside the earlier ones.</summary>
    public async Task CompareAsync()
    {
        if (Forecast is not { } forecast || Earlier.IsEmpty)
            return;
        var ran = new List<Simulation>();
        foreach (var plan in SideBySide.Aligned([forecast.Plan, .. Earlier]))
        {
            await breath.TakeAsync(default, early: true);
            var simulation = new Simulation(
                CompiledPlan.Of(plan, Nightfall.Of(plan), ran.Count == 0 ? forecast.Simulation.Plan.SoFar : null),
                Luck,
                SamplingLimits.Exactly(forecast.Simulation.Done)
            );
            while (!simulation.Step(ComparedAtOnce).Finished)
                await breath.TakeAsync(default);
            ran.Add(simulation);
        }

        if (Forecast == forecast)
            Beside = SideBySide.Of(ran, care.Picture is { } picture ? LimbDeadlines.Of(picture) : []);
        Changed?.Invoke();
    }

    /// <summary>
    /// Something of the plan has happened: the forecast is made anew from there. Ends as soon as it stands, or was broken off; what would
    /// change it is still worked out after that.
    /// </summary>
    public Task GoneOnAsync()
    {
        Stop();
        (Forecast, Beside) = (null, null);
        var stands = new TaskCompletionSource();
        background.Start(() => WorkAsync(stands));
        return stands.Task;
    }

    /// <summary>What the record's last word on help by this plan says is reached; null where it says nothing.</summary>
    public static HelpCare? LoggedCare(State state, Instant now) =>
        state.Of(Kind.HelpExpected).LastOrDefault(h => h.When.Earliest <= now)?.As<Payload.HelpExpected>().Care;

    public void Discard()
    {
        Stop();
        (Plan, kept, Forecast, Faults, Beside) = (null, null, null, [], null);
        phone.Set(Key, "");
        Changed?.Invoke();
    }

    /// <summary>Starts the trials of the plan as it stands, unless they run or have run.</summary>
    public Task WorkAsync() => WorkAsync(null);

    private async Task WorkAsync(TaskCompletionSource? stands)
    {
        // Something of the way was noted elsewhere, such as a position typed in.
        if (Plan is { } known && Forecast is { Simulation.Plan.SoFar: var told } && !Same(told, SoFar(known)))
        {
            Stop();
            (Forecast, Beside) = (null, null);
        }

        if (Plan is not { } plan || !Faults.IsEmpty || Forecast is not null || working is not null)
        {
            stands?.TrySetResult();
            return;
        }

        using var cancel = new CancellationTokenSource();
        working = cancel;
        Progress = new(0, 0, false);
        Changed?.Invoke();
        try
        {
            await WorkAsync(plan, stands, cancel.Token);
        }
        catch (OperationCanceledException) { }
        finally
        {
            if (working == cancel)
                (working, Progress) = (null, null);
            stands?.TrySetResult();
            Changed?.Invoke();
        }
    }

    /// <summary>Breaks the trials off.</summary>
    public void Stop()
    {
        working?.Cancel();
        (working, Progress) = (null, null);
    }

    /// <summary>The forecast as an entry of help expected, by the protocol in force; null where not even half arrive.</summary>
    /// <param name="what">What is reached at the end of the way.</param>
    public Payload.HelpExpected? Help(HelpCare? what = null) =>
        Forecast is { } f ? HelpForecast.Of(f.Simulation, care.Protocol.Clock.SoonProbability, what) : null;

    /// <summary>Whether the record's last word on help is this plan.</summary>
    public bool IsLogged(State state, Instant now) => Plan?.Id is { } id && Logged(state, now) == id;

    /// <summary>Daylight where the plan begins, and the forecast if the record's help rests on it, laid over a limb's line.</summary>
    public LimbPicture Laid(LimbPicture picture, State state)
    {
        Open();
        return picture with
        {
            Light = Plan?.From is { } from ? LimbSky.Over(picture, from) : [],
            Arrival = kept is { Arrival: { } shape } && IsLogged(state, picture.Now) ? shape : picture.Arrival,
        };
    }

    public void Dispose() => Stop();

    private string Key => KeptWay.Key(casualty);

    private async Task WorkAsync(Plan plan, TaskCompletionSource? stands, CancellationToken cancellation)
    {
        await breath.TakeAsync(cancellation, early: true);
        var deadlines = care.Picture is { } picture ? LimbDeadlines.Of(picture) : [];
        var simulation = new Simulation(
            CompiledPlan.Of(plan, Nightfall.Of(plan), SoFar(plan)),
            Luck,
            deadlines: deadlines.Where(d => d.At > plan.Start).Select(d => d.At)
        );
        await breath.TakeAsync(cancellation);
        await foreach (var forecast in new ForecastRunner(time).RunAsync(simulation, deadlines, Told, cancellation))
        {
            cancellation.ThrowIfCancellationRequested();
            Forecast = forecast;
            stands?.TrySetResult();
            if (forecast.Answers.IsEmpty)
                Keep(new(plan, Cautions, forecast.Arrival) { Line = Line, Earlier = Earlier });
            Changed?.Invoke();
        }

        // What a run that was broken off still tells is of a plan nobody asks about any more.
        void Told(SimulationProgress progress)
        {
            if (cancellation.IsCancellationRequested)
                return;
            Progress = progress;
            Changed?.Invoke();
        }
    }

    private SoFar? SoFar(Plan plan) =>
        care.Record is { } record ? RecordSoFar.Of(record.Readings[0], plan, session.Now, Line.Behind) : null;

    private static bool Same(SoFar? one, SoFar? other) => (one?.Marks ?? []).SequenceEqual(other?.Marks ?? []);

    private void Keep(KeptWay way)
    {
        kept = way;
        IsKept = phone.Set(Key, way.Write());
    }

    private static string? Logged(State state, Instant now) =>
        state.Of(Kind.HelpExpected).LastOrDefault(h => h.When.Earliest <= now)?.As<Payload.HelpExpected>().Plan;
}
