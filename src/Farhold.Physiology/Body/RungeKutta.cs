using System.Runtime.InteropServices;
using static Farhold.Physiology.Arithmetic.Scalar;

namespace Farhold.Physiology.Body;

/// <summary>The classical method of fourth order (Kutta 1901) at a fixed step; stable here up to about 3.6 s.</summary>
/// <remarks>The build makes <c>RungeKuttaOfLanes</c> from this text, as of <see cref="Equations"/>.</remarks>
internal static class RungeKutta
{
    /// <summary>How many numbers of work space a state of <paramref name="length"/> numbers needs.</summary>
    public static int Work(int length) => 5 * length;

    public static void Step(
        ModelConstants k,
        in Physique p,
        in Drives d,
        ReadOnlySpan<WoundDrives> wounds,
        Span<double> state,
        Span<double> work,
        double step
    )
    {
        var n = state.Length;
        var first = work[..n];
        var second = work.Slice(n, n);
        var third = work.Slice(2 * n, n);
        var fourth = work.Slice(3 * n, n);
        var between = work.Slice(4 * n, n);
        double half = step / 2;
        double sixth = step / 6;
        Equations.Derivatives(k, p, d, wounds, state, first, out _);
        for (var i = 0; i < n; i++)
            between[i] = state[i] + (half * first[i]);
        Equations.Derivatives(k, p, d, wounds, between, second, out _);
        for (var i = 0; i < n; i++)
            between[i] = state[i] + (half * second[i]);
        Equations.Derivatives(k, p, d, wounds, between, third, out _);
        for (var i = 0; i < n; i++)
            between[i] = state[i] + (step * third[i]);
        Equations.Derivatives(k, p, d, wounds, between, fourth, out _);
        for (var i = 0; i < n; i++)
            state[i] = state[i] + (sixth * (first[i] + (2 * second[i]) + (2 * third[i]) + fourth[i]));
        Guard(state);
    }

    /// <summary>Shares stay shares. A protection only: none leaves 0 to 1 in ordinary use, but in the last step before arrest.</summary>
    private static void Guard(Span<double> state)
    {
        ref var s = ref MemoryMarshal.Cast<double, Levels>(state[..Slots.BodyCount])[0];
        s.SympatheticActivity = Clamp(s.SympatheticActivity, 0, 1);
        s.VenousTone = Clamp(s.VenousTone, 0, 1);
        s.HumoralTone = Clamp(s.HumoralTone, 0, 1);
        s.DepressorReflex = Clamp(s.DepressorReflex, 0, 1);
        s.IschaemiaDose = Clamp(s.IschaemiaDose, 0, 1);
        s.IrreversibleFailure = Clamp(s.IrreversibleFailure, 0, 1);
        s.DeadMuscle = Clamp(s.DeadMuscle, 0, 1);
        for (var i = Slots.BodyCount; i < state.Length; i++)
            state[i] = Clamp(state[i], 0, 1);
    }
}
