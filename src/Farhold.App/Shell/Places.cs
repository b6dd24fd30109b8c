using System.Collections.Immutable;
using Farhold.App.Words;

namespace Farhold.App.Shell;

/// <summary>A place of the app within a casualty.</summary>
/// <param name="Path">Last part of its address.</param>
public sealed record Place(string Path, Func<Texts, string> Name)
{
    public string Of(string casualty) => $"casualty/{casualty}/{Path}";
}

/// <summary>The places in the order of the bar. A place that does not work yet is not in the list.</summary>
public static class Places
{
    public static readonly Place Now = new("now", t => t.PlaceNow);
    public static readonly Place Limbs = new("limbs", t => t.PlaceLimbs);
    public static readonly Place Signs = new("signs", t => t.PlaceSigns);
    public static readonly Place Sustain = new("sustain", t => t.PlaceSustain);
    public static readonly Place WayOut = new("way-out", t => t.PlaceWayOut);
    public static readonly Place HandOver = new("hand-over", t => t.PlaceHandOver);
    public static readonly Place Log = new("log", t => t.PlaceLog);

    /// <summary>Reached from the strip of what is due, so it needs no room in the bar.</summary>
    public static readonly Place Reminders = new("reminders", t => t.PlaceReminders);

    /// <summary>The casualty that an address within the app names; null if it names none.</summary>
    public static string? CasualtyOf(string address) =>
        address.Split('/', '?', '#') is ["casualty", { Length: > 0 } id, ..] ? id : null;

    public static ImmutableArray<Place> All { get; } = [Now, Limbs, Signs, Sustain, WayOut, HandOver, Log];
}
