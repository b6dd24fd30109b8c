namespace Farhold.Reserves;

/// <summary>How warm it is; unknown is taken as anything from cool to hot.</summary>
public enum Heat
{
    /// <summary>Below about 25 °C.</summary>
    Cool,

    /// <summary>About 25 to 32 °C, or sun without wind.</summary>
    Warm,

    /// <summary>Above that.</summary>
    Hot,
}

/// <summary>How hard people work while they do.</summary>
public enum Work
{
    /// <summary>Lying or sitting.</summary>
    Rest,

    /// <summary>Camp work, walking on the level.</summary>
    Easy,

    /// <summary>Carrying, climbing.</summary>
    Hard,
}

/// <summary>Water that people need, mL an hour, as ranges.</summary>
/// <remarks>
/// At rest in the cool 2.1 to 3.0 L a day (JTS nursing guideline). Work in warm and hot air after US Army TB MED 507 (from memory):
/// half to one quart an hour, a quarter more or less, never above one and a half. Work in the cool and rest in the heat are
/// nowhere tabled: design.
/// </remarks>
public static class WaterNeed
{
    /// <summary>Hours of work a day that are reckoned with if nobody says (design).</summary>
    public const double UsualWorkHours = 8;

    private const double QuartMl = 946;

    /// <summary>Most anyone drinks in an hour, mL: above it, water harms (TB MED 507, from memory).</summary>
    public const double MostMlPerHour = 1.5 * QuartMl;

    public static Between MlPerHour(Heat? heat, Work work) =>
        heat is { } known ? Known(known, work) : Between.Hull(Known(Heat.Cool, work), Known(Heat.Hot, work));

    /// <summary>A day of so many hours of work and rest for the others, mL/h on average.</summary>
    /// <param name="workHours">Of 24.</param>
    public static Between MlPerHour(Heat? heat, Work work, double workHours)
    {
        if (!(workHours is >= 0 and <= 24))
            throw new ArgumentOutOfRangeException(nameof(workHours), workHours, "Hours of a day are 0 to 24.");
        var (rest, busy) = (MlPerHour(heat, Work.Rest), MlPerHour(heat, work));
        double Mean(double resting, double working) => ((resting * (24 - workHours)) + (working * workHours)) / 24;
        return new(Mean(rest.Low, busy.Low), Mean(rest.High, busy.High));
    }

    /// <summary>Of the casualty, at rest; a child by the maintenance rule, an adult or one of unknown age by the adult's range.</summary>
    public static Between Casualty(double? ageYears, double? massKg, Heat? heat)
    {
        var rest = MlPerHour(heat, Work.Rest);
        if (!(ageYears < 16) || massKg is not { } mass)
            return rest;
        var child = Intake.MaintenanceMlPerHour(mass);
        var share = child / Known(Heat.Cool, Work.Rest).High;
        return new(Math.Min(child, rest.Low * share), Math.Max(child, rest.High * share));
    }

    private static Between Known(Heat heat, Work work) =>
        (heat, work) switch
        {
            (Heat.Cool, Work.Rest) => new(Intake.AdultAtRestMlPerDay.Low / 24, Intake.AdultAtRestMlPerDay.High / 24),
            (Heat.Warm, Work.Rest) => new(100, 250), // design
            (Heat.Hot, Work.Rest) => new(150, 350), // design
            (Heat.Cool, Work.Easy) => new(200, 500), // design
            (Heat.Cool, Work.Hard) => new(300, 750), // design
            (Heat.Warm, Work.Easy) => new(0.25 * QuartMl, 0.75 * QuartMl),
            (Heat.Warm, Work.Hard) => new(0.5 * QuartMl, 1.25 * QuartMl),
            (Heat.Hot, _) => new(0.75 * QuartMl, 1.25 * QuartMl),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
}
