using Microsoft.AspNetCore.Components;
using NodaTime;

namespace Farhold.App.Parts;

/// <summary>A place that keeps its pace by the second, also between two pictures, and shows what the session tells besides.</summary>
public abstract class LiveScreen : DeskScreen
{
    [Inject]
    public Ticker Ticker { get; set; } = null!;

    /// <summary>Null until the casualty of the address is open and judged.</summary>
    protected Judgement? Picture => Session.Open?.Id == Casualty ? Desk.Picture : null;

    protected Instant Now => Desk.Now;

    protected override void OnInitialized()
    {
        base.OnInitialized();
        Listen(h => Session.Changed += h, h => Session.Changed -= h);
        Listen(h => Ticker.Ticked += h, h => Ticker.Ticked -= h, Tick);
    }

    /// <summary>Called once a second, before anything is drawn.</summary>
    protected virtual void OnTick() { }

    private void Tick()
    {
        OnTick();
        Look();
    }
}
