using Microsoft.AspNetCore.Components;

namespace Farhold.App.Parts;

/// <summary>A place within a casualty: opens the casualty named in the address and draws again when its record changes.</summary>
public abstract class CasualtyScreen : Redrawn
{
    [Parameter]
    public string Casualty { get; set; } = "";

    [Inject]
    public Session Session { get; set; } = null!;

    [Inject]
    public Texts Texts { get; set; } = null!;

    [Inject]
    public NavigationManager Navigation { get; set; } = null!;

    /// <summary>
    /// The casualty of the address once it is open. Until then another may be, and this place must not show or log for it.
    /// </summary>
    protected CasualtyHead? Here => Session.Open is { } open && open.Id == Casualty ? open : null;

    protected override void OnInitialized() => Listen(h => Session.Changed += h, h => Session.Changed -= h);

    // One that is not on this phone does not get here: the frame says so in its place.
    protected override Task OnParametersSetAsync() => Session.OpenAsync(Casualty);
}
