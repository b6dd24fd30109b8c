using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Farhold.Study.Questions;

/// <summary>Reads a study from JSON, wholly or not at all. Its form is studies/study.schema.json.</summary>
public static partial class StudyReader
{
    /// <summary>More would outrun the dimensions of the points that draw them: two for each, and one is the cohort's.</summary>
    public const int MostDrawn = (SobolPoints.MostDimensions / 2) - 1;

    private const int LongestText = 2000;
    private const int LongestName = 60;

    public static Read<StudyPlan> Read(ReadOnlyMemory<byte> utf8, string file) =>
        LocatedFields.Whole(
            utf8,
            file,
            "a study",
            (json, root) =>
                Compose(json, root) is { } plan ? plan with { Hash = FileHash.Of(CanonicalJson.Of(new JsonText(utf8)).Utf8.Span) } : null
        );

    private static StudyPlan? Compose(LocatedJson json, Located root)
    {
        var fields = new LocatedObject(json, root, "a study");
        fields.Text("$schema", LongestText);
        var id = Name(fields, "study");
        var (title, question) = (Text(fields, "title"), Text(fields, "question"));
        fields.Required("model", "the number of a casualty model");
        fields.Required("seed", "a whole number");
        var (model, seed) = (fields.Whole("model", 1, Farhold.Physiology.Constants.Models.Newest), fields.Whole("seed", 0, int.MaxValue));
        var bleeding =
            fields.Word("bleeding", [("model", "model"), ("shares", "shares")]) == "shares" ? BleedingBy.Shares : BleedingBy.Model;
        var cohorts = Each(fields, "cohorts", 1, 6, Cohort);
        Distinct(json, fields, "cohorts", cohorts.Select(c => c?.Id));
        var casualties = Casualties(fields);
        var figures = Figures(fields, bleeding);
        var policies = Each(fields, "policies", 2, 24, PolicyOf);
        Distinct(json, fields, "policies", policies.Select(p => p?.Id));
        var reference = Place(fields, "reference", policies);
        var evacuation = Hours(json, fields, "evacuationH");
        var weights = WeightsOf(fields);
        var run = Run(fields, evacuation);
        var uncertainty = Uncertainty(fields, policies, evacuation, run?.Casualties ?? 0);
        fields.Done();
        if (figures?.Drawn.Length > MostDrawn)
            fields.Refuse(
                "figures",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"at most {MostDrawn} figures may be drawn, and {figures.Drawn.Length} are no fixed value"
                )
            );
        if (json.Refusals.Count > 0 || weights is null || run is null || uncertainty is null || figures is null || casualties is null)
            return null;
        return new()
        {
            Id = id,
            Title = title,
            Question = question,
            Model = model!.Value,
            Seed = (ulong)seed!.Value,
            Cohorts = [.. cohorts.OfType<Cohort>()],
            Casualties = casualties,
            Figures = figures,
            Bleeding = bleeding,
            Policies = [.. policies.OfType<Policy>()],
            Reference = reference,
            Evacuation = evacuation,
            Weights = weights,
            Run = run,
            Uncertainty = uncertainty,
        };
    }

    private static Cohort? Cohort(LocatedObject fields) =>
        new(Name(fields, "cohort"), Text(fields, "title"), Need(fields, "needed", 0, 1) ?? new Figure.Fixed(0));

    private static CasualtyFigures? Casualties(LocatedObject root)
    {
        root.Required("casualties", "an object");
        if (root.Object("casualties") is not { IsObject: true } fields)
            return null;
        var (needed, other) = (Need(fields, "bleedNeeded", 1, 5000), Need(fields, "bleedNotNeeded", 1, 5000));
        var leak = Need(fields, "leak", 0, 1);
        var (tied, air) = (Number(fields, "tiedAfterMin", 0.5, 60), Number(fields, "airC", -40, 45));
        var (cover, pain, fear) = (Number(fields, "insulation", 0.02, 5), Number(fields, "pain", 0, 10), Number(fields, "anxiety", 0, 1));
        fields.Done();
        return needed is null || other is null || leak is null ? null : new(needed, other, leak, tied, air, cover, pain, fear);
    }

    private static OutcomeFigures? Figures(LocatedObject root, BleedingBy bleeding)
    {
        root.Required("figures", "an object");
        if (root.Object("figures") is not { IsObject: true } fields)
            return null;
        var all = ImmutableArray.CreateBuilder<Figure>();
        foreach (var input in Enum.GetValues<StudyInput>())
        {
            var name = Wire(input);
            var ofShares = input is StudyInput.DeathPerFailure or StudyInput.DeathPerRebleed;
            if (ofShares && bleeding == BleedingBy.Model)
            {
                if (fields.Has(name))
                    fields.Refuse(name, $"{name} is decided by the model: leave it out, or let bleeding be shares");
                fields.Any(name);
                all.Add(new Figure.Fixed(0));
                continue;
            }

            var (least, most) = Bounds(input);
            all.Add(Need(fields, name, least, most) ?? new Figure.Fixed(least));
        }

        fields.Done();
        return new(all.ToImmutable());
    }

    /// <summary>As it is written in a file: <c>limbScaleH</c>.</summary>
    public static string Wire(StudyInput input) => JsonNamingPolicy.CamelCase.ConvertName(input.ToString());

    private static (double Least, double Most) Bounds(StudyInput input) =>
        input switch
        {
            StudyInput.FailsWithinMin => (0, 60),
            StudyInput.RebleedHalvesH or StudyInput.MoveAfterH => (0, 48),
            StudyInput.ReactionMin => (0, 30),
            StudyInput.TimeToDeath => (0.1, 10),
            StudyInput.LimbShape => (0.5, 20),
            StudyInput.LimbScaleH => (1, 48),
            StudyInput.PalsyScale => (0, 5),
            _ => (0, 1),
        };

    private static Policy? PolicyOf(LocatedObject fields)
    {
        var (id, title) = (Name(fields, "policy"), Text(fields, "title"));
        var attempt = fields.Number("attemptH", 0.1, 12, " (hours after tightening)");
        var gauze = fields.Word("gauze", [("haemostatic", "h"), ("plain", "p")]) == "p" ? Gauze.Plain : Gauze.Haemostatic;
        var second = fields.Flag("secondTry") ?? false;
        var watch = WatchOf(fields);
        if (attempt is null && (fields.Has("gauze") || fields.Has("secondTry") || fields.Has("watch")))
            fields.Refuse("attemptH", "without attemptH no attempt is made, and gauze, watch and secondTry mean nothing");
        if (attempt is not null && !fields.Has("watch"))
            fields.Required("watch", "minutes between looks, or periods of them");
        return new(id, title, attempt, gauze, watch ?? Never, second);
    }

    private static readonly Watch Never = new("", [new(double.PositiveInfinity, double.PositiveInfinity)]);

    /// <summary>Minutes between looks, or a list of periods, the last without an end.</summary>
    private static Watch? WatchOf(LocatedObject fields)
    {
        if (fields.Any("watch") is not { } watch)
            return null;
        var json = fields.File;
        if (watch.Kind != JsonValueKind.Array)
            return json.Number(watch, "watch", 0.25, 720, " minutes, or a list of periods") is { } every
                ? new(Every(every), [new(double.PositiveInfinity, every)])
                : null;
        var periods = ImmutableArray.CreateBuilder<WatchPeriod>();
        for (var i = 0; i < watch.Items.Length; i++)
        {
            var period = new LocatedObject(json, watch.Items[i], "a period");
            if (!period.IsObject)
                return null;
            var last = i == watch.Items.Length - 1;
            period.Required("everyMin", "minutes between looks");
            var between = period.Number("everyMin", 0.25, 720, " minutes");
            var until = period.Number("untilMin", periods.Count > 0 ? periods[^1].UntilMin : 0, 2880, " minutes, rising");
            if (last == period.Has("untilMin"))
                period.Refuse(
                    "untilMin",
                    last ? "the last period has no untilMin: it goes on" : "untilMin is missing: only the last period goes on"
                );
            period.Done();
            periods.Add(new(last ? double.PositiveInfinity : until ?? 0, between ?? 1));
        }

        if (periods.Count == 0)
        {
            json.RefuseValue(watch, "watch", "a number of minutes, or a list of periods");
            return null;
        }

        return new(
            string.Join(
                ", ",
                periods.Select(p =>
                    double.IsInfinity(p.UntilMin) ? Every(p.EveryMin) : $"{Every(p.EveryMin)} to {Say.Number(p.UntilMin)} min"
                )
            ),
            periods.ToImmutable()
        );
    }

    private static string Every(double minutes) => minutes <= 0.5 ? "without a break" : $"every {Say.Number(minutes)} min";

    private static Weights? WeightsOf(LocatedObject root)
    {
        root.Required("weights", "an object: what a death, a limb, a palsy count");
        if (root.Object("weights") is not { IsObject: true } fields)
            return null;
        var weights = new Weights(Number(fields, "death", 0, 1), Number(fields, "limb", 0, 1), Number(fields, "palsy", 0, 1));
        fields.Done();
        return weights;
    }

    private static RunSize? Run(LocatedObject root, ImmutableArray<double> evacuation)
    {
        root.Required("run", "an object: how many casualties, and when to stop");
        if (root.Object("run") is not { IsObject: true } fields)
            return null;
        var (casualties, batch) = (Whole(fields, "casualties", 64, 10_000_000), Whole(fields, "batch", 64, 65536));
        var alpha = Number(fields, "alpha", 0.001, 0.5);
        var (deaths, limbs) = (Number(fields, "marginDeaths", 0.01, 1000), Number(fields, "marginLimbs", 0.01, 1000));
        var at = Hours(fields.File, fields, "stopAtH");
        if (batch > 0 && casualties % batch != 0)
            fields.Refuse("casualties", string.Create(CultureInfo.InvariantCulture, $"casualties have to be whole batches of {batch}"));
        if (batch % 8 != 0)
            fields.Refuse("batch", "batch has to be a multiple of 8");
        Among(fields, "stopAtH", at, evacuation);
        fields.Done();
        return new(casualties, batch, alpha, deaths, limbs, at);
    }

    private static UncertaintySize? Uncertainty(
        LocatedObject root,
        ImmutableArray<Policy?> policies,
        ImmutableArray<double> evacuation,
        int casualties
    )
    {
        root.Required("uncertainty", "an object: how often the figures are drawn");
        if (root.Object("uncertainty") is not { IsObject: true } fields)
            return null;
        var (draws, inner) = (Whole(fields, "draws", 16, 65536), Whole(fields, "casualties", 64, 1_000_000));
        var (bases, trajectories) = (Whole(fields, "base", 0, 65536), Whole(fields, "trajectories", 0, 1000));
        var policy = Place(fields, "policy", policies);
        var at = Hours(fields.File, fields, "atH");
        var indifference = Number(fields, "indifferencePer1000", 0, 100);
        foreach (var (name, value) in new[] { ("draws", draws), ("base", bases) })
            if (value != 0 && (value & (value - 1)) != 0)
                fields.Refuse(name, $"{name} has to be a power of two: points lose their balance otherwise");
        if (inner > casualties)
            fields.Refuse("casualties", "not more casualties than the run has");
        Among(fields, "atH", at, evacuation);
        fields.Done();
        return new(draws, inner, bases, trajectories, policy, at, indifference);
    }

    private static void Among(LocatedObject fields, string name, ImmutableArray<double> some, ImmutableArray<double> all)
    {
        if (some.FirstOrDefault(h => !all.Contains(h), -1) is >= 0 and var odd)
            fields.Refuse(name, string.Create(CultureInfo.InvariantCulture, $"{odd} h is not among evacuationH"));
    }

    private static ImmutableArray<double> Hours(LocatedJson json, LocatedObject fields, string name)
    {
        fields.Required(name, "a list of hours, rising");
        if (fields.Any(name) is not { } list)
            return [];
        if (list.Kind != JsonValueKind.Array || list.Items.IsEmpty)
        {
            json.RefuseValue(list, name, "a list of hours, rising");
            return [];
        }

        var hours = ImmutableArray.CreateBuilder<double>();
        foreach (var item in list.Items)
        {
            if (json.Number(item, name, 0.5, 24, " h") is not { } hour)
                return [];
            if (hours.Count > 0 && hour <= hours[^1])
                json.Refuse(item.Offset, $"{name} have to rise");
            hours.Add(hour);
        }

        return hours.ToImmutable();
    }

    private static ImmutableArray<T?> Each<T>(LocatedObject root, string name, int least, int most, Func<LocatedObject, T?> one)
        where T : class
    {
        var accepted = string.Create(CultureInfo.InvariantCulture, $"a list of {least} to {most}");
        root.Required(name, accepted);
        if (root.Any(name) is not { } list)
            return [];
        if (list.Kind != JsonValueKind.Array || list.Items.Length < least || list.Items.Length > most)
        {
            root.File.RefuseValue(list, name, accepted);
            return [];
        }

        return
        [
            .. list.Items.Select(item =>
            {
                var fields = new LocatedObject(root.File, item, name);
                if (!fields.IsObject)
                    return null;
                var made = one(fields);
                fields.Done();
                return made;
            }),
        ];
    }

    private static void Distinct(LocatedJson json, LocatedObject root, string name, IEnumerable<string?> ids)
    {
        if (ids.OfType<string>().GroupBy(i => i, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            json.Refuse(root.At(name), $"{twice.Key} is given twice");
    }

    private static int Place(LocatedObject fields, string name, ImmutableArray<Policy?> policies)
    {
        var known = policies.OfType<Policy>().Select(p => p.Id).ToArray();
        fields.Required(name, LocatedFields.OneOf(known));
        return fields.Word(name, known.Select(k => (k, k))) is { } word ? Array.IndexOf(known, word) : 0;
    }

    /// <summary>A number as it is, or a law with its mark and source.</summary>
    private static Figure? Need(LocatedObject fields, string name, double least, double most)
    {
        fields.Required(name, "a figure: a value or a law, with mark and source");
        if (fields.Any(name) is null || fields.Object(name) is not { IsObject: true } figure)
            return null;
        var json = fields.File;
        var mark = figure.Word("mark", [("read", "read"), ("memory", "memory"), ("design", "design")]);
        figure.Required("mark", LocatedFields.OneOf(["read", "memory", "design"]));
        var source = Text(figure, "source");
        Figure? law = null;
        var laws = new[] { "value", "beta", "uniform", "logNormal" };
        if (laws.Count(figure.Has) != 1)
            figure.Refuse(name, $"{name} has to have exactly one of {string.Join(", ", laws)}");
        if (figure.Number("value", least, most) is { } value)
            law = new Figure.Fixed(value);
        if (Pair(json, figure, "beta", 0.5, 10_000) is var (a, b))
            law =
                least > 0 || most != 1
                    ? Refused(figure, "beta", $"{name} is no share: beta is for shares from 0 to 1")
                    : new Figure.Beta(a, b);
        if (Pair(json, figure, "uniform", least, most) is var (low, high))
            law = low < high ? new Figure.Uniform(low, high) : Refused(figure, "uniform", "the second number has to be above the first");
        if (Pair(json, figure, "logNormal", 1e-6, 1e6) is var (median, sigma))
            law =
                sigma > 3 || median < least || median > most
                    ? Refused(figure, "logNormal", "a median within what is accepted, and a standard deviation of the logarithm up to 3")
                    : new Figure.LogNormal(median, sigma);
        figure.Done();
        return law is null
            ? null
            : law with
            {
                Mark = mark switch
                {
                    "read" => Mark.Read,
                    "memory" => Mark.Memory,
                    _ => Mark.Design,
                },
                Source = source,
            };
    }

    private static Figure? Refused(LocatedObject figure, string name, string why)
    {
        figure.Refuse(name, why);
        return null;
    }

    private static (double, double)? Pair(LocatedJson json, LocatedObject figure, string name, double least, double most)
    {
        if (figure.Any(name) is not { } pair)
            return null;
        if (pair.Kind != JsonValueKind.Array || pair.Items.Length != 2)
        {
            json.RefuseValue(pair, name, "a list of two numbers");
            return null;
        }

        return json.Number(pair.Items[0], name, least, most) is { } first && json.Number(pair.Items[1], name, least, most) is { } second
            ? (first, second)
            : null;
    }

    private static double Number(LocatedObject fields, string name, double least, double most)
    {
        fields.Required(name, string.Create(CultureInfo.InvariantCulture, $"a number from {least} to {most}"));
        return fields.Number(name, least, most) ?? least;
    }

    private static int Whole(LocatedObject fields, string name, int least, int most)
    {
        fields.Required(name, string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most}"));
        return fields.Whole(name, least, most) ?? least;
    }

    private static string Text(LocatedObject fields, string name)
    {
        fields.Required(name, "a text");
        return fields.Text(name, LongestText) ?? "";
    }

    /// <summary>Files are named by it, so it holds nothing that a file's name may not.</summary>
    private static string Name(LocatedObject fields, string name)
    {
        fields.Required(name, "a short name");
        var text = fields.Text(name, LongestName) ?? "";
        if (text.Length > 0 && !Names().IsMatch(text))
            fields.Refuse(name, $"{name} has to be small letters, digits and dashes, such as when-to-attempt");
        return text;
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$", RegexOptions.CultureInvariant)]
    private static partial Regex Names();
}
