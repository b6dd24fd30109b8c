using System.Collections.Immutable;

namespace Farhold.Rehearsal.Pictures;

/// <summary>The same as a picture, to read.</summary>
/// <param name="Rows">Of as many cells as there are heads.</param>
public sealed record PictureTable(ImmutableArray<string> Heads, ImmutableArray<ImmutableArray<string>> Rows);

/// <summary>A picture of a debrief.</summary>
/// <param name="Svg">With all that it shows as its label; its colours are those of <c>charts.css</c>.</param>
/// <param name="Height">In pixels.</param>
/// <param name="Key">What its lines and fills are.</param>
public sealed record DebriefPicture(string Title, string Svg, double Height, ImmutableArray<string> Key, PictureTable Table);

public static class DebriefPictures
{
    /// <summary>Of a file of its own.</summary>
    private const double FileWidth = 720;

    /// <summary>The least that labels find room in, px.</summary>
    public const double Narrowest = 288;

    /// <summary>What <c>charts.css</c> says of the same classes, black on white.</summary>
    internal const string FileStyle = """
        text{fill:#000;font-weight:500}path{fill:none}.c-strong{font-weight:700}.c-faint{fill:#333}.c-hatch{stroke:#000;stroke-width:1.6}
        .c-tick{stroke:#bbb;stroke-width:1}.c-day{stroke:#000;stroke-width:1.5;stroke-dasharray:2 4}.c-now{stroke:#000;stroke-width:2}
        .c-line{stroke:#000;stroke-width:2}.c-clear,.c-out{fill:#000}.c-hollow{fill:#fff;stroke:#000;stroke-width:1.8}
        .c-other{stroke:#000;stroke-width:2}.c-maybe{fill:none;stroke:#000;stroke-width:1.5;stroke-dasharray:4 3}
        """;

    /// <summary>In their order; what was not known is left out where all of it was.</summary>
    /// <param name="width">In pixels.</param>
    public static ImmutableArray<DebriefPicture> Draw(Debrief debrief, double width)
    {
        var wide = Math.Max(Narrowest, width);
        var open = IgnorancePicture.Of(debrief);
        return
        [
            Course(CoursePicture.Of(debrief.Session), wide),
            Sights(SightsPicture.Of(debrief), wide),
            .. open.Spells.IsEmpty ? [] : (DebriefPicture[])[Ignorance(open, wide)],
            Delays(DelayPicture.Of(debrief), wide),
        ];
    }

    /// <summary>All of them as one SVG file, marked as practice.</summary>
    public static string File(Debrief debrief)
    {
        const double head = 56;
        var pictures = Draw(debrief, FileWidth);
        var (y, body) = (head, new System.Text.StringBuilder());
        foreach (var picture in pictures)
        {
            body.Append($"<text x=\"8\" y=\"{N(y + 16)}\" font-size=\"16\" class=\"c-strong\">{SvgText.Escape(picture.Title)}</text>\n");
            body.Append($"<svg x=\"8\" y=\"{N(y + 24)}\" width=\"{N(FileWidth)}\" height=\"{N(picture.Height)}\">{picture.Svg}</svg>\n");
            y += picture.Height + 40;
            foreach (var line in picture.Key)
            {
                body.Append($"<text x=\"8\" y=\"{N(y)}\" font-size=\"14\" class=\"c-faint\">{SvgText.Escape(line)}</text>\n");
                y += 20;
            }

            y += 12;
        }

        var scenario = debrief.Session.Scenario;
        return $"""
            <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {N(FileWidth + 16)} {N(y)}" width="{N(FileWidth + 16)}" height="{N(
                y
            )}" font-family="sans-serif">
            <style>{FileStyle}</style>
            <rect width="100%" height="100%" fill="#fff"/>
            <text x="8" y="20" font-size="14" class="c-strong">{SvgText.Escape(DebriefTexts.Caution)}</text>
            <text x="8" y="42" font-size="14">{SvgText.Escape(scenario.ShownTitle)}</text>
            {body}</svg>

            """.ReplaceLineEndings(
            "\n"
        );
    }

    /// <summary>The tables of the pictures as text.</summary>
    public static void WriteTables(Debrief debrief, TextWriter to)
    {
        foreach (var picture in Draw(debrief, FileWidth))
        {
            to.Write($"\n{picture.Title}\n");
            foreach (var row in picture.Table.Rows)
                to.Write($"  {string.Join("; ", picture.Table.Heads.Zip(row, (head, cell) => $"{head}: {cell}"))}\n");
        }
    }

    internal static string Name(DeedKind kind) =>
        kind switch
        {
            DeedKind.Tight => DebriefPictureTexts.DeedTight,
            DeedKind.Loose => DebriefPictureTexts.DeedLoose,
            DeedKind.Packed => DebriefPictureTexts.DeedPacked,
            DeedKind.Dressed => DebriefPictureTexts.DeedDressed,
            DeedKind.GaveWay => DebriefPictureTexts.DeedGaveWay,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static DebriefPicture Course(CoursePicture picture, double width)
    {
        ImmutableArray<string> Row(double at, string what) => [RunReport.Clock(at), what, Say.Number(Math.Round(picture.LostAt(at)))];
        var table = new PictureTable(
            [DebriefPictureTexts.HeadTime, DebriefPictureTexts.HeadWhat, DebriefPictureTexts.CourseUnit],
            [
                Row(0, DebriefPictureTexts.Start),
                .. picture.Deeds.Select(d => Row(d.At, $"{Name(d.Kind)}, {d.On}")),
                Row(picture.Until, DebriefPictureTexts.End),
            ]
        );
        var (svg, height) = CourseDrawing.Draw(picture, Name, width, Label(DebriefPictureTexts.CourseTitle, table));
        return new(DebriefPictureTexts.CourseTitle, svg, height, [DebriefPictureTexts.CourseKey], table);
    }

    private static DebriefPicture Sights(SightsPicture picture, double width)
    {
        var eyes = new (string Name, Func<SightTurn, Verdict?> Of)[]
        {
            (DebriefPictureTexts.EyesKnown, t => t.Known),
            (DebriefPictureTexts.EyesHindsight, t => t.Hindsight),
            (DebriefPictureTexts.EyesTruth, t => t.AllSeeing),
        };
        var table = new PictureTable(
            [DebriefPictureTexts.HeadTime, DebriefPictureTexts.HeadLimb, .. eyes.Select(e => e.Name)],
            [
                .. picture.Turns.Select(t =>
                    (ImmutableArray<string>)[RunReport.Clock(t.At), Say.Limb(t.Limb), .. eyes.Select(e => Said(e.Of(t)))]
                ),
            ]
        );
        var (svg, height) = BandDrawing.Draw(
            "debrief-sights",
            picture.Until,
            [
                .. picture
                    .Turns.Select(t => t.Limb)
                    .Distinct()
                    .SelectMany(limb =>
                        eyes.Select(e => new BandRow(
                            $"{Say.Limb(limb)}: {e.Name}",
                            [.. picture.Spells(limb, e.Of).Select(s => Look(s.From, s.To, s.Said))],
                            []
                        ))
                    ),
            ],
            width,
            Label(DebriefPictureTexts.SightsTitle, table)
        );
        return new(
            DebriefPictureTexts.SightsTitle,
            svg,
            height,
            [DebriefPictureTexts.KeyAttempt, DebriefPictureTexts.KeyCheck, DebriefPictureTexts.KeyLeave, DebriefPictureTexts.KeyNone],
            table
        );
    }

    private static string Said(Verdict? said) => said is null ? DebriefPictureTexts.VerdictNone : DebriefWords.Verdict(said);

    private static Band Look(double from, double to, Verdict? said) =>
        said switch
        {
            Verdicts.Verdict.Attempt => new(from, to, "out"),
            Verdicts.Verdict.CheckFirst => new(from, to, "other", Hatched: true),
            null => new(from, to, "maybe"),
            _ => new(from, to, "clear"),
        };

    private static DebriefPicture Ignorance(IgnorancePicture picture, double width)
    {
        var table = new PictureTable(
            [
                DebriefPictureTexts.HeadInput,
                DebriefPictureTexts.HeadLimb,
                DebriefPictureTexts.HeadFrom,
                DebriefPictureTexts.HeadTo,
                DebriefPictureTexts.HeadMattered,
            ],
            [
                .. picture.Spells.Select(s =>
                    (ImmutableArray<string>)
                        [
                            InputWords.Name(s.Input),
                            Say.Limb(s.Limb),
                            RunReport.Clock(s.From),
                            RunReport.Clock(s.To),
                            s.Mattered ? DebriefTexts.StepYes : DebriefTexts.StepNo,
                        ]
                ),
            ]
        );
        var (svg, height) = BandDrawing.Draw(
            "debrief-ignorance",
            picture.Until,
            [
                .. picture
                    .Spells.GroupBy(s => (s.Limb, s.Input))
                    .Select(g => new BandRow(
                        $"{Say.Limb(g.Key.Limb)}: {InputWords.Name(g.Key.Input)}",
                        [.. g.Select(s => new Band(s.From, s.To, "other", Hatched: true))],
                        [.. g.Where(s => s.Mattered).Select(s => (s.From, s.To))]
                    )),
            ],
            width,
            Label(DebriefPictureTexts.IgnoranceTitle, table)
        );
        return new(DebriefPictureTexts.IgnoranceTitle, svg, height, [DebriefPictureTexts.KeyOpen, DebriefPictureTexts.KeyMattered], table);
    }

    private static DebriefPicture Delays(DelayPicture picture, double width)
    {
        var table = new PictureTable(
            [
                DebriefPictureTexts.HeadLimb,
                DebriefPictureTexts.HeadDecidable,
                DebriefPictureTexts.HeadKnown,
                DebriefPictureTexts.HeadBegun,
                DebriefPictureTexts.HeadLetOut,
            ],
            [
                .. picture
                    .Rows.Select(r => r.Delays)
                    .Select(d =>
                        (ImmutableArray<string>)
                            [
                                Say.Limb(d.Limb),
                                DebriefWords.Clock(d.Decidable),
                                After(d.KnownAt, d.Perceiving),
                                After(d.Begun, d.Deciding),
                                After(d.LetOut, d.Doing),
                            ]
                    ),
            ]
        );
        var (svg, height) = DelayDrawing.Draw(picture, width, Label(DebriefPictureTexts.DelaysTitle, table));
        return new(
            DebriefPictureTexts.DelaysTitle,
            svg,
            height,
            [DebriefPictureTexts.KeyPerceiving, DebriefPictureTexts.KeyDeciding, DebriefPictureTexts.KeyDoing],
            table
        );
    }

    /// <summary>A time, and how long after the one before it.</summary>
    private static string After(double? at, double? delay) =>
        delay is >= 0 ? $"{DebriefWords.Clock(at)} (+{DebriefWords.Span(delay.Value)})" : DebriefWords.Clock(at);

    internal static string Label(string title, PictureTable table) =>
        $"{title}. "
        + string.Join(". ", table.Rows.Select(row => string.Join("; ", table.Heads.Zip(row, (head, cell) => $"{head}: {cell}"))))
        + ".";

    private static string N(double value) => SvgText.Number(value);
}
