using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using NodaTime;

namespace Farhold.Files;

/// <summary>Reads members of located JSON, refusing at their place what does not fit.</summary>
internal static class LocatedFields
{
    /// <summary>A whole file, or its refusals in the order of their places: nothing is half-read, one fault refuses it.</summary>
    /// <param name="what">Said where the file is no object, such as <c>a protocol</c>.</param>
    public static Read<T> Whole<T>(ReadOnlyMemory<byte> utf8, string file, string what, Func<LocatedJson, Located, T?> compose)
        where T : class
    {
        var json = new LocatedJson(utf8, file);
        var whole = json.Parse() is { } root && json.IsObject(root, what) ? compose(json, root) : null;
        return whole is not null && json.Refusals.Count == 0
            ? new Read<T>.Usable(whole)
            : new Read<T>.Refused([.. json.Refusals.OrderBy(r => r.Line).ThenBy(r => r.Column)]);
    }

    /// <summary>Refuses what cites a source that the file does not list.</summary>
    public static void Listed(this LocatedJson file, Located root, IEnumerable<string> cited, IReadOnlyDictionary<string, Source> sources)
    {
        foreach (var key in cited.Distinct().Where(k => !sources.ContainsKey(k)))
            file.Refuse(root.Offset, $"the source {key} is cited but not listed under sources");
    }

    public static void OnlyKnown(this LocatedJson file, Located value, params ReadOnlySpan<string> known)
    {
        foreach (var member in value.Members)
            if (!known.Contains(member.Name))
                file.Refuse(member.Offset, $"{member.Name} is not known here; known are {string.Join(", ", known.ToArray())}");
    }

    public static bool IsObject(this LocatedJson file, Located value, string what) =>
        value.Kind == JsonValueKind.Object || file.No(value.Offset, $"{what} has to be an object");

    public static Located? Required(this LocatedJson file, Located value, string name)
    {
        var member = value[name];
        if (member is null)
            file.Refuse(value.Offset, $"{name} is missing");
        return member;
    }

    public static string Text(this LocatedJson file, Located value, string name)
    {
        if (file.Required(value, name) is not { } member)
            return "";
        if (member.Kind == JsonValueKind.String && member.Text.Trim().Length is > 0 and <= 1000)
            return member.Text;
        file.Refuse(member.Offset, $"{name} has to be a text of 1 to 1000 characters");
        return "";
    }

    public static bool Flag(this LocatedJson file, Located value, string name)
    {
        var member = value[name];
        if (member is not null && member.Kind is not (JsonValueKind.True or JsonValueKind.False))
            file.Refuse(member.Offset, $"{name} has to be true or false");
        return member?.Kind == JsonValueKind.True;
    }

    public static ImmutableArray<Located> Items(this LocatedJson file, Located value, string name, bool required = true)
    {
        var member = required ? file.Required(value, name) : value[name];
        if (member is null)
            return [];
        if (member.Kind == JsonValueKind.Array)
            return member.Items;
        file.Refuse(member.Offset, $"{name} has to be a list");
        return [];
    }

    public static T Word<T>(this LocatedJson file, Located value, string name)
        where T : struct, Enum
    {
        if (file.Required(value, name) is not { } member)
            return default;
        if (member.Kind == JsonValueKind.String && Wire.Parse<T>(member.Text) is { } word)
            return word;
        file.Refuse(member.Offset, $"{name} has to be one of {string.Join(", ", Wire.Words<T>())}");
        return default;
    }

    /// <summary>A finite number, or null with a refusal.</summary>
    public static double? Number(this LocatedJson file, Located value, string what)
    {
        if (value.Kind == JsonValueKind.Number
            && double.TryParse(value.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number))
            return number;
        file.Refuse(value.Offset, $"{what} has to be a number");
        return null;
    }

    /// <summary>A span above zero, at most 30 days, such as <c>PT15M</c>; null with a refusal.</summary>
    public static Duration? Span(this LocatedJson file, Located value, string what)
    {
        if (value.Kind == JsonValueKind.String && IsoSpan.TryParse(value.Text) is { } span)
            return span;
        file.Refuse(value.Offset, $"{what} has to be a span of time up to 30 days, such as PT15M or PT1H30M");
        return null;
    }

    public static Duration? OptionalSpan(this LocatedJson file, Located value, string name) =>
        value[name] is { } member ? file.Span(member, name) : null;

    public static LocalDate? Date(this LocatedJson file, Located value, string name)
    {
        if (file.Required(value, name) is not { } member)
            return null;
        if (member.Kind == JsonValueKind.String && TimeText.TryDate(member.Text) is { } date)
            return date;
        file.Refuse(member.Offset, $"{name} has to be a date such as 2031-05-04");
        return null;
    }

    private static bool No(this LocatedJson file, int offset, string reason)
    {
        file.Refuse(offset, reason);
        return false;
    }
}
