using NodaTime;

namespace Farhold.Verdicts;

/// <summary>How long the casualty may go without a look at a tourniquet or a dressing, on the move as well.</summary>
public static class LookInterval
{
    /// <summary>The shortest in force; zero: a wound is watched without a break. Null where no limb has had a tourniquet.</summary>
    public static Duration? Of(Judgement judged)
    {
        var tied = judged.Due.Where(d => d.Limb is not null && CareTask.Is(Tourniquet, d.Task)).Select(d => d.Every);
        var loose = judged.Observed.Select(w => (Duration?)(LimbObservation.Every(w, judged.Protocol.Watch, judged.At) ?? Duration.Zero));
        return tied.Concat(loose).Where(e => e is not null).Min();
    }

    /// <summary>Name of the protocol's task that is the look at a tight tourniquet.</summary>
    internal const string Tourniquet = "tourniquet";
}
