using NodaTime;

namespace Farhold.Prepare;

/// <summary>When a skill should be practised again.</summary>
/// <remarks>
/// Days 0, 2, 9 and 30 to learn it, then every 30 days while the last rehearsal left something to remark, else 60 and then 90 (design,
/// after studies of spaced practice: skills of emergencies fade from eight weeks and mostly by six months; never above 180 days).
/// </remarks>
public static class RefresherSchedule
{
    private static readonly Duration[] Learning = [Duration.FromDays(2), Duration.FromDays(7), Duration.FromDays(21)];

    private static readonly Duration Weak = Duration.FromDays(30);
    private static readonly Duration First = Duration.FromDays(60);
    private static readonly Duration Longest = Duration.FromDays(90);

    /// <param name="rehearsals">When each ended, and whether it left nothing to remark; oldest first.</param>
    /// <returns>Null where there was none: then it is due now.</returns>
    public static Instant? Next(IReadOnlyList<(Instant Ended, bool Mastered)> rehearsals)
    {
        if (rehearsals.Count == 0)
            return null;
        var last = rehearsals[^1];
        return last.Ended
            + (
                rehearsals.Count <= Learning.Length ? Learning[rehearsals.Count - 1]
                : !last.Mastered ? Weak
                : rehearsals.Count > Learning.Length + 1 && rehearsals[^2].Mastered ? Longest
                : First
            );
    }
}
