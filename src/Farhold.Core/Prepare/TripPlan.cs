using System.Collections.Immutable;

namespace Farhold.Prepare;

/// <summary>One of the party.</summary>
/// <param name="Role">In their own words, such as <c>first aid</c>.</param>
/// <param name="Practised">Went through a practice casualty or a course not long ago.</param>
public sealed record PartyMember(string Name, string Role, bool Practised);

/// <summary>A trip before it begins, as the party says it. What nobody said is null or empty.</summary>
/// <param name="Route">Where to, and by which way.</param>
/// <param name="Days">Of the trip, 1 and more.</param>
/// <param name="HoursToHelp">From the worst place of the route, the time in which help comes in nine of ten cases.</param>
/// <param name="Alarm">When somebody outside calls for help if the party is not back, and whom they call.</param>
/// <param name="Contacts">One a line, with a number.</param>
/// <param name="Packed">Pieces by item of the kit list.</param>
public sealed record TripPlan(
    string? Route,
    int? Days,
    double? HoursToHelp,
    string? Alarm,
    ImmutableArray<PartyMember> Party,
    ImmutableArray<string> Contacts,
    ImmutableSortedDictionary<string, int> Packed
)
{
    public const int MostDays = 60;

    /// <summary>What is further away is held as this: such hours are a least, see <see cref="OrMore"/>.</summary>
    public const int MostHours = 240;

    /// <summary>Whether help may take longer than the hours say.</summary>
    public bool OrMore => HoursToHelp >= MostHours;

    /// <summary><c>9 h</c>, or <c>240 h or more</c>; null where nobody said.</summary>
    public string? HoursSaid => HoursToHelp is { } hours ? PrepareTexts.Hours(Say.Number(hours), OrMore ? PrepareTexts.OrMore : "") : null;

    public static TripPlan Empty { get; } =
        new(null, null, null, null, [], [], ImmutableSortedDictionary.Create<string, int>(StringComparer.Ordinal));

    /// <summary>With the hours that a route comes to in place of what was said before.</summary>
    /// <param name="hours">Null where the route can't tell: then nobody knows.</param>
    public TripPlan WithReach(double? hours) => this with { HoursToHelp = hours is { } known ? Math.Min(MostHours, known) : null };
}
