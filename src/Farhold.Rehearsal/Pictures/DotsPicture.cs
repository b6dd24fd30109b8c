using System.Collections.Immutable;

namespace Farhold.Rehearsal.Pictures;

/// <summary>One casualty of many alike, as it was done and with one change.</summary>
public enum DotKind
{
    /// <summary>Held both ways.</summary>
    Held,

    /// <summary>Bled both ways.</summary>
    Bled,

    /// <summary>Held only with the change.</summary>
    Saved,

    /// <summary>Bled only with the change.</summary>
    Worse,
}

/// <summary>A dot for each of so many casualties alike: "in n of 200".</summary>
/// <param name="Dots">Held first, then what the change made better, what it made worse, and what bled both ways.</param>
public sealed record DotsPicture(ImmutableArray<DotKind> Dots)
{
    /// <summary>200 of them are ten rows.</summary>
    public const int InARow = 20;

    private const double Step = 16;
    private const double Radius = 5.5;

    /// <param name="other">As many as <paramref name="same"/>, one by one the same casualty.</param>
    public static DotsPicture Of(IReadOnlyCollection<CasualtyCourse> same, IReadOnlyCollection<CasualtyCourse> other) =>
        new([.. same.Zip(other, (s, o) => Kind(s.BledAgain, o.BledAgain)).OrderBy(Order)]);

    public int Count(DotKind kind) => Dots.Count(d => d == kind);

    /// <summary>With all of it as a table, whose words are its label.</summary>
    public DebriefPicture Draw()
    {
        var table = new PictureTable(
            [DebriefPictureTexts.HeadWhat, DebriefPictureTexts.HeadCount],
            [
                .. Enum.GetValues<DotKind>()
                    .OrderBy(Order)
                    .Select(k => (ImmutableArray<string>)[Name(k), DebriefPictureTexts.Of(Say.Number(Count(k)), Say.Number(Dots.Length))]),
            ]
        );
        var rows = (Dots.Length + InARow - 1) / InARow;
        var svg = new ChartSvg(
            "debrief-dots",
            InARow * Step,
            Math.Max(1, rows) * Step,
            DebriefPictures.Label(DebriefPictureTexts.DotsTitle, table)
        );
        foreach (var (i, dot) in Dots.Index())
        {
            var (x, y) = (((i % InARow) + 0.5) * Step, ((i / InARow) + 0.5) * Step);
            if (dot == DotKind.Worse)
            {
                svg.Path("line", $"M{N(x - 4)} {N(y - 4)}L{N(x + 4)} {N(y + 4)}M{N(x + 4)} {N(y - 4)}L{N(x - 4)} {N(y + 4)}");
                continue;
            }

            svg.Circle(dot == DotKind.Held ? "clear" : "hollow", x, y, Radius);
            if (dot == DotKind.Saved)
                svg.Circle("clear", x, y, 2);
        }

        return new(
            DebriefPictureTexts.DotsTitle,
            svg.Whole(),
            Math.Max(1, rows) * Step,
            [DebriefPictureTexts.KeyHeld, DebriefPictureTexts.KeySaved, DebriefPictureTexts.KeyWorse, DebriefPictureTexts.KeyBled],
            table
        );
    }

    private static string Name(DotKind kind) =>
        kind switch
        {
            DotKind.Held => DebriefPictureTexts.DotHeld,
            DotKind.Saved => DebriefPictureTexts.DotSaved,
            DotKind.Worse => DebriefPictureTexts.DotWorse,
            DotKind.Bled => DebriefPictureTexts.DotBled,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static int Order(DotKind kind) =>
        kind switch
        {
            DotKind.Held => 0,
            DotKind.Saved => 1,
            DotKind.Worse => 2,
            _ => 3,
        };

    private static DotKind Kind(bool bled, bool bledSo) =>
        (bled, bledSo) switch
        {
            (false, false) => DotKind.Held,
            (true, false) => DotKind.Saved,
            (false, true) => DotKind.Worse,
            _ => DotKind.Bled,
        };

    private static string N(double value) => SvgText.Number(value);
}
