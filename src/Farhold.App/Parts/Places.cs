using System.Collections.Immutable;

namespace Farhold.App.Parts;

/// <summary>A place of the app within a casualty.</summary>
/// <param name="Path">First part of its address within the casualty.</param>
/// <param name="Icon">In the bar; null for one that is reached from another place.</param>
/// <param name="Within">Addresses of what belongs to it, beside its own.</param>
public sealed record Place(string Path, Func<Texts, string> Name, Glyph? Icon = null, params ImmutableArray<string> Within)
{
    public string Of(string casualty) => $"casualty/{casualty}/{Path}";

    /// <summary>Whether an address within the app is of this place.</summary>
    public bool Holds(string address) =>
        address.Split('/', '?', '#') is ["casualty", _, var path, ..] && (path == Path || Within.Contains(path));
}

/// <summary>The places, each with what belongs to it.</summary>
public static class Places
{
    public static readonly Place Now = new("now", t => t.PlaceNow, Glyph.Now, "why", "attempt", "ask", "enter");
    public static readonly Place Casualty = new("body", t => t.PlaceCasualty, Glyph.Casualty, "limbs", "signs", "look", "re-site");
    public static readonly Place Sustain = new("sustain", t => t.PlaceSustain, Glyph.Care, "drugs", "fluids", "supplies", "reminders");
    public static readonly Place WayOut = new("way-out", t => t.PlaceWayOut, Glyph.WayOut, "position");
    public static readonly Place HandOver = new(
        "hand-over",
        t => t.PlaceHandOver,
        Glyph.HandOver,
        "log",
        "amend",
        "card",
        "read-aloud",
        "short-message",
        "show-codes",
        "take-codes",
        "take-message",
        "look-back",
        "erase"
    );

    public static readonly Place Limbs = new("limbs", t => t.PlaceLimbs);
    public static readonly Place Signs = new("signs", t => t.PlaceSigns);
    public static readonly Place Log = new("log", t => t.PlaceLog);
    public static readonly Place Reminders = new("reminders", t => t.PlaceReminders);

    /// <summary>The casualty that an address within the app names; null if it names none.</summary>
    public static string? CasualtyOf(string address) => address.Split('/', '?', '#') is ["casualty", { Length: > 0 } id, ..] ? id : null;

    /// <summary>In the order of the bar.</summary>
    public static ImmutableArray<Place> All { get; } = [Now, Casualty, Sustain, WayOut, HandOver];
}
