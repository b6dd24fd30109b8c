using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using NodaTime;

namespace Farhold.Files;

/// <summary>Reads values of located JSON, refusing at its place what does not fit.</summary>
/// <remarks>A refusal says what was found and what is accepted: <c>days has to be a number from 1 to 60, not "ten"</c>.</remarks>
public static class LocatedFields
{
    private const int Quoted = 40;

    /// <summary>A whole file, or its refusals in the order of their places: nothing is half-read, one fault refuses it.</summary>
    /// <param name="what">Said where the file is no object, such as <c>a protocol</c>.</param>
    public static Read<T> Whole<T>(ReadOnlyMemory<byte> utf8, string file, string what, Func<LocatedJson, Located, T?> compose)
        where T : class => new LocatedJson(utf8, file).Whole(what, compose);

    /// <inheritdoc cref="Whole{T}(ReadOnlyMemory{byte}, string, string, Func{LocatedJson, Located, T})"/>
    public static Read<T> Whole<T>(this LocatedJson json, string what, Func<LocatedJson, Located, T?> compose)
        where T : class
    {
        var whole = json.Parse() is { } root && json.IsObject(root, what) ? compose(json, root) : null;
        return whole is not null && json.Refusals.Count == 0
            ? new Read<T>.Usable(whole)
            : new Read<T>.Refused([.. json.Refusals.OrderBy(r => r.Line).ThenBy(r => r.Column)]);
    }

    /// <summary>Refuses a value: what it is called, what would be accepted, and what stands there.</summary>
    public static void RefuseValue(this LocatedJson file, Located value, string what, string accepted) =>
        file.Refuse(value.Offset, $"{what} has to be {accepted}, not {Found(value)}");

    public static void RefuseMissing(this LocatedJson file, Located value, string name, string? accepted = null) =>
        file.Refuse(value.Offset, $"{name} is missing{(accepted is null ? "" : $": it has to be {accepted}")}");

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
            {
                var names = known.ToArray();
                var meant = Nearest(member.Name, names) is { } nearest ? $" (is {nearest} meant?)" : "";
                file.Refuse(member.Offset, $"{Short(member.Name)} is not known here{meant}; known are {string.Join(", ", names)}");
            }
    }

    public static bool IsObject(this LocatedJson file, Located value, string what)
    {
        if (value.Kind == JsonValueKind.Object)
            return true;
        file.RefuseValue(value, what, "an object");
        return false;
    }

    /// <param name="accepted">Said where it is missing.</param>
    public static Located? Required(this LocatedJson file, Located value, string name, string? accepted = null)
    {
        var member = value[name];
        if (member is null)
            file.RefuseMissing(value, name, accepted);
        return member;
    }

    /// <summary>A text that is not blank; empty with a refusal.</summary>
    public static string Text(this LocatedJson file, Located value, string name) =>
        file.Required(value, name, Texts(Longest)) is { } member ? file.TextOf(member, name) ?? "" : "";

    /// <summary>A text of up to <paramref name="longest"/> characters, blanks around it not counted; null with a refusal.</summary>
    public static string? TextOf(this LocatedJson file, Located value, string what, int longest = Longest, bool mayBeBlank = false)
    {
        if (value.Kind == JsonValueKind.String)
        {
            var length = value.Text.Trim().EnumerateRunes().Count();
            if (length <= longest && (length > 0 || (mayBeBlank && value.Text.Length > 0)))
                return value.Text;
        }

        file.RefuseValue(value, what, Texts(longest));
        return null;
    }

    public static bool Flag(this LocatedJson file, Located value, string name) =>
        value[name] is { } member && file.FlagOf(member, name) == true;

    /// <summary>Null with a refusal.</summary>
    public static bool? FlagOf(this LocatedJson file, Located value, string what)
    {
        if (value.Kind is JsonValueKind.True or JsonValueKind.False)
            return value.Kind == JsonValueKind.True;
        file.RefuseValue(value, what, "true or false");
        return null;
    }

    public static ImmutableArray<Located> Items(this LocatedJson file, Located value, string name, bool required = true)
    {
        var member = required ? file.Required(value, name, "a list") : value[name];
        if (member is null)
            return [];
        if (member.Kind == JsonValueKind.Array)
            return member.Items;
        file.RefuseValue(member, name, "a list");
        return [];
    }

    public static T Word<T>(this LocatedJson file, Located value, string name)
        where T : struct, Enum
    {
        if (file.Required(value, name, OneOf(Wire.Words<T>())) is not { } member)
            return default;
        if (member.Kind == JsonValueKind.String && Wire.Parse<T>(member.Text) is { } word)
            return word;
        file.RefuseValue(member, name, OneOf(Wire.Words<T>()));
        return default;
    }

    /// <summary>A finite number, or null with a refusal.</summary>
    public static double? Number(this LocatedJson file, Located value, string what)
    {
        if (NumberOf(value) is { } number)
            return number;
        file.RefuseValue(value, what, "a number");
        return null;
    }

    /// <summary>A number within bounds that count as within, or null with a refusal.</summary>
    /// <param name="most">Infinity: no upper bound.</param>
    /// <param name="unit">Said behind the bounds, with its blank.</param>
    public static double? Number(
        this LocatedJson file,
        Located value,
        string what,
        double least,
        double most,
        string unit = "",
        bool whole = false
    )
    {
        if (NumberOf(value) is { } number && number >= least && number <= most && (!whole || number == Math.Floor(number)))
            return number;
        var kind = whole ? "a whole number" : "a number";
        file.RefuseValue(
            value,
            what,
            double.IsInfinity(most)
                ? string.Create(CultureInfo.InvariantCulture, $"{kind} from {least} on{unit}")
                : string.Create(CultureInfo.InvariantCulture, $"{kind} from {least} to {most}{unit}")
        );
        return null;
    }

    /// <summary>A span above zero, at most 30 days, such as <c>PT15M</c>; null with a refusal.</summary>
    public static Duration? Span(this LocatedJson file, Located value, string what)
    {
        if (value.Kind == JsonValueKind.String && IsoSpan.Read(value.Text) is { } span && span > Duration.Zero && span <= IsoSpan.Longest)
            return span;
        file.RefuseValue(value, what, "a span of time up to 30 days, such as PT15M or PT1H30M");
        return null;
    }

    public static Duration? OptionalSpan(this LocatedJson file, Located value, string name) =>
        value[name] is { } member ? file.Span(member, name) : null;

    public static LocalDate? Date(this LocatedJson file, Located value, string name)
    {
        const string accepted = "a date such as 2031-05-04";
        if (file.Required(value, name, accepted) is not { } member)
            return null;
        if (member.Kind == JsonValueKind.String && TimeText.TryDate(member.Text) is { } date)
            return date;
        file.RefuseValue(member, name, accepted);
        return null;
    }

    /// <summary>An instant with its offset from UTC; null with a refusal.</summary>
    public static Instant? InstantOf(this LocatedJson file, Located value, string what)
    {
        if (value.Kind == JsonValueKind.String && WrittenInstant.TryParse(value.Text) is { } instant)
            return instant;
        file.RefuseValue(value, what, "an instant of the years 1900 to 2500, such as 2031-05-04T02:10:00Z");
        return null;
    }

    /// <summary>As it is said in a refusal: <c>one of walk, carry</c>.</summary>
    public static string OneOf(IEnumerable<string> words) => $"one of {string.Join(", ", words)}";

    /// <summary>Null where it is no finite number.</summary>
    internal static double? NumberOf(Located value) =>
        value.Kind == JsonValueKind.Number
        && double.TryParse(value.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
        && double.IsFinite(number)
            ? number
            : null;

    private const int Longest = 1000;

    private static string Texts(int longest) => string.Create(CultureInfo.InvariantCulture, $"a text of 1 to {longest} characters");

    private static string Found(Located value) =>
        value.Kind switch
        {
            JsonValueKind.Object => "an object",
            JsonValueKind.Array when value.Items.IsEmpty => "an empty list",
            JsonValueKind.Array => string.Create(CultureInfo.InvariantCulture, $"a list of {value.Items.Length}"),
            JsonValueKind.String => $"\"{Short(value.Text)}\"",
            _ => Short(value.Text),
        };

    private static string Short(string text)
    {
        var line = Plain.Line(text);
        if (line.Length <= Quoted)
            return line;
        var start = new StringBuilder();
        foreach (var rune in line.EnumerateRunes().Take(Quoted))
            start.Append(rune);
        return start.Append('…').ToString();
    }

    private static string? Nearest(string name, string[] known) =>
        known
            .Where(k => Math.Abs(k.Length - name.Length) <= 2)
            .Select(k => (Name: k, Away: EditDistance.Between(k.ToUpperInvariant(), name.ToUpperInvariant())))
            .Where(k => k.Away <= 2 && k.Away < k.Name.Length)
            .OrderBy(k => k.Away)
            .Select(k => k.Name)
            .FirstOrDefault();
}
