using NodaTime;

namespace Farhold.App.Rehearse;

/// <summary>When this phone's carer should rehearse again.</summary>
public sealed class Refresher(PastRehearsals past, TimeProvider time)
{
    private Instant Now => Instant.FromDateTimeOffset(time.GetUtcNow());

    /// <summary>Null where nothing was rehearsed yet. Only a rehearsal with something real to pack counts.</summary>
    public Instant? Next => RefresherSchedule.Next([.. past.All.Where(p => p.Packed == PackedFor.Real).Select(p => (p.Ended, p.Mastered))]);

    public string Say(Texts texts, PhoneClock clock) =>
        past.All.IsEmpty ? texts.RefresherNever
        : Next is not { } next ? texts.RefresherReal
        : next <= Now ? texts.RefresherDue(clock.Day(next))
        : texts.RefresherNext(clock.Day(next));
}
