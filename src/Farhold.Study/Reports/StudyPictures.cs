using System.Collections.Immutable;

namespace Farhold.Study.Reports;

/// <summary>The pictures of a study. Each has its table under the same name in <see cref="StudyReport"/>.</summary>
public static class StudyPictures
{
    private const double Width = 900;
    private const string Gain = "#1d5f85";
    private const string Loss = "#b5622a";
    private static readonly string[] Dashes = ["", "8 3", "3 3", "10 3 2 3", "1 3", "12 4", "5 5", "2 6"];

    /// <summary>Name of the file, without its ending, and the picture.</summary>
    public static IEnumerable<(string Name, string Svg)> Of(StudyResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var plan = result.Plan;
        for (var cohort = 0; cohort < plan.Cohorts.Length; cohort++)
        {
            yield return ($"net-{plan.Cohorts[cohort].Id}", Net(result, cohort));
            yield return ($"heat-{plan.Cohorts[cohort].Id}", Heat(result, cohort));
        }

        foreach (var decided in result.Decided)
        {
            var name = $"{plan.Cohorts[decided.Cohort].Id}-{StudyReport.N(decided.Hour)}h";
            if (!decided.Indices.IsEmpty)
                yield return ($"indices-{name}", Indices(result, decided));
            yield return ($"tornado-{name}", Tornado(result, decided));
        }
    }

    /// <summary>Even steps of the square root, so that 3 and 300 fit one picture; 0 stays where it is.</summary>
    private static double Root(double value) => Math.Sign(value) * Math.Sqrt(Math.Abs(value));

    private static string Net(StudyResult result, int cohort)
    {
        var (plan, title) = (result.Plan, StudyTexts.FanTitle(result.Plan.Cohorts[cohort].Title));
        const double left = 76,
            right = Width - 190,
            height = 560;
        var svg = new StudySvg($"net-{cohort}", Width, height, title);
        var (top, foot) = (svg.Top + 10, height - 78);
        var hours = plan.Evacuation;
        Fan Of(int policy, int hour) => result.Outer.Fan(cohort, policy, hour);
        var shown = Enumerable.Range(0, plan.Policies.Length).Where(p => p != plan.Reference).ToArray();
        var focus = plan.Uncertainty.Policy;
        var all = shown
            .SelectMany(p => hours.Select((_, h) => Of(p, h).Mean))
            .Concat(hours.SelectMany((_, h) => new[] { Of(focus, h).P5, Of(focus, h).P95 }));
        var (least, most) = (Root(Math.Min(-4, all.Min())), Root(Math.Max(4, all.Max())));
        double X(double hour) => left + ((right - left) * Math.Log(hour / hours[0]) / Math.Log(hours[^1] / hours[0]));
        double Y(double net) => foot - ((foot - top) * (Root(net) - least) / (most - least));
        var zone = plan.Uncertainty.Indifference;
        svg.Box(left, Y(zone), right - left, Y(-zone) - Y(zone), "#c9d0d6");
        foreach (var tick in new[] { -200.0, -100, -50, -20, -5, 0, 5, 20, 50, 100, 200, 400, 600 })
        {
            if (Root(tick) < least || Root(tick) > most)
                continue;
            svg.Line(left - 5, Y(tick), right, Y(tick), tick == 0 ? "#101315" : "#d5dade", tick == 0 ? 2 : 1);
            svg.Words(left - 10, Y(tick) + 5, StudyReport.Signed(tick), "end");
        }

        foreach (var hour in hours)
        {
            svg.Line(X(hour), foot, X(hour), foot + 5);
            svg.Words(X(hour), foot + 21, StudyReport.N(hour), "middle");
        }

        svg.Area(Band(hours.Length, h => (X(hours[h]), Y(Of(focus, h).P5)), h => (X(hours[h]), Y(Of(focus, h).P95))), Gain, 0.18);
        svg.Area(Band(hours.Length, h => (X(hours[h]), Y(Of(focus, h).P25)), h => (X(hours[h]), Y(Of(focus, h).P75))), Gain, 0.30);
        for (var i = 0; i < shown.Length; i++)
        {
            var policy = shown[i];
            svg.Path(
                hours.Select((h, at) => (X(h), Y(Of(policy, at).Mean))),
                policy == focus ? Gain : "#101315",
                policy == focus ? 3 : 1.6,
                Dash(i)
            );
        }

        // Labels beside the ends, kept apart.
        var y = top - 6;
        foreach (var (policy, i) in shown.Select((p, i) => (p, i)).OrderByDescending(s => Of(s.p, hours.Length - 1).Mean))
        {
            var end = Y(Of(policy, hours.Length - 1).Mean);
            y = Math.Max(y + 20, Math.Min(end + 5, foot - (20 * shown.Length)));
            svg.Line(right, end, right + 14, y - 5, "#7d868d");
            svg.Line(right + 14, y - 5, right + 40, y - 5, policy == focus ? Gain : "#101315", policy == focus ? 3 : 1.6, Dash(i));
            svg.Words(right + 45, y, plan.Policies[policy].Title);
        }

        svg.Words(left, foot + 42, StudyTexts.AxisHours);
        svg.Words(left, top - 8, StudyTexts.AxisNet);
        svg.Box(left, foot + 52, 26, 14, Gain, 0.4);
        svg.Words(left + 32, foot + 64, StudyTexts.FanKey(plan.Policies[focus].Title));
        svg.Box(left + 420, foot + 52, 26, 14, "#c9d0d6");
        svg.Words(left + 452, foot + 64, StudyTexts.ZoneKey(StudyReport.N(zone)));
        return svg.Whole();
    }

    private static string? Dash(int i) => Dashes[i % Dashes.Length] is { Length: > 0 } dashes ? dashes : null;

    private static IEnumerable<(double, double)> Band(int count, Func<int, (double, double)> low, Func<int, (double, double)> high) =>
        Enumerable.Range(0, count).Select(low).Concat(Enumerable.Range(0, count).Reverse().Select(high));

    private static string Heat(StudyResult result, int cohort)
    {
        var (plan, title) = (result.Plan, StudyTexts.HeatTitle(result.Plan.Cohorts[cohort].Title));
        var shown = Enumerable.Range(0, plan.Policies.Length).Where(p => p != plan.Reference).ToArray();
        const double row = 38;
        var left = 20 + shown.Max(p => StudySvg.Width(plan.Policies[p].Title));
        var head = 20 + (19 * StudySvg.HeadLines(title, Width));
        var svg = new StudySvg($"heat-{cohort}", Width, head + 24 + (row * shown.Length) + 60, title);
        var (top, cell) = (svg.Top + 8, (Width - left - 12) / plan.Evacuation.Length);
        for (var i = 0; i < shown.Length; i++)
        {
            svg.Words(12, top + (row * i) + 24, plan.Policies[shown[i]].Title);
            for (var hour = 0; hour < plan.Evacuation.Length; hour++)
            {
                var (x, y) = (left + (cell * hour), top + (row * i));
                if (plan.Policies[shown[i]].AttemptH >= plan.Evacuation[hour])
                {
                    svg.Box(x, y, cell, row, "#ffffff", edge: "#d5dade");
                    svg.Words(x + (cell / 2), y + 24, "–", "middle", fill: "#7d868d");
                    continue;
                }

                var fan = result.Outer.Fan(cohort, shown[i], hour);
                var strength = Math.Clamp(Math.Abs(Root(fan.Mean)) / 20, 0.05, 0.75);
                svg.Box(x, y, cell, row, fan.Mean >= 0 ? Gain : Loss, strength, "#ffffff");
                if (fan.Crosses)
                {
                    svg.Box(x, y, cell, row, "url(#hatch)");
                    var wide = StudySvg.Width(StudyReport.Signed(fan.Mean)) * 0.8;
                    svg.Box(x + ((cell - wide) / 2), y + 10, wide, 18, "#ffffff", 0.85);
                }

                svg.Words(
                    x + (cell / 2),
                    y + 24,
                    StudyReport.Signed(fan.Mean),
                    "middle",
                    bold: true,
                    fill: !fan.Crosses && strength > 0.55 ? "#ffffff" : null
                );
            }
        }

        var foot = top + (row * shown.Length);
        for (var hour = 0; hour < plan.Evacuation.Length; hour++)
            svg.Words(left + (cell * (hour + 0.5)), foot + 20, StudyReport.N(plan.Evacuation[hour]), "middle");
        svg.Words(left, foot + 40, StudyTexts.AxisHours);
        svg.Box(12, foot + 48, 26, 14, "url(#hatch)", edge: "#101315");
        svg.Words(44, foot + 60, StudyTexts.HeatKey);
        return svg.Whole();
    }

    private static string Indices(StudyResult result, Decided decided)
    {
        var title = StudyTexts.BarsTitle(result.Plan.Cohorts[decided.Cohort].Title, StudyReport.N(decided.Hour));
        var order = Largest(decided.Indices.Length, i => decided.Indices[i].Total);
        return Bars(
            result,
            $"indices-{decided.Cohort}-{StudyReport.N(decided.Hour)}",
            title,
            order,
            0,
            Math.Max(1, decided.Indices.Max(i => i.TotalHigh)),
            [0, 0.25, 0.5, 0.75, 1],
            tick => tick.ToString(System.Globalization.CultureInfo.InvariantCulture),
            (svg, i, y, x) =>
            {
                var index = decided.Indices[i];
                svg.Box(x(0), y + 3, x(Math.Max(0, index.Total)) - x(0), 18, Gain, 0.35);
                svg.Box(x(0), y + 7, x(Math.Max(0, index.First)) - x(0), 10, Gain);
                svg.Line(x(Math.Max(0, index.TotalLow)), y + 12, x(index.TotalHigh), y + 12, width: 2);
            }
        );
    }

    private static string Tornado(StudyResult result, Decided decided)
    {
        var title = StudyTexts.TornadoTitle(result.Plan.Cohorts[decided.Cohort].Title, StudyReport.N(decided.Hour));
        var order = Largest(decided.Swings.Length, i => decided.Swings[i].Size);
        var ends = decided.Swings.SelectMany(s => new[] { s.Low, s.High }).Append(0).ToArray();
        var (least, most) = (ends.Min(), Math.Max(ends.Max(), ends.Min() + 1));
        var step = new[] { 0.5, 1, 2, 5, 10, 20, 50, 100, 200 }.First(s => (most - least) / s <= 8);
        var ticks = Enumerable
            .Range((int)Math.Ceiling(least / step), (int)((most - least) / step) + 1)
            .Select(i => i * step)
            .Where(t => t <= most);
        return Bars(
            result,
            $"tornado-{decided.Cohort}-{StudyReport.N(decided.Hour)}",
            title,
            order,
            least,
            most,
            [.. ticks],
            StudyReport.Signed,
            (svg, i, y, x) =>
            {
                var swing = decided.Swings[i];
                var (low, high) = (Math.Min(swing.Low, swing.High), Math.Max(swing.Low, swing.High));
                // The half towards the 95 % end is filled, the other hatched.
                svg.Box(x(low), y + 4, x(high) - x(low), 16, "#ffffff", edge: "#101315");
                svg.Box(Math.Min(x(decided.Middle), x(swing.High)), y + 4, Math.Abs(x(decided.Middle) - x(swing.High)), 16, Gain, 0.7);
                svg.Box(Math.Min(x(decided.Middle), x(swing.Low)), y + 4, Math.Abs(x(decided.Middle) - x(swing.Low)), 16, "url(#hatch)");
            }
        );
    }

    private static ImmutableArray<int> Largest(int count, Func<int, double> size) =>
        [.. Enumerable.Range(0, count).OrderByDescending(size).Take(10)];

    private static string Bars(
        StudyResult result,
        string id,
        string title,
        ImmutableArray<int> order,
        double least,
        double most,
        ImmutableArray<double> ticks,
        Func<double, string> word,
        Action<StudySvg, int, double, Func<double, double>> draw
    )
    {
        const double row = 28;
        var report = new StudyReport(result);
        var left = 24 + order.Max(i => StudySvg.Width(report.InputName(i)));
        var head = 20 + (19 * StudySvg.HeadLines(title, Width));
        var svg = new StudySvg(id, Width, head + (row * order.Length) + 44, title);
        double X(double value) => left + ((Width - 40 - left) * (value - least) / (most - least));
        var foot = svg.Top + (row * order.Length) + 4;
        foreach (var tick in ticks)
        {
            svg.Line(X(tick), svg.Top, X(tick), foot, tick == 0 ? "#101315" : "#d5dade", tick == 0 ? 2 : 1);
            svg.Words(X(tick), foot + 18, word(tick), "middle");
        }

        for (var i = 0; i < order.Length; i++)
        {
            svg.Words(12, svg.Top + (row * i) + 17, report.InputName(order[i]));
            draw(svg, order[i], svg.Top + (row * i), X);
        }

        return svg.Whole();
    }
}
