using Microsoft.AspNetCore.Components;

namespace Farhold.App.Parts;

/// <summary>
/// A part of a place that shows the picture and nothing else: drawn again for another picture, not because its place was.
/// </summary>
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
        var same = drawn is not null && LooksLike(drawn);
        drawn = Picture;
        return same ? Task.CompletedTask : base.SetParametersAsync(ParameterView.Empty);
    }

    /// <summary>Whether the picture shows nothing else here than one before it. By default that is not looked into.</summary>
    protected virtual bool LooksLike(Judgement before) => false;
}
