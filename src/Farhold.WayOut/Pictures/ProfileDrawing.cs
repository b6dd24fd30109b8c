using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Pictures;

/// <summary>Climb over distance, and two bars of the same ground: when stages end if it goes as likely, and if slowly.</summary>
public static class ProfileDrawing
{
    private const double Left = 40,
        Top = 14,
        Hill = 56,
        Bar = 16,
        BarGap = 12,
        Foot = 20;

    /// <param name="limit">The casualty's first limit that is still to come; null where there is none.</param>
    /// <param name="isDark">Null where light is unknown.</param>
    public static string Draw(
        WayProfile profile,
        ArrivalClock clock,
        Instant? limit,
        Func<Instant, bool>? isDark,
        string id,
        double width,
        string label
    )
    {
        var right = width - 52;
        double X(double km) => Left + ((right - Left) * km / profile.Km);
        var bars = Top + Hill + BarGap;
        var height = bars + (2 * (Bar + BarGap)) + Foot;
        var svg = new ChartSvg(id, width, height, label);
        Slope(svg, profile, X);
        var y = bars;
        foreach (
            var (name, end) in new (string, Func<ProfileStage, Instant?>)[]
            {
                (PictureTexts.Likely, s => s.Likely),
                (PictureTexts.Slow, s => s.Late),
            }
        )
        {
            svg.Text(new(0, y + 13, name, ChartText.Least, "faint"));
            svg.Box("hollow", Left, y, right - Left, Bar);
            Stages(svg, profile, end, X, y, limit, isDark);
            svg.Text(
                new(
                    width,
                    y + 13,
                    end(profile.Stages[^1]) is { } last ? Hour(last, clock) : PictureTexts.Never,
                    ChartText.Least,
                    "strong",
                    Anchor.End
                )
            );
            y += Bar + BarGap;
        }

        svg.Text(new(Left, height - 4, "0", ChartText.Least, "faint"));
        svg.Text(new(right, height - 4, $"{Say.Number(Math.Round(profile.Km, 1))} km", ChartText.Least, "faint", Anchor.End));
        return svg.Whole();
    }

    private static void Slope(ChartSvg svg, WayProfile profile, Func<double, double> x)
    {
        var points = new List<(double Km, double M)> { (0, 0) };
        foreach (var stage in profile.Stages)
        {
            var (_, height) = points[^1];
            var climbing = stage.UpM + stage.DownM > 0 ? stage.UpM / (stage.UpM + stage.DownM) : 0;
            if (stage.UpM > 0 && stage.DownM > 0)
                points.Add((stage.FromKm + (climbing * (stage.ToKm - stage.FromKm)), height + stage.UpM));
            points.Add((stage.ToKm, height + stage.UpM - stage.DownM));
        }

        var (low, high) = (points.Min(p => p.M), points.Max(p => p.M));
        var tall = Math.Max(high - low, 100);
        double Y(double m) => Top + Hill - ((Hill - 6) * (m - low) / tall);
        var line = string.Join("", points.Select((p, i) => $"{(i == 0 ? "M" : "L")}{SvgText.Number(x(p.Km))} {SvgText.Number(Y(p.M))}"));
        svg.Path("line", line);
        svg.Path("now", $"M{SvgText.Number(x(0))} {SvgText.Number(Top + Hill)}H{SvgText.Number(x(profile.Km))}");
        svg.Text(
            new(Left - 4, Y(high) + 8, string.Create(CultureInfo.InvariantCulture, $"{high:+0;-0;0}"), ChartText.Least, "faint", Anchor.End)
        );
        svg.Text(new(0, Top - 2, "m", ChartText.Least, "faint"));
    }

    private static void Stages(
        ChartSvg svg,
        WayProfile profile,
        Func<ProfileStage, Instant?> end,
        Func<double, double> x,
        double y,
        Instant? limit,
        Func<Instant, bool>? isDark
    )
    {
        Instant? before = null;
        foreach (var stage in profile.Stages)
        {
            if (end(stage) is { } at)
            {
                if (isDark?.Invoke(at) == true)
                    svg.Box("tick", x(stage.FromKm), y, x(stage.ToKm) - x(stage.FromKm), Bar, hatched: true);
                // The limit falls within the first stage that ends after it; before it where that stage had begun after it.
                if (limit is { } by && at >= by && !(before >= by))
                {
                    var share = before is { } from && at > from ? (by - from) / (at - from) : 0.5;
                    var km = stage.FromKm + (Math.Clamp(share, 0, 1) * (stage.ToKm - stage.FromKm));
                    svg.Path("bars", $"M{SvgText.Number(x(km))} {SvgText.Number(y - 4)}v{SvgText.Number(Bar + 8)}");
                }

                before = at;
            }

            svg.Path("tick", $"M{SvgText.Number(x(stage.ToKm))} {SvgText.Number(y)}v{SvgText.Number(Bar)}");
        }
    }

    private static string Hour(Instant at, ArrivalClock clock) => at.InZone(clock.Zone).ToString("HH:mm", CultureInfo.InvariantCulture);
}
