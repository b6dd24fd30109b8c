using Microsoft.AspNetCore.Components;

namespace Farhold.App.Parts;

/// <summary>A part of a place that is drawn again only when it shows something else; what counts within it counts by itself.</summary>
public abstract class SteadyPart : ComponentBase
{
    private object? drawn;
    private bool same;

    /// <summary>All that its look depends on, compared by value.</summary>
    protected abstract object Shown { get; }

    protected override void OnParametersSet()
    {
        var now = Shown;
        (same, drawn) = (now.Equals(drawn), now);
    }

    protected override bool ShouldRender() => !same;
}
