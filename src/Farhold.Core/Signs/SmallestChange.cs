namespace Farhold.Signs;

/// <summary>Per sign, the least change worth telling: below it, counting or the instrument alone may differ so much.</summary>
public static class SmallestChange
{
    /// <summary>Beats per minute (design).</summary>
    public const double HeartRate = 10;

    /// <summary>
    /// Breaths per minute. Lim 2002, Respir Med 96:31: two counts of one adult differed by up to 6 (95 % limits −5.7 to 5.7
    /// between observers).
    /// </summary>
    public const double RespiratoryRate = 6;

    /// <summary>mmHg (design; cuffs pass with a spread of 8 mmHg by ISO 81060-2, from memory).</summary>
    public const double Systolic = 15;

    /// <summary>mmHg (design).</summary>
    public const double Diastolic = 10;

    /// <summary>Percent (design: twice the ±2 % within which makers say two readings in three fall).</summary>
    public const double Spo2 = 4;

    /// <summary>°C (design).</summary>
    public const double TemperatureC = 0.5;

    /// <summary>Steps of the scale from 0 to 10 (Farrar 2001, Pain 94:149, from memory: about two are a change that matters).</summary>
    public const double Pain = 2;
}
