using Microsoft.AspNetCore.Components;

namespace Farhold.App.Parts;

/// <summary>
/// Draws its content a breath after the rest of the place, so that a long place is drawn in pieces and touches come through.
/// </summary>
/// <remarks>What it showed before stays until then. Several in a place follow one another, each in a piece of its own.</remarks>
public sealed class Soon : Redrawn
{
    private static readonly TimeSpan Blink = TimeSpan.FromMilliseconds(1);

    private RenderFragment? shown;
    private ITimer? timer;

    [Parameter]
    public RenderFragment? ChildContent { get; set; }

    [Inject]
    public TimeProvider Time { get; set; } = null!;

    protected override void OnParametersSet() => timer ??= Time.CreateTimer(_ => Begin(Show), null, Blink, Timeout.InfiniteTimeSpan);

    protected override void Dispose(bool disposing)
    {
        timer?.Dispose();
        base.Dispose(disposing);
    }

    protected override bool ShouldRender() => timer is null;

    protected override void BuildRenderTree(Microsoft.AspNetCore.Components.Rendering.RenderTreeBuilder builder) =>
        builder.AddContent(0, shown);

    private void Show()
    {
        if (timer is null)
            return;
        timer.Dispose();
        (timer, shown) = (null, ChildContent);
        StateHasChanged();
    }
}
