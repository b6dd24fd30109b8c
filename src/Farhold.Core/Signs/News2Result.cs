using System.Collections.Immutable;

namespace Farhold.Signs;

/// <summary>Which SpO2 table counts.</summary>
/// <remarks>Scale two only for proven hypercapnic respiratory failure, on a clinician's decision (target 88–92 %).</remarks>
public enum News2Scale
{
    One = 1,
    Two = 2,
}

/// <summary>The seven parts of the score, in the order of its chart.</summary>
public enum News2PartName
{
    RespiratoryRate,
    Spo2,
    Oxygen,
    Systolic,
    HeartRate,
    Consciousness,
    Temperature,
}

/// <summary>Risk by total, best to worst.</summary>
public enum News2Risk
{
    /// <summary>Total 0 to 4.</summary>
    Low,

    /// <summary>Total 0 to 4 with a 3 in a single part.</summary>
    LowMedium,

    /// <summary>Total 5 or 6.</summary>
    Medium,

    /// <summary>Total 7 or more.</summary>
    High,
}

/// <summary>What stands behind a part.</summary>
public enum Knowledge
{
    NeverSeen,

    /// <summary>Seen, but too old (or dated after the instant asked about).</summary>
    Stale,
    Fresh,
}

/// <summary>What the score is made from; what was never seen is null.</summary>
public sealed record News2Signs
{
    /// <summary>Breaths per minute.</summary>
    public Seen<double>? RespiratoryRate { get; init; }

    /// <summary>Percent.</summary>
    public Seen<double>? Spo2 { get; init; }

    public Seen<bool>? OnOxygen { get; init; }

    /// <summary>mmHg.</summary>
    public Seen<double>? Systolic { get; init; }

    /// <summary>Beats per minute.</summary>
    public Seen<double>? HeartRate { get; init; }

    public Seen<Mental>? Mental { get; init; }

    public Seen<double>? TemperatureC { get; init; }
}

/// <summary>One part: its score, as bounds that meet where it is known.</summary>
public readonly record struct News2Part(News2PartName Name, ScoreBounds Score, Knowledge Knowledge);

/// <summary>The score: seven parts in chart order, and what follows from them.</summary>
public sealed record News2Result(ImmutableArray<News2Part> Parts)
{
    /// <summary>Every way of filling in the unknown parts gives a total in here, and both ends can be reached; 0 to 20.</summary>
    public ScoreBounds Total { get; } = Parts.Aggregate(default(ScoreBounds), (sum, part) => sum + part.Score);

    /// <summary>Whether any single part scores 3.</summary>
    public Truth SingleThree { get; } =
        Parts.Any(p => p.Score.Min == 3) ? Truth.Met
        : Parts.Any(p => p.Score.Max == 3) ? Truth.Unknown
        : Truth.NotMet;

    /// <summary>The risk if every unknown part turned out at its best.</summary>
    public News2Risk LeastRisk => RiskOf(Total.Min, SingleThree == Truth.Met);

    /// <summary>The risk if every unknown part turned out at its worst; the one to act on.</summary>
    public News2Risk WorstRisk => RiskOf(Total.Max, SingleThree != Truth.NotMet);

    /// <summary>The parts nobody saw, or saw too long ago, in chart order.</summary>
    public IEnumerable<News2PartName> Unknown => Parts.Where(p => p.Knowledge != Knowledge.Fresh).Select(p => p.Name);

    /// <summary>Source: Royal College of Physicians 2017, NEWS2, chart 2.</summary>
    public static News2Risk RiskOf(int total, bool singleThree) =>
        total switch
        {
            >= 7 => News2Risk.High,
            >= 5 => News2Risk.Medium,
            _ => singleThree ? News2Risk.LowMedium : News2Risk.Low,
        };
}
