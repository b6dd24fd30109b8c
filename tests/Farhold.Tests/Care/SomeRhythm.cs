using CsCheck;

namespace Farhold.Tests.Care;

/// <summary>Days and nights of an invented place, and any.</summary>
public static class SomeRhythm
{
    public static readonly DateTimeZone Zone = DateTimeZone.ForOffset(Offset.FromHours(2));

    /// <summary>Night 22 to 6, watches of four hours from 20:00 local time of the day before <see cref="Case.Now"/>.</summary>
    public static Rhythm Of(Instant around, params ReadOnlySpan<string> members)
    {
        var night = Rhythm.ByClock(Zone, Rhythm.UsualFrom, Rhythm.UsualTo, around);
        return members.IsEmpty
            ? night
            : night.With(Roster.Of(members.ToArray(), around - Duration.FromHours(24), around + Duration.FromHours(48)));
    }

    /// <summary>Any nights and any changes of watch in the days around an instant.</summary>
    public static Gen<Rhythm> Any(Instant around) =>
        Gen.Select(
            Gen.Select(Gen.Int[-3000, 3000], Gen.Int[1, 900]).Array[0, 8],
            Gen.Int[-3000, 3000].Array[0, 20],
            (nights, changes) =>
                new Rhythm(
                    [
                        .. nights
                            .Select(n => new NightSpan(
                                around + Duration.FromMinutes(n.Item1),
                                around + Duration.FromMinutes(n.Item1 + n.Item2)
                            ))
                            .OrderBy(n => n.From),
                    ],
                    [.. changes.Order().Select(c => around + Duration.FromMinutes(c))]
                )
        );
}
