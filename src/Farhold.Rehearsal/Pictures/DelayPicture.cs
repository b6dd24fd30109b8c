using System.Collections.Immutable;

namespace Farhold.Rehearsal.Pictures;

public enum DelayPhase
{
    /// <summary>From decidable to known.</summary>
    Perceiving,

    /// <summary>From known to begun.</summary>
    Deciding,

    /// <summary>From begun to let out.</summary>
    Doing,
}

/// <param name="From">In seconds from the start.</param>
public sealed record DelaySpan(DelayPhase Phase, double From, double To);

/// <summary>The delays of one limb.</summary>
/// <param name="Spans">Of those phases whose ends both came, and in this order.</param>
public sealed record DelayRow(Delays Delays, ImmutableArray<DelaySpan> Spans)
{
    public static DelayRow Of(Delays d) =>
        new(
            d,
            [
                .. new[]
                {
                    Span(DelayPhase.Perceiving, d.Decidable, d.KnownAt),
                    Span(DelayPhase.Deciding, d.KnownAt, d.Begun),
                    Span(DelayPhase.Doing, d.Begun, d.LetOut),
                }.OfType<DelaySpan>(),
            ]
        );

    private static DelaySpan? Span(DelayPhase phase, double? from, double? to) =>
        from is { } f && to is { } t && t >= f ? new(phase, f, t) : null;
}

/// <summary>From decidable to known to done, a row for each limb. In seconds from the start.</summary>
/// <param name="Until">When the rehearsal was over; above 0.</param>
public sealed record DelayPicture(double Until, ImmutableArray<DelayRow> Rows)
{
    public static DelayPicture Of(Debrief debrief) => new(Math.Max(1, debrief.Session.Time), [.. debrief.Delays.Select(DelayRow.Of)]);
}
