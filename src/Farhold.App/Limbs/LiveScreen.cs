using Farhold.App.Care;
using Farhold.App.Screens;
using Farhold.App.Shell;
using Microsoft.AspNetCore.Components;
using NodaTime;

namespace Farhold.App.Limbs;

/// <summary>A place that is drawn again when the picture changes, and every so often while time passes.</summary>
public abstract class LiveScreen : CasualtyScreen
{
    private Instant drawn;
    private int known;

    [Inject]
    public CareDesk Desk { get; set; } = null!;

    [Inject]
    public Ticker Ticker { get; set; } = null!;

    /// <summary>How often it is drawn although nothing has changed.</summary>
    protected abstract Duration Pace { get; }

    /// <summary>Null until the casualty of the address is open and judged.</summary>
    protected Judgement? Picture => Session.Open?.Id == Casualty ? Desk.Picture : null;

    protected Instant Now => Desk.Now;

    protected override void OnInitialized()
    {
        base.OnInitialized();
        Desk.Changed += OnPicture;
        Ticker.Ticked += Tick;
    }

    /// <summary>Called once a second, before anything is drawn.</summary>
    protected virtual void OnTick()
    {
    }

    protected void Redraw()
    {
        drawn = Now;
        _ = InvokeAsync(StateHasChanged);
    }

    protected override void Dispose(bool disposing)
    {
        Desk.Changed -= OnPicture;
        Ticker.Ticked -= Tick;
        base.Dispose(disposing);
    }

    /// <summary>The desk judges anew every few seconds; only what is new on the record has to be shown at once.</summary>
    private void OnPicture()
    {
        if (Desk.Record is { } record && record.Count == known && Now - drawn < Pace && Now >= drawn)
            return;
        known = Desk.Record?.Count ?? 0;
        Redraw();
    }

    private void Tick() => InvokeAsync(() =>
    {
        OnTick();
        if (Now - drawn >= Pace || Now < drawn)
            Redraw();
    });
}
