using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Signs;

/// <summary>The course of each sign, worked out anew only for other readings: of many it takes a phone long.</summary>
public sealed class SignCourses
{
    private readonly Dictionary<Sign, (ImmutableArray<Seen<double>> Readings, SignCourse? Course)> known = [];

    /// <summary>Null with fewer than two readings, and where none is told of the sign.</summary>
    public SignCourse? Told(Sign sign, State state, Instant at)
    {
        var seen = SignsSeen.Course(state, at, sign.Value);
        if (known.TryGetValue(sign, out var before) && seen.SequenceEqual(before.Readings))
            return before.Course;
        SignCourse? course =
            sign.Change is { } least && seen.Length > 1
                ? Course.Of([.. seen.Select(r => ((r.When.Latest - seen[0].When.Latest).TotalHours, r.Value))], least)
                : null;
        known[sign] = (seen, course);
        return course;
    }
}
