namespace Farhold.Physiology.Rehearsal;

/// <summary>How often what holds a wound comes off when the casualty is moved.</summary>
/// <remarks>
/// Design, after swine whose packed groin held until the limb was moved: 25 to 58 % bled again half an hour later, 0 to 42 % at 270
/// minutes (Natarajan 2020, Mil Med 186 S1). In people nobody knows. It stands here and not among the numbered constants, which are fixed.
/// </remarks>
public static class Dislodgement
{
    /// <summary>Mean of Beta(4, 8), for one move within the first hour.</summary>
    public const double FirstHour = 4.0 / 12;

    /// <summary>Against a wound that needs a tourniquet.</summary>
    private const double NotNeeded = 0.1;

    /// <summary>In seconds; then the chance halves as often as this passes again.</summary>
    private const double Hour = 3600;
    private const double Halving = 2 * Hour;

    /// <param name="firstHour">Chance of one move in the first hour, 0 to 1.</param>
    /// <param name="since">Seconds since it was covered and the tourniquet was let out, whichever came later.</param>
    public static double Chance(double firstHour, bool needsTourniquet, double since)
    {
        var halvings = Math.Max(0, since - Hour) / Halving;
        return firstHour * (needsTourniquet ? 1 : NotNeeded) * ExactMath.Exp(-halvings * ExactMath.Log(2));
    }
}
