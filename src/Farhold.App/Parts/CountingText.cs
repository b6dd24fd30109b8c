using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using NodaTime;

namespace Farhold.App.Parts;

/// <summary>A piece of text that counts; nothing else is drawn again when it changes.</summary>
public abstract class CountingText : Redrawn
{
    private string shown = "";
    private string? drawn;

    [Inject]
    public CareDesk Desk { get; set; } = null!;

    [Inject]
    public Ticker Ticker { get; set; } = null!;

    [Inject]
    public Preferences Preferences { get; set; } = null!;

    protected abstract string Text(Instant now);

    protected override void OnInitialized() => Listen(h => Ticker.Ticked += h, h => Ticker.Ticked -= h, Tick);

    protected override void OnParametersSet() => shown = Text(Desk.Now);

    protected override bool ShouldRender() => shown != drawn;

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        drawn = shown;
        builder.OpenElement(0, "span");
        builder.AddAttribute(1, "class", "counting");
        Show(builder, shown);
        builder.CloseElement();
    }

    protected virtual void Show(RenderTreeBuilder builder, string text) => builder.AddContent(2, text);

    /// <summary>To the second; to save the battery only to the minute, but for the last two.</summary>
    protected string Of(Duration span) =>
        Preferences.Look == Look.Saving && Math.Abs(span.TotalMinutes) >= 2
            ? Say.Duration(span < Duration.Zero ? -span : span)
            : SecondsText.Text(span);

    private void Tick()
    {
        var now = Text(Desk.Now);
        if (now == shown)
            return;
        shown = now;
        StateHasChanged();
    }
}
