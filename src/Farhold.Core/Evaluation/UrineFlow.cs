using NodaTime;

namespace Farhold.Evaluation;

/// <summary>How much urine comes an hour, from what was measured.</summary>
/// <param name="MlPerHour">A range where a time is one.</param>
/// <param name="Over">From the first measurement counted (when the bladder was last emptied before) to the last.</param>
/// <param name="Last">When urine was last measured.</param>
public sealed record UrineFlow(Between MlPerHour, Elapsed Over, Happened Last)
{
    /// <summary>Measurements older than this before the last one are not counted (design).</summary>
    private static readonly Duration Window = Duration.FromHours(6);

    /// <summary>
    /// The flow between the last measurement and the oldest one up to six hours before it. Null with fewer than two: what a
    /// bladder held at the beginning nobody knows. Null, too, if their order in time is not sure.
    /// </summary>
    public static UrineFlow? Of(State state, Instant now)
    {
        var measured = state.Of(Kind.UrineMeasured).Where(d => d.When.Earliest <= now).ToArray();
        if (measured.Length < 2)
            return null;
        var last = measured[^1].When.NotAfter(now);
        var counted = measured.Where(d => d.When.Earliest >= last.Latest - Window).ToArray();
        if (counted.Length < 2)
            counted = measured[^2..];
        var first = counted[0].When.NotAfter(now);
        if (!first.SurelyBefore(last))
            return null;
        var millilitres = counted.Skip(1).Sum(d => d.As<Payload.UrineMeasured>().Millilitres);
        var over = new Elapsed(last.Earliest - first.Latest, last.Latest - first.Earliest);
        return new(new(millilitres / over.Max.TotalHours, millilitres / over.Min.TotalHours), over, last);
    }

    /// <summary>Per kilogram of body mass, mL/kg/h.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not above 0.</exception>
    public Between MlPerKgHour(double massKg) =>
        massKg > 0
            ? new(MlPerHour.Low / massKg, MlPerHour.High / massKg)
            : throw new ArgumentOutOfRangeException(nameof(massKg), massKg, "A mass is above 0 kg.");
}
