using System.Text;
using NodaTime;

namespace Farhold.WayOut.Reach;

/// <summary>
/// The reach profile as a picture: hours to higher care along the route, black on white, told apart by line and not by colour.
/// </summary>
public static class ReachSvg
{
    private const double Left = 64,
        Top = 66,
        Wide = 800,
        High = 300,
        WayRow = 22;

    /// <summary>The picture is cut off at so many times the last limit.</summary>
    private const double Furthest = 4;

    public static string Draw(ReachProfile profile)
    {
        var pen = new Pen(profile);
        var height = Top + High + 74 + WayRow + (18 * ((profile.Ways.Length + 1) / 2));
        var title = profile.Route.Title ?? ReachTexts.Route;
        var svg = new StringBuilder();
        svg.Append(
            Inv(
                $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Left + Wide + 40:0} {height:0}\" role=\"img\" aria-labelledby=\"t d\" font-family=\"sans-serif\" font-size=\"13\" fill=\"#000\">\n"
            )
        );
        svg.Append($"<title id=\"t\">{Safe(ReachTexts.PictureTitle(title))}</title>\n");
        svg.Append($"<desc id=\"d\">{Safe(string.Join(" ", ReachWords.Sentences(profile)))}</desc>\n");
        svg.Append(
            "<defs><pattern id=\"over\" width=\"8\" height=\"8\" patternUnits=\"userSpaceOnUse\"><path d=\"M0 8L8 0\" stroke=\"#000\" stroke-width=\"1\"/></pattern></defs>\n"
        );
        svg.Append(
            Inv(
                $"<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/><text x=\"{Left}\" y=\"22\" font-weight=\"bold\">{Safe(ReachTexts.PictureHead(title))}</text>\n"
            )
        );
        Over(svg, profile, pen);
        Axes(svg, profile, pen);
        Curve(svg, profile, pen, p => p.Median, "");
        Curve(svg, profile, pen, p => p.P90, " stroke-dasharray=\"7 4\"");
        Ways(svg, profile, pen);
        return svg.Append("</svg>\n").ToString();
    }

    /// <summary>Hatched where more than one of ten would pass the last limit.</summary>
    private static void Over(StringBuilder svg, ReachProfile profile, Pen pen)
    {
        foreach (var stretch in profile.Stretches.Where(s => s.Measure == ReachMeasure.P90 && s.Limit == profile.Limits[^1]))
            svg.Append(
                Inv(
                    $"<rect x=\"{pen.X(stretch.FromM):0.#}\" y=\"{Top + High - 14:0}\" width=\"{Math.Max(2, pen.X(stretch.ToM) - pen.X(stretch.FromM)):0.#}\" height=\"14\" fill=\"url(#over)\" stroke=\"#000\"/>\n"
                )
            );
    }

    private static void Axes(StringBuilder svg, ReachProfile profile, Pen pen)
    {
        svg.Append(Inv($"<path d=\"M{Left} {Top}V{Top + High}H{Left + Wide}\" fill=\"none\" stroke=\"#000\"/>\n"));
        for (var hour = 0; hour <= pen.Hours; hour += pen.HourStep)
            svg.Append(
                Inv(
                    $"<path d=\"M{Left - 5} {pen.Y(hour):0.#}h5\" stroke=\"#000\"/><text x=\"{Left - 9}\" y=\"{pen.Y(hour) + 4:0.#}\" text-anchor=\"end\">{hour} h</text>\n"
                )
            );
        for (var km = 0.0; km * 1000 <= pen.LengthM; km += pen.KmStep)
            svg.Append(
                Inv(
                    $"<path d=\"M{pen.X(km * 1000):0.#} {Top + High}v5\" stroke=\"#000\"/><text x=\"{pen.X(km * 1000):0.#}\" y=\"{Top + High + 20:0}\" text-anchor=\"middle\">{km:0.##}</text>\n"
                )
            );
        svg.Append(Inv($"<text x=\"{Left + Wide}\" y=\"{Top + High + 36:0}\" text-anchor=\"end\">{Safe(ReachTexts.AlongRoute)}</text>\n"));
        foreach (var limit in profile.Limits.Where(l => l.After.TotalHours <= pen.Hours))
            svg.Append(
                Inv(
                    $"<path d=\"M{Left} {pen.Y(limit.After.TotalHours):0.#}H{Left + Wide}\" stroke=\"#000\" stroke-width=\"1\" stroke-dasharray=\"1 3\"/><text x=\"{Left + Wide}\" y=\"{pen.Y(limit.After.TotalHours) - 4:0.#}\" text-anchor=\"end\">{Safe(ReachTexts.SinceTightening(Say.Number(limit.After.TotalHours)))}</text>\n"
                )
            );
        svg.Append(
            Inv(
                $"<path d=\"M{Left + 330} 18h34\" stroke=\"#000\" stroke-width=\"2.5\"/><text x=\"{Left + 370}\" y=\"22\">{Safe(ReachTexts.KeyMiddle)}</text><path d=\"M{Left + 480} 18h34\" stroke=\"#000\" stroke-width=\"2.5\" stroke-dasharray=\"7 4\"/><text x=\"{Left + 520}\" y=\"22\">{Safe(ReachTexts.KeyNineOfTen)}</text>"
            )
        );
        svg.Append(
            Inv(
                $"<rect x=\"{Left + 610}\" y=\"11\" width=\"34\" height=\"14\" fill=\"url(#over)\" stroke=\"#000\"/><text x=\"{Left + 650}\" y=\"22\">{Safe(ReachTexts.KeyOver(Say.Number(profile.Limits[^1].After.TotalHours)))}</text>\n"
            )
        );
    }

    private static void Curve(StringBuilder svg, ReachProfile profile, Pen pen, Func<ReachPoint, Duration?> time, string dash)
    {
        svg.Append("<path fill=\"none\" stroke=\"#000\" stroke-width=\"2.5\"").Append(dash).Append(" d=\"");
        for (var i = 0; i < profile.Points.Length; i++)
            svg.Append(
                Inv(
                    $"{(i == 0 ? 'M' : 'L')}{pen.X(profile.Points[i].AlongM):0.#} {pen.Y(time(profile.Points[i])?.TotalHours ?? double.PositiveInfinity):0.#}"
                )
            );
        svg.Append("\"/>\n");
    }

    /// <summary>Where each way leaves the route, which one is best from where, and what the letters mean.</summary>
    private static void Ways(StringBuilder svg, ReachProfile profile, Pen pen)
    {
        foreach (var way in profile.Ways)
            svg.Append(
                Inv(
                    $"<path d=\"M{pen.X(way.AlongM):0.#} {Top - 6}l-4 -8h8z\"/><text x=\"{pen.X(way.AlongM):0.#}\" y=\"{Top - 17}\" text-anchor=\"middle\" font-size=\"11\">{way.Letter}</text>\n"
                )
            );
        var y = Top + High + 46;
        for (int i = 0, from = 0; i < profile.Points.Length; i++)
        {
            if (i + 1 < profile.Points.Length && profile.Points[i + 1].Way == profile.Points[from].Way)
                continue;
            var (x, end) = (pen.X(profile.Points[from].AlongM), pen.X(profile.Points[Math.Min(i + 1, profile.Points.Length - 1)].AlongM));
            svg.Append(
                Inv(
                    $"<rect x=\"{x:0.#}\" y=\"{y:0}\" width=\"{Math.Max(0, end - x):0.#}\" height=\"{WayRow}\" fill=\"none\" stroke=\"#000\"/>"
                )
            );
            if (end - x > 12)
                svg.Append(
                    Inv(
                        $"<text x=\"{(x + end) / 2:0.#}\" y=\"{y + 15:0}\" text-anchor=\"middle\">{profile.Ways[profile.Points[from].Way].Letter}</text>"
                    )
                );
            svg.Append('\n');
            from = i + 1;
        }

        svg.Append(Inv($"<text x=\"{Left - 9}\" y=\"{y + 15:0}\" text-anchor=\"end\">{Safe(ReachTexts.BestWay)}</text>\n"));
        for (var w = 0; w < profile.Ways.Length; w++)
            svg.Append(
                Inv(
                    $"<text x=\"{Left + (w % 2 * Wide / 2):0}\" y=\"{y + WayRow + 20 + (w / 2 * 18):0}\">{profile.Ways[w].Letter}: {Safe(profile.Ways[w].Name)}</text>\n"
                )
            );
    }

    private static string Inv(FormattableString text) => FormattableString.Invariant(text);

    private static string Safe(string text) =>
        string.Concat(
            text.Select(c =>
                c switch
                {
                    '<' => "&lt;",
                    '>' => "&gt;",
                    '&' => "&amp;",
                    '"' => "&quot;",
                    < ' ' or '\uFFFE' or '\uFFFF' => " ",
                    _ => c.ToString(),
                }
            )
        );

    private sealed class Pen
    {
        public Pen(ReachProfile profile)
        {
            LengthM = profile.Points[^1].AlongM;
            var most = profile.Points.Max(p => p.P90?.TotalHours ?? double.PositiveInfinity);
            var last = profile.Limits.Max(l => l.After.TotalHours);
            Hours = Math.Clamp(most * 1.05, last * 1.1, Furthest * last);
            HourStep =
                Hours > 48 ? 12
                : Hours > 16 ? 4
                : Hours > 8 ? 2
                : 1;
            KmStep = new[] { 0.1, 0.25, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500 }.First(step => LengthM / 1000 / step <= 14 || step == 500);
        }

        public double LengthM { get; }

        public double Hours { get; }

        public int HourStep { get; }

        public double KmStep { get; }

        public double X(double metres) => Left + (LengthM > 0 ? Wide * metres / LengthM : 0);

        public double Y(double hours) => Top + High - (High * Math.Min(hours, Hours) / Hours);
    }
}
