using System.Globalization;
using NodaTime;

namespace Farhold.App.Parts;

/// <summary>Spans for a large clock: whole minutes, rounded down, with as few letters as can be read.</summary>
public static class ShortSpan
{
    /// <summary><c>40 min</c>, <c>1 h 02</c>, <c>3 d 4 h</c>.</summary>
    public static string Text(Duration d)
    {
        var minutes = (long)Math.Floor(Math.Max(0, d.TotalMinutes));
        return minutes switch
        {
            < 60 => string.Create(CultureInfo.InvariantCulture, $"{minutes} min"),
            < 72 * 60 => string.Create(CultureInfo.InvariantCulture, $"{minutes / 60} h {minutes % 60:00}"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{minutes / 1440} d {minutes % 1440 / 60} h"),
        };
    }
}
