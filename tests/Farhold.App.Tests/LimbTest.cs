using AngleSharp.Dom;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests;

/// <summary>An invented casualty with a bleeding wound on the left leg, tourniquet on for 40 minutes.</summary>
public abstract class LimbTest : ScreenTest
{
    protected CareDesk Care => Services.GetRequiredService<CareDesk>();

    protected State State => Care.Record!.Readings[0];

    protected string Casualty { get; private set; } = "";

    /// <summary>All that an attempt needs is known and met, by two clear looks; help is far.</summary>
    protected async Task ReadyAsync(int minutesOn = 40)
    {
        _ = Care;
        Casualty = await OpenCasualtyAsync();
        await TellAsync(minutesOn, new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Bleeding));
        await TellAsync(minutesOn, new Payload.TourniquetTightened("t1", Limb.LeftLeg, "high-thigh", TourniquetMake.Windlass, "w1"));
        await TellAsync(14, Well);
        await TellAsync(6, NothingElse);
        await TellAsync(5, new Payload.SuppliesStated("haemostatic-gauze", 2));
        await TellAsync(5, new Payload.SuppliesStated("pressure-dressing", 2));
        await TellAsync(4, new Payload.WatchStated(true, Watcher.Other));
        await TellAsync(
            4,
            new Payload.HelpExpected(
                Now + Duration.FromHours(20),
                Now + Duration.FromHours(12),
                Now + Duration.FromHours(30),
                Care: HelpCare.Surgery
            )
        );
        await TellAsync(3, new Payload.BleedingChecked("w1", Bleeding.None));
        await TellAsync(2, Well);
    }

    /// <summary>The rest of the casualty, looked over.</summary>
    protected static Payload.CasualtyLookedOver NothingElse { get; } = new(false, false, false, false, false);

    protected static Payload.SignsTaken Well =>
        new()
        {
            HeartRate = 84,
            RespiratoryRate = 16,
            Systolic = 124,
            Mental = Mental.Alert,
            RadialPulse = RadialPulse.Strong,
            Dizzy = false,
            Pale = false,
            Cool = false,
            Clammy = false,
        };

    protected Task TellAsync(double minutesAgo, Payload payload) =>
        Logbook.WriteAsync(Session.Open!, payload, Happened.At(Now - Duration.FromMinutes(minutesAgo)));

    protected Task TellAsync(Payload payload) => TellAsync(0, payload);

    protected void Pass(double minutes) => Time.Advance(TimeSpan.FromMinutes(minutes));

    /// <summary>As if the app had been closed and started again: screens of their own, from the record alone.</summary>
    protected IRenderedComponent<Frame> AttemptShown()
    {
        DisposeComponentsAsync().GetAwaiter().GetResult();
        return Render<Frame>(p =>
            p.Add(
                f => f.Body,
                b =>
                {
                    b.OpenComponent<AttemptScreen>(0);
                    b.AddAttribute(1, nameof(AttemptScreen.Casualty), Casualty);
                    b.AddAttribute(2, nameof(AttemptScreen.On), "left-leg");
                    b.CloseComponent();
                }
            )
        );
    }

    protected static bool HasButton(IRenderedComponent<IComponent> shown, string name) =>
        shown.FindAll("button").Any(b => b.TextContent.Trim() == name);

    protected static string Timer(IRenderedComponent<IComponent> shown) => shown.Find("[role=timer]").TextContent;

    protected T Last<T>()
        where T : Payload => Care.Record!.Entries.Select(e => e.Payload).OfType<T>().Last();

    protected IEnumerable<T> Entries<T>()
        where T : Payload => Care.Record!.Entries.Select(e => e.Payload).OfType<T>();

    protected int Count<T>()
        where T : Payload => Care.Record!.Entries.Count(e => e.Payload is T);

    /// <summary>An attempt brought to the beginning of a step, in the time each step takes at least.</summary>
    protected async Task AtStepAsync(StepId step)
    {
        await TellAsync(new Payload.AttemptStarted("w1", "t1"));
        if (step == StepId.Pack)
            return;
        Pass(2);
        await TellAsync(new Payload.WoundPacked("w1", PackingMaterial.HaemostaticGauze));
        if (step == StepId.Hold)
            return;
        Pass(3);
        await TellAsync(new Payload.PressureHeld("w1", 3));
        if (step == StepId.Dress)
            return;
        Pass(1);
        await TellAsync(new Payload.DressingApplied("w1", DressingKind.Pressure));
        if (step == StepId.Slacken)
            return;
        Pass(1);
        await TellAsync(new Payload.TourniquetSlackened("t1"));
    }
}
