using System.Runtime.CompilerServices;

namespace Farhold.Physiology.Arithmetic;

/// <summary>What the equations need beside + − × ÷, in a form that eight at once have too (<c>Lanes</c>).</summary>
internal static class Scalar
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Positive(double x) => x > 0 ? x : 0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Min(double a, double b) => a < b ? a : b;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Max(double a, double b) => a > b ? a : b;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Clamp(double x, double low, double high) => Min(Max(x, low), high);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Select(bool chosen, double a, double b) => chosen ? a : b;

    /// <summary>Whether work for some of the lanes is to be done at all.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Any(bool chosen) => chosen;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Sqrt(double x) => Math.Sqrt(x);

    public static double Exp(double x) => ExactMath.Exp(x);

    public static double Log(double x) => ExactMath.Log(x);
}
