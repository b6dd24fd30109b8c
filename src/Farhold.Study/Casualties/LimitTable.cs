using System.Collections.Immutable;

namespace Farhold.Study.Casualties;

/// <summary>How many minutes an open wound may bleed before tying it off comes too late, for each casualty and hour of opening.</summary>
/// <remarks>
/// Each casualty twice: with the wound of a needed tourniquet, and with that of a needless one, so that a cohort's share of needed ones
/// chooses between two courses and draws none anew. Minutes to three decimals.
/// </remarks>
public sealed class LimitTable
{
    /// <summary>Hours after tightening at which the model is asked; between two, a straight line.</summary>
    public static readonly ImmutableArray<double> Hours = [0.5, 1, 1.5, 2, 3, 4, 5.5, 8, 12];

    /// <summary>Of those dead before the tourniquet could hold, whatever is done later.</summary>
    public const double Dead = -1;

    private readonly double[] minutes;

    /// <param name="minutes">By casualty, then needed before needless, then hour; infinity where it never kills.</param>
    public LimitTable(double[] minutes)
    {
        ArgumentNullException.ThrowIfNull(minutes);
        if (minutes.Length % (2 * Hours.Length) != 0)
            throw new ArgumentException($"{minutes.Length} numbers; each casualty has {2 * Hours.Length}.", nameof(minutes));
        this.minutes = minutes;
    }

    public int Casualties => minutes.Length / (2 * Hours.Length);

    public ReadOnlySpan<double> Minutes => minutes;

    public ReadOnlySpan<double> Of(int casualty, bool needed) =>
        minutes.AsSpan(((casualty * 2) + (needed ? 0 : 1)) * Hours.Length, Hours.Length);

    public bool IsDead(int casualty, bool needed) => Of(casualty, needed)[0] == Dead;

    /// <summary>Where it never kills at one end of a stretch, the other end's minutes hold for the whole.</summary>
    public double At(int casualty, bool needed, double hour)
    {
        var of = Of(casualty, needed);
        if (hour <= Hours[0])
            return of[0];
        for (var i = 1; i < Hours.Length; i++)
        {
            if (hour > Hours[i])
                continue;
            var (before, after) = (of[i - 1], of[i]);
            return double.IsInfinity(before) || double.IsInfinity(after)
                ? Math.Min(before, after)
                : before + ((after - before) * (hour - Hours[i - 1]) / (Hours[i] - Hours[i - 1]));
        }

        return of[^1];
    }
}
