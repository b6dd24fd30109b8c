using Farhold.App.Care;
using Microsoft.AspNetCore.Components;

namespace Farhold.App.Screens;

/// <summary>A place that shows the judged record: drawn again with every new picture, not for what else the session tells.</summary>
public abstract class DeskScreen : CasualtyScreen
{
    [Inject]
    public CareDesk Desk { get; set; } = null!;

    [Inject]
    public Logbook Logbook { get; set; } = null!;

    protected override void OnInitialized() => Desk.Changed += Redraw;

    protected string At(string place) => $"casualty/{Casualty}/{place}";

    protected override void Dispose(bool disposing)
    {
        Desk.Changed -= Redraw;
        base.Dispose(disposing);
    }

    /// <summary>What is worth drawing again: by default every new picture.</summary>
    protected virtual bool IsNews() => true;

    private void Redraw()
    {
        if (IsNews())
            InvokeAsync(StateHasChanged);
    }
}
