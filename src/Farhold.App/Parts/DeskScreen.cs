using Microsoft.AspNetCore.Components;
using NodaTime;

namespace Farhold.App.Parts;

/// <summary>
/// A place that shows the judged record: drawn again at once for what is logged, and at its pace while only time passes; not for what
/// else the session tells.
/// </summary>
public abstract class DeskScreen : CasualtyScreen
{
    private int known = -1;
    private Instant drawn;

    [Inject]
    public CareDesk Desk { get; set; } = null!;

    [Inject]
    public Logbook Logbook { get; set; } = null!;

    /// <summary>How long it may stand while nothing is logged: by default until the next picture.</summary>
    protected virtual Duration Pace => Duration.Zero;

    /// <summary>While true only touches draw it again: something is being filled in or shown that must stay as it is.</summary>
    protected virtual bool Holds => false;

    protected override void OnInitialized() => Listen(h => Desk.Changed += h, h => Desk.Changed -= h, Look);

    protected string At(string place) => $"casualty/{Casualty}/{place}";

    /// <summary>Draws it again if there is something to see.</summary>
    protected void Look()
    {
        if (!Holds && IsNews())
            StateHasChanged();
    }

    private bool IsNews()
    {
        var count = Desk.Record is { } record ? record.Count + record.Damaged.Count : -1;
        var now = Desk.Now;
        if (count == known && now - drawn < Pace && now >= drawn)
            return false;
        (known, drawn) = (count, now);
        return true;
    }
}
