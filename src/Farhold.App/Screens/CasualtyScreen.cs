using Farhold.App.Shell;
using Farhold.App.Words;
using Microsoft.AspNetCore.Components;

namespace Farhold.App.Screens;

/// <summary>A place within a casualty: opens the casualty named in the address and draws again when its record changes.</summary>
public abstract class CasualtyScreen : ComponentBase, IDisposable
{
    [Parameter]
    public string Casualty { get; set; } = "";

    [Inject]
    public Session Session { get; set; } = null!;

    [Inject]
    public Texts Texts { get; set; } = null!;

    [Inject]
    public NavigationManager Navigation { get; set; } = null!;

    protected override void OnInitialized() => Session.Changed += Show;

    protected override async Task OnParametersSetAsync()
    {
        await Session.OpenAsync(Casualty);
        if (Session.Open?.Id != Casualty)
            Navigation.NavigateTo("");
    }

    public void Dispose()
    {
        Session.Changed -= Show;
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing)
    {
    }

    private void Show() => InvokeAsync(StateHasChanged);
}
