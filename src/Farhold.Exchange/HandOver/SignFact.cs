using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Exchange.HandOver;

/// <summary>One value of a sign.</summary>
/// <param name="Number">Null where it is a word.</param>
/// <param name="Text">With its unit: <c>128 /min</c>.</param>
/// <param name="Age">How long ago, as of the hand-over.</param>
/// <param name="Stale">Too old to decide by under the protocol in force; false where that says nothing of it.</param>
public sealed record SignValue(double? Number, string Text, Elapsed Age, bool Stale, Stated Of)
{
    public Happened When => Of.When;
}

/// <summary>One sign: what it was last, and how it went.</summary>
/// <param name="Latest">Empty: nobody ever took it. Several: it is not known which came last, or entries conflict.</param>
/// <param name="All">Every value, in order of time.</param>
/// <param name="Course">Said only of measured signs, and only where noise would hardly look so.</param>
public sealed record SignFact(SignKind Kind, ImmutableArray<SignValue> Latest, ImmutableArray<SignValue> All, SignCourse Course)
{
    internal static ImmutableArray<SignFact> Every(Source source, Protocol protocol) =>
        [.. SignKind.All.Select(kind => Of(kind, source, protocol))];

    private static SignFact Of(SignKind kind, Source source, Protocol protocol)
    {
        ImmutableArray<SignValue> Values(ImmutableArray<Stated> of) =>
            [.. of.Where(s => kind.Text(s.As<Payload.SignsTaken>()) is not null).Select(s => Value(kind, s, source.Now, protocol))];
        return new(
            kind,
            Values(source.Last(Farhold.Records.Kind.SignsTaken, p => kind.Text((Payload.SignsTaken)p) is not null)),
            Values(source.Of(Farhold.Records.Kind.SignsTaken)),
            CourseOf(kind, source)
        );
    }

    private static SignValue Value(SignKind kind, Stated stated, Instant now, Protocol protocol)
    {
        var signs = stated.As<Payload.SignsTaken>();
        var age = stated.When.Until(now);
        var lasting = kind.Field == "systolic" && signs.Systolic is null; // no cuff stands until a pressure is recorded
        var stale = !lasting && protocol.Freshness.TryGetValue(kind.Field, out var fresh) && age.Max > fresh;
        return new(kind.Number(signs), kind.Text(signs)!, age, stale, stated);
    }

    /// <summary>Nothing is said where readings of the record disagree.</summary>
    private static SignCourse CourseOf(SignKind kind, Source source)
    {
        if (kind.SmallestChange is not { } smallest)
            return SignCourse.TooFew;
        var courses = source
            .Readings.Select(r => SignsSeen.Course(r, source.Now, kind.Number))
            .Select(seen =>
                Farhold.Signs.Course.Of([.. seen.Select(s => ((s.When.Latest - seen[0].When.Latest).TotalHours, s.Value))], smallest)
            )
            .Distinct()
            .ToArray();
        return courses.Length == 1 ? courses[0] : SignCourse.TooFew;
    }
}
