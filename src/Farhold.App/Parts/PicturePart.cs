using Microsoft.AspNetCore.Components;

namespace Farhold.App.Parts;

/// <summary>A part of a place that shows the picture and nothing else: drawn again for another picture, not because its place was.</summary>
public abstract class PicturePart : ComponentBase
{
    private Judgement? drawn;

    [Parameter, EditorRequired]
    public Judgement Picture { get; set; } = null!;

    public override Task SetParametersAsync(ParameterView parameters)
    {
        parameters.SetParameterProperties(this);
        if (ReferenceEquals(Picture, drawn))
            return Task.CompletedTask;
        drawn = Picture;
        return base.SetParametersAsync(ParameterView.Empty);
    }
}
