using System.Collections.Immutable;
using Farhold.App.Care;
using Farhold.App.Phone;
using Farhold.App.Shell;
using NodaTime;

namespace Farhold.App.WayOut;

/// <summary>The way out of the open casualty: its plan as kept on this phone, the trials under way, and what they say.</summary>
public sealed class WayDesk(CareDesk care, Session session, IPhone phone, PhoneClock clock, TimeProvider time) : IDisposable
{
    /// <summary>Same plan, same answer, on every phone.</summary>
    private static readonly Rng Luck = new(1);

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
    public void Use(Plan plan, ImmutableArray<string>? cautions = null)
    {
        Open();
        Stop();
        Forecast = null;
        var told = cautions ?? Cautions;
        switch ((plan with { TimeZone = clock.Zone }).Settled())
        {
            case Read<Plan>.Usable(var whole):
                (Plan, Faults) = (whole.Named(), []);
                Keep(new(Plan, told, null));
                _ = WorkAsync();
                break;
            case Read<Plan>.Refused(var why):
                // Not kept: it could not be read back.
                (Plan, Faults) = (plan, why);
                Changed?.Invoke();
                break;
        }
    }

    public void Discard()
    {
        Stop();
        (Plan, kept, Forecast, Faults) = (null, null, null, []);
        phone.Set(Key, "");
        Changed?.Invoke();
    }

    /// <summary>Starts the trials of the plan as it stands, unless they run or have run.</summary>
    public async Task WorkAsync()
    {
        if (Plan is not { } plan || !Faults.IsEmpty || Forecast is not null || working is not null)
            return;
        using var cancel = new CancellationTokenSource();
        working = cancel;
        Progress = new(0, 0, false);
        Changed?.Invoke();
        try
        {
            await WorkAsync(plan, cancel.Token);
        }
        catch (OperationCanceledException)
        {
        }
        finally
        {
            if (working == cancel)
                (working, Progress) = (null, null);
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

    private async Task WorkAsync(Plan plan, CancellationToken cancellation)
    {
        await breath.TakeAsync(cancellation, early: true);
        var deadlines = care.Picture is { } picture ? LimbDeadlines.Of(picture) : [];
        var simulation = new Simulation(
            CompiledPlan.Of(plan, Nightfall.Of(plan)), Luck, deadlines: deadlines.Where(d => d.At > plan.Start).Select(d => d.At));
        await breath.TakeAsync(cancellation);
        await foreach (var forecast in new ForecastRunner(time).RunAsync(simulation, deadlines, Told, cancellation))
        {
            cancellation.ThrowIfCancellationRequested();
            Forecast = forecast;
            if (forecast.Answers.IsEmpty)
                Keep(new(plan, Cautions, forecast.Arrival));
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

    private void Keep(KeptWay way)
    {
        kept = way;
        IsKept = phone.Set(Key, way.Write());
    }

    private static string? Logged(State state, Instant now) =>
        state.Of(Kind.HelpExpected).LastOrDefault(h => h.When.Earliest <= now)?.As<Payload.HelpExpected>().Plan;
}
