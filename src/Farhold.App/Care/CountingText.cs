using Farhold.App.Phone;
using Farhold.App.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using NodaTime;

namespace Farhold.App.Care;

/// <summary>A piece of text that counts; nothing else is drawn again when it changes.</summary>
public abstract class CountingText : ComponentBase, IDisposable
{
    private string shown = "";

    [Inject]
    public CareDesk Desk { get; set; } = null!;

    [Inject]
    public Ticker Ticker { get; set; } = null!;

    [Inject]
    public Preferences Preferences { get; set; } = null!;

    protected abstract string Text(Instant now);

    protected override void OnInitialized() => Ticker.Ticked += Tick;

    protected override void OnParametersSet() => shown = Text(Desk.Now);

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.OpenElement(0, "span");
        builder.AddAttribute(1, "class", "counting");
        builder.AddContent(2, shown);
        builder.CloseElement();
    }

    public void Dispose()
    {
        Ticker.Ticked -= Tick;
        GC.SuppressFinalize(this);
    }

    /// <summary>To the second; to save the battery only to the minute, but for the last two.</summary>
    protected string Of(Duration span) => Preferences.Look == Look.Saving && Math.Abs(span.TotalMinutes) >= 2
        ? Say.Duration(span < Duration.Zero ? -span : span) : SecondsText.Text(span);

    private void Tick()
    {
        var now = Text(Desk.Now);
        if (now == shown)
            return;
        shown = now;
        InvokeAsync(StateHasChanged);
    }
}
