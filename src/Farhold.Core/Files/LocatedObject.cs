using System.Text.Json;
using NodaTime;

namespace Farhold.Files;

/// <summary>One object of a file, whose members are asked for by name and may be left out; what nobody asks for is refused.</summary>
/// <remarks>For objects whose members depend on each other. Null is a member that is left out, or refused.</remarks>
public sealed class LocatedObject
{
    private readonly Located value;
    private readonly List<string> asked = [];

    /// <param name="what">Said where it is no object, such as <c>a stage</c>.</param>
    public LocatedObject(LocatedJson file, Located value, string what)
    {
        (File, this.value) = (file, value);
        IsObject = file.IsObject(value, what);
    }

    public LocatedJson File { get; }

    public bool IsObject { get; }

    public bool Has(string name) => value[name] is not null;

    /// <summary>Where a member stands, or the object where it has none.</summary>
    public int At(string name) => (value[name] ?? value).Offset;

    public void Refuse(string name, string reason) => File.Refuse(At(name), reason);

    public void Required(string name, string accepted)
    {
        if (IsObject)
            File.Required(value, name, accepted);
    }

    /// <summary>Refuses members that nobody asked for; ask for all first.</summary>
    public void Done()
    {
        if (IsObject)
            File.OnlyKnown(value, [.. asked]);
    }

    public Located? Any(string name)
    {
        if (!asked.Contains(name))
            asked.Add(name);
        return value[name];
    }

    /// <summary>A member that is an object itself.</summary>
    public LocatedObject? Object(string name) => Any(name) is { } member ? new(File, member, name) : null;

    public string? Text(string name, int longest) => Any(name) is { } member ? File.TextOf(member, name, longest, mayBeBlank: true) : null;

    public bool? Flag(string name) => Any(name) is { } member ? File.FlagOf(member, name) : null;

    public double? Number(string name, double least, double most, string unit = "") =>
        Any(name) is { } member ? File.Number(member, name, least, most, unit) : null;

    public int? Whole(string name, int least, int most, string unit = "") =>
        Any(name) is { } member ? (int?)File.Number(member, name, least, most, unit, whole: true) : null;

    public Instant? Instant(string name) => Any(name) is { } member ? File.InstantOf(member, name) : null;

    /// <summary>One of some words, and what it stands for.</summary>
    public T? Word<T>(string name, IEnumerable<(string Word, T Meaning)> words)
        where T : class
    {
        if (Any(name) is not { } member)
            return null;
        if (member.Kind == JsonValueKind.String)
            foreach (var (word, meaning) in words)
                if (word == member.Text)
                    return meaning;
        File.RefuseValue(member, name, LocatedFields.OneOf(words.Select(w => w.Word)));
        return null;
    }

    /// <summary>A span from 0 to 30 days, or a number of minutes.</summary>
    public Duration? SpanOrMinutes(string name)
    {
        if (Any(name) is not { } member)
            return null;
        var span = member.Kind switch
        {
            JsonValueKind.String => IsoSpan.Read(member.Text),
            _ => LocatedFields.NumberOf(member) is { } minutes && Math.Abs(minutes) <= 1e6 ? Duration.FromMinutes(minutes) : null,
        };
        if (span is { } known && known >= Duration.Zero && known <= IsoSpan.Longest)
            return known;
        File.RefuseValue(member, name, "a span of time from 0 to 30 days, such as PT1H20M, or a number of minutes");
        return null;
    }
}
