using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>The moments by which a limb wants higher care.</summary>
public static class LimbDeadlines
{
    /// <summary>Window and limit of every limb whose tourniquet is or may be tight, on the side that is worse for the casualty.</summary>
    /// <returns>Ids such as <c>left-leg limit-6h</c>; the earliest first.</returns>
    public static ImmutableArray<Deadline> Of(Judgement judgement) => [.. Each(judgement).Select(d => d.Deadline)];

    /// <summary>The same, each with its limb and its limit.</summary>
    public static ImmutableArray<LimbDeadline> Each(Judgement judgement) =>
        [
            .. judgement
                .Limbs.SelectMany(limb =>
                    Of(judgement.Protocol.Clock)
                        .Select(after => new LimbDeadline(
                            limb.Limb,
                            after,
                            new($"{Wire.Word(limb.Limb)} {after.Id}", limb.Clock.FirstTightened.Earliest + after.After)
                        ))
                )
                .OrderBy(d => d.Deadline.At),
        ];

    /// <summary>
    /// The protocol's window and limit since tightening, named as the clock's events are: <c>window-2h</c>, <c>limit-6h</c>.
    /// </summary>
    public static ImmutableArray<LimitAfter> Of(ClockLimits clock) =>
        [new($"window-{Hours(clock.Window)}", clock.Window), new($"limit-{Hours(clock.Limit)}", clock.Limit)];

    private static string Hours(Duration span) => string.Create(CultureInfo.InvariantCulture, $"{span.TotalHours:0.##}h");
}

/// <summary>A limit on the time since a tourniquet was tightened.</summary>
public sealed record LimitAfter(string Id, Duration After);

/// <summary>A limb's limit as a moment.</summary>
public sealed record LimbDeadline(Limb Limb, LimitAfter Limit, Deadline Deadline);
