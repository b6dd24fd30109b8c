using NodaTime;

namespace Farhold.Rehearsal.Scenarios;

/// <summary>Times of a rehearsal, in seconds from its start: <c>PT2M30S</c>, or <c>-PT25M</c> before it.</summary>
internal static class SpanFields
{
    /// <summary>Two weeks: more is no rehearsal.</summary>
    public const double Longest = 14 * 86_400;

    /// <param name="least">In seconds.</param>
    /// <param name="most">In seconds.</param>
    /// <returns>Null where it is left out or refused.</returns>
    public static double? Seconds(LocatedObject fields, string name, double least = 0, double most = Longest)
    {
        if (fields.Any(name) is not { } member)
            return null;
        if (Read(member.Text) is { } seconds && member.Kind == System.Text.Json.JsonValueKind.String && seconds >= least && seconds <= most)
            return seconds;
        fields.File.RefuseValue(member, name, $"a time from {Write(least)} to {Write(most)} after the start, such as {Example(least)}");
        return null;
    }

    /// <summary>As <see cref="Seconds"/>, and not to be left out.</summary>
    public static double? Needed(LocatedObject fields, string name, double least = 0, double most = Longest)
    {
        fields.Required(name, $"a time after the start, such as {Example(least)}");
        return Seconds(fields, name, least, most);
    }

    public static double? Read(string text)
    {
        var before = text.StartsWith('-');
        return IsoSpan.Read(before ? text[1..] : text) is { } span && Math.Abs(span.TotalSeconds) <= Longest
            ? (before ? -1 : 1) * span.TotalSeconds
            : null;
    }

    public static string Write(double seconds) => IsoSpan.Write(Duration.FromSeconds(seconds));

    private static string Example(double least) => least < 0 ? "-PT25M" : "PT15M";
}
