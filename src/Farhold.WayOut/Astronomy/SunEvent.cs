using NodaTime;

namespace Farhold.WayOut.Astronomy;

/// <summary>When the sun passes an altitude on its way up or down, or why it does not that day.</summary>
public abstract record SunEvent
{
    private SunEvent() { }

    public sealed record At(Instant Instant) : SunEvent;

    /// <summary>None: the sun stays above that altitude.</summary>
    public sealed record StaysAbove : SunEvent;

    /// <summary>None: the sun stays below that altitude.</summary>
    public sealed record StaysBelow : SunEvent;
}
