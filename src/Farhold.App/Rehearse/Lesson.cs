using System.Collections.Immutable;

namespace Farhold.App.Rehearse;

/// <summary>What the one who leads keeps of a lesson.</summary>
/// <param name="People">Who treats, by name; it may be nobody.</param>
/// <param name="Marks">To each item of <see cref="Items"/>: y, n, or - where nothing was said.</param>
public sealed record Lesson(ImmutableArray<string> People, string Marks)
{
    private const char Open = '-';

    private const int LongestName = 64;

    /// <summary>What a record can't show and somebody beside the trainee can; yes or no, and no grade.</summary>
    /// <remarks>Own wording, after the twelve steps of converting a tourniquet.</remarks>
    public static ImmutableArray<Func<Texts, string>> Items { get; } =
    [
        t => t.LessonSawReason,
        t => t.LessonSawLaidOut,
        t => t.LessonSawBottom,
        t => t.LessonSawWeight,
        t => t.LessonSawDressed,
        t => t.LessonSawSlowly,
        t => t.LessonSawLoose,
        t => t.LessonSawAfterMove,
        t => t.LessonSawTalk,
        t => t.LessonSawLogs,
    ];

    /// <param name="names">With commas between them.</param>
    public static Lesson New(string? names) =>
        new(
            [
                .. (names ?? "")
                    .Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                    .Select(n => n.Length <= LongestName ? n : n[..LongestName])
                    .Distinct(StringComparer.Ordinal),
            ],
            new(Open, Items.Length)
        );

    /// <summary>Null where nothing was said.</summary>
    public bool? Saw(int item) =>
        Marks.ElementAtOrDefault(item) switch
        {
            'y' => true,
            'n' => false,
            _ => null,
        };

    public Lesson With(int item, bool? saw) =>
        this with
        {
            Marks = string.Concat(
                Enumerable
                    .Range(0, Items.Length)
                    .Select(i =>
                        (i == item ? saw : Saw(i)) switch
                        {
                            true => 'y',
                            false => 'n',
                            _ => Open,
                        }
                    )
            ),
        };
}
