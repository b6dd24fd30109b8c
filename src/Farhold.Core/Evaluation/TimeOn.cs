using NodaTime;

namespace Farhold.Evaluation;

/// <summary>How long a limb has been tied, as the limits count it.</summary>
internal static class TimeOn
{
    /// <summary>
    /// Since first tightened. Where the limb was loose for hours since, advice given after it was tightened again may let the time
    /// without flow count instead.
    /// </summary>
    public static Elapsed Of(LimbClock clock, CasualtyView casualty) =>
        LongLoose(clock, casualty.Protocol.Attempts.Loose) is { } tightAgain
        && casualty.Advice.GivenAfter(Happened.At(tightAgain), AllowedActs.TimeWithoutFlow)
            ? clock.Occluded
            : clock.SinceFirstTightened;

    /// <summary>Whether an attempt begun now can begin to slacken before the limit.</summary>
    public static bool CanFinish(LimbClock clock, CasualtyView casualty)
    {
        var haemostatic = Wire.Word(PackingMaterial.HaemostaticGauze);
        var material = Supplies.Left(casualty.Rules.Kit, haemostatic, casualty.State, casualty.Now) == Truth.Met ? haemostatic : "";
        return Of(clock, casualty).Max <= casualty.Protocol.Clock.Limit - casualty.Protocol.Attempts.LeadWith(material);
    }

    /// <summary>By when flow had surely stopped again after it had surely run for that long; null where it never did.</summary>
    private static Instant? LongLoose(LimbClock clock, Duration loose)
    {
        Instant? tightAgain = null;
        for (var i = 1; i < clock.Stretches.Length; i++)
            if (clock.Stretches[i].From - clock.Stretches[i - 1].To >= loose)
                tightAgain = SurelyStopped(clock.Stretches.AsSpan(i..));
        return tightAgain;
    }

    /// <summary>When flow was surely stopped in the run of stretches that begins here; null where it may never have been.</summary>
    private static Instant? SurelyStopped(ReadOnlySpan<Stoppage> stretches)
    {
        for (var i = 0; i < stretches.Length && (i == 0 || stretches[i].From == stretches[i - 1].To); i++)
            if (stretches[i].Stopped == Truth.Met)
                return stretches[i].From;
        return null;
    }
}
