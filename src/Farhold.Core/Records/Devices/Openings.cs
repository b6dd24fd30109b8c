using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Farhold.Records;

/// <summary>
/// What the entries that open a casualty say together. Nothing that one of them says is lost by another that leaves it out.
/// </summary>
/// <remarks>
/// Where they differ, two people may have come into one record: that is a doubt, and until one is corrected or withdrawn the
/// lowest mass, the youngest age and every allergy, medicine and history count (docs/decisions/whose-record.md).
/// </remarks>
internal static class Openings
{
    /// <summary>One person out of all of them, on the cautious side; null where there is none.</summary>
    public static Payload.CasualtyOpened? Together(ImmutableArray<Payload.CasualtyOpened> openings) =>
        openings switch
        {
            [] => null,
            [var only] => only,
            _ => new(
                openings[^1].Alias,
                Only(openings.Select(o => o.Sex)),
                openings.Min(o => o.AgeYears),
                openings.Min(o => o.MassKg),
                All(openings.Select(o => o.Allergies)),
                All(openings.Select(o => o.Medicines)),
                string.Join("; ", openings.Select(o => o.History).OfType<string>().Distinct()) is { Length: > 0 } history ? history : null,
                openings.Select(o => o.Casualty).LastOrDefault(c => c is not null),
                openings.Any(o => o.Pregnant == true) ? true : Only(openings.Select(o => o.Pregnant))
            ),
        };

    /// <summary>Each of them, with what it leaves out as the others say it.</summary>
    public static IEnumerable<Payload.CasualtyOpened> Each(ImmutableArray<Payload.CasualtyOpened> openings) =>
        openings.Select(o =>
            o with
            {
                Sex = o.Sex ?? Only(openings.Select(p => p.Sex)),
                AgeYears = o.AgeYears ?? openings.Min(p => p.AgeYears),
                Pregnant = o.Pregnant ?? Only(openings.Select(p => p.Pregnant)),
                History = o.History ?? openings.Select(p => p.History).LastOrDefault(h => h is not null),
            }
        );

    /// <summary>The doubt that they are of one person; null where nothing that they say differs.</summary>
    public static Doubt? Differ(ImmutableArray<Dated> openings)
    {
        if (openings.Length < 2)
            return null;
        var said = openings.Select(o => o.As<Payload.CasualtyOpened>()).ToArray();
        if (
            !Several(said.Select(o => Written(o.Alias)))
            && !Several(said.Select(o => o.Sex))
            && !Several(said.Select(o => o.AgeYears))
            && !Several(said.Select(o => o.MassKg))
            && !Several(said.Select(o => o.Pregnant))
            && !Several(said.Select(o => o.Casualty))
            && !Several(said.Select(o => Listed(o.Allergies)))
            && !Several(said.Select(o => Listed(o.Medicines)))
        )
            return null;
        return new(
            Doubt.OpeningsPrefix + Print(Translation.InEnglish(() => Lines(openings))),
            RecordTexts.OpeningsDiffer(string.Join("; ", Lines(openings)))
        );
    }

    private static string[] Lines(ImmutableArray<Dated> openings) =>
        [.. openings.OrderBy(o => o.Id).Select(o => $"{Person(o.As<Payload.CasualtyOpened>())} ({o.Id})")];

    /// <summary>As one reads it: <c>Bo, male, 34 years, 78 kg, allergic to penicillin</c>.</summary>
    private static string Person(Payload.CasualtyOpened p)
    {
        string?[] parts =
        [
            p.Alias.Length == 0 ? RecordTexts.NoName : Plain.Line(p.Alias),
            p.Sex switch
            {
                Sex.Female => RecordTexts.Female,
                Sex.Male => RecordTexts.Male,
                _ => null,
            },
            p.AgeYears is { } age ? RecordTexts.Years(string.Create(CultureInfo.InvariantCulture, $"{age:0.##}")) : null,
            p.MassKg is { } mass ? RecordTexts.Kilograms(string.Create(CultureInfo.InvariantCulture, $"{mass:0.#}")) : null,
            p.Allergies is { IsDefault: false } allergies
                ? allergies.IsEmpty
                    ? RecordTexts.NoAllergies
                    : RecordTexts.AllergicTo(Plain.Line(string.Join(", ", allergies)))
                : null,
            p.Medicines is { IsDefaultOrEmpty: false } medicines ? RecordTexts.Takes(Plain.Line(string.Join(", ", medicines))) : null,
            p.Casualty is { } casualty ? RecordTexts.KnownAs(casualty[..Math.Min(6, casualty.Length)]) : null,
        ];
        return string.Join(", ", parts.OfType<string>());
    }

    private static string Print(string[] lines) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', lines))).AsSpan(0, 6));

    private static bool Several<T>(IEnumerable<T?> values) => values.Where(v => v is not null).Distinct().Skip(1).Any();

    /// <summary>The one value that is said; null where none is, or they differ.</summary>
    private static T? Only<T>(IEnumerable<T?> values)
        where T : struct => values.OfType<T>().Distinct().ToArray() is [var only] ? only : null;

    private static ImmutableArray<string> All(IEnumerable<ImmutableArray<string>> lists) =>
        lists.Where(l => !l.IsDefault).ToArray() is { Length: > 0 } stated ? [.. stated.SelectMany(l => l).Distinct()] : default;

    private static string? Written(string text) => text.Trim() is { Length: > 0 } written ? written.ToUpperInvariant() : null;

    private static string? Listed(ImmutableArray<string> list) =>
        list.IsDefault ? null : string.Join('\n', list.Select(Written).OfType<string>().Distinct().Order(StringComparer.Ordinal));
}
