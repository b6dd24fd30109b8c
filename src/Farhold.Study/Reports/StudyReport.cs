using System.Collections.Immutable;
using System.Globalization;

namespace Farhold.Study.Reports;

/// <summary>What a study found, as lines and tables.</summary>
public sealed class StudyReport(StudyResult result)
{
    /// <summary>Minutes until the tourniquet is tight again, for the table of what the model adds.</summary>
    private static readonly ImmutableArray<double> CaughtAfter = [1, 2, 3, 5, 10, 15, 30, 60];

    private readonly StudyPlan plan = result.Plan;

    /// <summary>The first says what it is not.</summary>
    public IEnumerable<string> Head()
    {
        yield return StudyTexts.NotGuidance;
        yield return "";
        yield return plan.Title;
        yield return plan.Question;
        yield return "";
        yield return StudyTexts.RunHead(
            plan.Id,
            FileHash.Short(plan.Hash),
            plan.Seed.ToString(CultureInfo.InvariantCulture),
            plan.Model,
            PartHead.CurrentEngine
        );
        yield return StudyTexts.Ran(result.Tally.Casualties, result.Batches, plan.Policies.Length, plan.Uncertainty.Draws);
        var (deaths, limbs) = StoppingRule.Widest(plan, result.Tally);
        yield return result.EndedBy == EndedBy.Margins
            ? StudyTexts.EndedByMargins(N(deaths), N(limbs), plan.Run.Batches)
            : StudyTexts.EndedByBudget(N(deaths), N(limbs), N(plan.Run.MarginDeaths), N(plan.Run.MarginLimbs));
        yield return StudyTexts.Weighed(Three(plan.Weights.Death), Three(plan.Weights.Limb), Three(plan.Weights.Palsy));
        yield return result.Limits is null ? StudyTexts.FromShares : StudyTexts.FromSeries;
    }

    public void Write(TextWriter to)
    {
        ArgumentNullException.ThrowIfNull(to);
        foreach (var line in Head())
            Fold(to, line);
        foreach (var table in Short())
        {
            to.Write("\n");
            table.Write(to);
        }

        foreach (var decided in result.Decided)
            Fold(to, WorthOfAll(decided));
        to.Write("\n");
        Fold(to, StudyTexts.Unknown);
    }

    /// <summary>What a person reads: the hours that the file names, and the figures that decide.</summary>
    public IEnumerable<StudyTable> Short()
    {
        if (result.Limits is not null)
            yield return Limits();
        for (var cohort = 0; cohort < plan.Cohorts.Length; cohort++)
            foreach (var hour in plan.Uncertainty.At)
            {
                yield return PairedAt(cohort, plan.Evacuation.IndexOf(hour));
                yield return FanAt(cohort, plan.Evacuation.IndexOf(hour));
            }

        foreach (var decided in result.Decided)
            yield return Decides(decided);
        yield return Inputs();
    }

    /// <summary>Everything, for a spreadsheet.</summary>
    public IEnumerable<StudyTable> Full()
    {
        if (result.Limits is not null)
            yield return Limits();
        yield return Paired();
        yield return Fans();
        yield return AllDecides();
        yield return Inputs();
    }

    private string WorthOfAll(Decided decided) =>
        $"{plan.Cohorts[decided.Cohort].Title}, {N(decided.Hour)} h: "
        + StudyTexts.WorthOfAll(N(result.Outer.WorthOfAll(decided.Cohort, plan.Evacuation.IndexOf(decided.Hour))));

    private StudyTable Limits()
    {
        var limits = result.Limits!;
        ImmutableArray<string> Row(string name, bool needed)
        {
            var alive = Enumerable.Range(0, limits.Casualties).Where(i => !limits.IsDead(i, needed)).ToArray();
            return [name, .. CaughtAfter.Select(m => N(100.0 * alive.Count(i => limits.At(i, needed, 1.5) <= m) / alive.Length))];
        }

        return new(
            "limits",
            StudyTexts.LimitsTitle,
            [StudyTexts.LimitsKind, .. CaughtAfter.Select(m => StudyTexts.LimitsAfter(N(m)))],
            [Row(StudyTexts.LimitsNeeded, true), Row(StudyTexts.LimitsNeedless, false)]
        );
    }

    private StudyTable PairedAt(int cohort, int hour) =>
        new(
            $"paired-{plan.Cohorts[cohort].Id}-{N(plan.Evacuation[hour])}",
            StudyTexts.PairedTitle(plan.Cohorts[cohort].Title, N(plan.Evacuation[hour]), plan.Policies[plan.Reference].Title),
            [.. PairedHeads],
            [.. Others().Select(p => PairedRow(cohort, p, hour))]
        );

    private static IEnumerable<string> PairedHeads =>
        [
            StudyTexts.Policy,
            StudyTexts.Deaths,
            StudyTexts.FewerSameMore,
            StudyTexts.Bled,
            StudyTexts.AtRelease,
            StudyTexts.Limbs,
            StudyTexts.FewerSameMore,
            StudyTexts.Palsies,
            StudyTexts.Net,
        ];

    private ImmutableArray<string> PairedRow(int cohort, int policy, int hour)
    {
        var tally = result.Tally;
        var (cell, reference) = (tally.Cell(cohort, policy, hour), tally.Cell(cohort, plan.Reference, hour));
        string More(Count count) => Signed(Per1000(tally[cell, count] - tally[reference, count]));
        return
        [
            plan.Policies[policy].Title,
            PlusMinus(tally.Deaths(cell)),
            Counts(cell, Count.FewerDeaths, Count.MoreDeaths),
            More(Count.BledToDeath),
            More(Count.DiedAtRelease),
            PlusMinus(tally.Limbs(cell)),
            Counts(cell, Count.FewerLimbs, Count.MoreLimbs),
            PlusMinus(tally.Palsies(cell)),
            PlusMinus(new(-tally.Net(cell).Mean, tally.Net(cell).Error)),
        ];
    }

    private string Counts(int cell, Count fewer, Count more)
    {
        var (less, greater) = (Per1000(result.Tally[cell, fewer]), Per1000(result.Tally[cell, more]));
        return $"{N(less)}/{N(1000 - less - greater)}/{N(greater)}";
    }

    private double Per1000(long count) => 1000.0 * count / result.Tally.Casualties;

    private StudyTable FanAt(int cohort, int hour)
    {
        var ranks = result.Outer.Ranks(cohort, hour);
        return new(
            $"fan-{plan.Cohorts[cohort].Id}-{N(plan.Evacuation[hour])}",
            StudyTexts.FanOf(plan.Cohorts[cohort].Title, N(plan.Evacuation[hour])),
            [
                StudyTexts.Policy,
                StudyTexts.Mean,
                StudyTexts.P5,
                StudyTexts.P50,
                StudyTexts.P95,
                StudyTexts.Pays,
                StudyTexts.Best,
                StudyTexts.NearBest,
                StudyTexts.Regret,
            ],
            [
                .. Enumerable
                    .Range(0, plan.Policies.Length)
                    .Select(p =>
                    {
                        var fan = result.Outer.Fan(cohort, p, hour);
                        return ImmutableArray.Create(
                            plan.Policies[p].Title,
                            Signed(fan.Mean),
                            Signed(fan.P5),
                            Signed(fan.P50),
                            Signed(fan.P95),
                            p == plan.Reference ? "" : Percent(fan.Pays),
                            Percent(ranks[p].Best),
                            Percent(ranks[p].NearBest),
                            N(ranks[p].Regret)
                        );
                    }),
            ]
        );
    }

    private StudyTable Decides(Decided decided)
    {
        var hour = plan.Evacuation.IndexOf(decided.Hour);
        var worth = result.Outer.Worth(decided.Cohort, hour);
        var order = Enumerable
            .Range(0, decided.Swings.Length)
            .OrderByDescending(i => decided.Indices.IsEmpty ? decided.Swings[i].Size : decided.Indices[i].Total);
        return new(
            $"decides-{plan.Cohorts[decided.Cohort].Id}-{N(decided.Hour)}",
            StudyTexts.DecidesTitle(plan.Cohorts[decided.Cohort].Title, N(decided.Hour), plan.Policies[plan.Uncertainty.Policy].Title),
            [
                StudyTexts.Figure,
                StudyTexts.Total,
                StudyTexts.First,
                StudyTexts.Swing,
                StudyTexts.Screened,
                StudyTexts.ScreenedSpread,
                StudyTexts.Worth,
            ],
            [
                .. order.Select(i =>
                    ImmutableArray.Create(
                        InputName(i),
                        decided.Indices.IsEmpty
                            ? ""
                            : Interval(decided.Indices[i].Total, decided.Indices[i].TotalLow, decided.Indices[i].TotalHigh),
                        decided.Indices.IsEmpty ? "" : Two(decided.Indices[i].First),
                        $"{Signed(decided.Swings[i].Low)} to {Signed(decided.Swings[i].High)}",
                        decided.Effects.IsEmpty ? "" : N(decided.Effects[i].Size),
                        decided.Effects.IsEmpty ? "" : N(decided.Effects[i].Spread),
                        Two(worth[i])
                    )
                ),
            ]
        );
    }

    private StudyTable Paired() =>
        new(
            "paired",
            plan.Title,
            [StudyTexts.Cohort, StudyTexts.Hours, .. PairedHeads],
            [.. Cells().Select(c => Led(plan.Cohorts[c.Cohort].Id, plan.Evacuation[c.Hour], PairedRow(c.Cohort, c.Policy, c.Hour)))]
        );

    private StudyTable Fans() =>
        new(
            "fans",
            plan.Title,
            [
                StudyTexts.Cohort,
                StudyTexts.Hours,
                StudyTexts.Policy,
                StudyTexts.Mean,
                StudyTexts.Error,
                StudyTexts.P5,
                StudyTexts.P25,
                StudyTexts.P50,
                StudyTexts.P75,
                StudyTexts.P95,
                StudyTexts.Pays,
                StudyTexts.InnerShare,
            ],
            [
                .. Cells()
                    .Select(c =>
                    {
                        var fan = result.Outer.Fan(c.Cohort, c.Policy, c.Hour);
                        return ImmutableArray.CreateRange(
                            new[] { plan.Cohorts[c.Cohort].Id, N(plan.Evacuation[c.Hour]), plan.Policies[c.Policy].Title }.Concat(
                                new[] { fan.Mean, fan.Error, fan.P5, fan.P25, fan.P50, fan.P75, fan.P95, fan.Pays, fan.InnerShare }.Select(
                                    Two
                                )
                            )
                        );
                    }),
            ]
        );

    private StudyTable AllDecides() =>
        new(
            "decides",
            plan.Title,
            [
                StudyTexts.Cohort,
                StudyTexts.Hours,
                StudyTexts.Figure,
                StudyTexts.Total,
                StudyTexts.First,
                StudyTexts.Swing,
                StudyTexts.Screened,
                StudyTexts.ScreenedSpread,
                StudyTexts.Worth,
            ],
            [.. result.Decided.SelectMany(d => Decides(d).Rows.Select(r => Led(plan.Cohorts[d.Cohort].Id, d.Hour, r)))]
        );

    private StudyTable Inputs()
    {
        var figures = plan
            .Cohorts.Select(c => (Name: $"{StudyTexts.Needed}: {c.Id}", Figure: c.Needed))
            .Append((Name: "bleedNeeded", Figure: plan.Casualties.BleedNeeded))
            .Append((Name: "bleedNotNeeded", Figure: plan.Casualties.BleedNotNeeded))
            .Append((Name: "leak", Figure: plan.Casualties.Leak))
            .Concat(Enum.GetValues<StudyInput>().Select(i => (Name: StudyReader.Wire(i), Figure: plan.Figures[i])))
            .Where(f => f.Figure.Source.Length > 0)
            .ToArray();
        int Of(Mark mark) => figures.Count(f => f.Figure.Mark == mark);
        var still = figures.Count(f => f.Figure.IsFixed);
        return new(
            "inputs",
            StudyTexts.InputsTitle(Of(Mark.Read), Of(Mark.Memory), Of(Mark.Design), figures.Length - still, still),
            [StudyTexts.Figure, StudyTexts.Value, StudyTexts.Law, StudyTexts.Standing, StudyTexts.Source],
            [
                .. figures.Select(f =>
                    ImmutableArray.Create(
                        f.Name,
                        Three(f.Figure.Mean),
                        f.Figure.IsFixed ? "" : $"{Three(f.Figure.Quantile(0.05))} to {Three(f.Figure.Quantile(0.95))}",
                        Wire.Word(f.Figure.Mark),
                        f.Figure.Source
                    )
                ),
            ]
        );
    }

    private static ImmutableArray<string> Led(string cohort, double hour, ImmutableArray<string> row) => [cohort, N(hour), .. row];

    private IEnumerable<int> Others() => Enumerable.Range(0, plan.Policies.Length).Where(p => p != plan.Reference);

    private IEnumerable<(int Cohort, int Policy, int Hour)> Cells() =>
        from cohort in Enumerable.Range(0, plan.Cohorts.Length)
        from hour in Enumerable.Range(0, plan.Evacuation.Length)
        from policy in Others()
        select (cohort, policy, hour);

    /// <summary>By its place among the inputs that are drawn: the share of needed tourniquets is the first.</summary>
    internal string InputName(int place) => place == 0 ? StudyTexts.Needed : Name(result.Outer.Drawn[place - 1]);

    private static string Name(StudyInput input) =>
        input switch
        {
            StudyInput.HoldHaemostatic => StudyTexts.InputHoldHaemostatic,
            StudyInput.HoldPlain => StudyTexts.InputHoldPlain,
            StudyInput.HoldNotNeeded => StudyTexts.InputHoldNotNeeded,
            StudyInput.SameWound => StudyTexts.InputSameWound,
            StudyInput.FailsWithinMin => StudyTexts.InputFailsWithinMin,
            StudyInput.Rebleed => StudyTexts.InputRebleed,
            StudyInput.RebleedHalvesH => StudyTexts.InputRebleedHalvesH,
            StudyInput.MoveAfterH => StudyTexts.InputMoveAfterH,
            StudyInput.RebleedNotNeeded => StudyTexts.InputRebleedNotNeeded,
            StudyInput.MissedLook => StudyTexts.InputMissedLook,
            StudyInput.ReactionMin => StudyTexts.InputReactionMin,
            StudyInput.TimeToDeath => StudyTexts.InputTimeToDeath,
            StudyInput.DeathPerFailure => StudyTexts.InputDeathPerFailure,
            StudyInput.DeathPerRebleed => StudyTexts.InputDeathPerRebleed,
            StudyInput.LimbShape => StudyTexts.InputLimbShape,
            StudyInput.LimbScaleH => StudyTexts.InputLimbScaleH,
            StudyInput.ArteryDecides => StudyTexts.InputArteryDecides,
            StudyInput.ReleaseHospital => StudyTexts.InputReleaseHospital,
            StudyInput.ReleaseField => StudyTexts.InputReleaseField,
            StudyInput.PalsyScale => StudyTexts.InputPalsyScale,
            StudyInput.PalsyLasting => StudyTexts.InputPalsyLasting,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static void Fold(TextWriter to, string line)
    {
        foreach (var part in TextTable.Fold(line, 118))
            to.Write(part + "\n");
    }

    private static string PlusMinus(Paired paired) => $"{Signed(1000 * paired.Mean)} ± {N(2000 * paired.Error)}";

    internal static string Percent(double share) => StudyTexts.Share(Math.Round(100 * share).ToString(CultureInfo.InvariantCulture));

    private static string Interval(double value, double low, double high) => $"{Two(value)} ({Two(low)} to {Two(high)})";

    private static string Two(double value) => Plainly(value, "0.00");

    private static string Three(double value) => Plainly(value, "0.###");

    /// <summary>To a tenth, or to one where it is large.</summary>
    internal static string N(double value) => Plainly(value, Math.Abs(value) >= 100 ? "0" : "0.#");

    internal static string Signed(double value) => N(value) is var text && text.StartsWith('−') || text == "0" ? text : "+" + text;

    /// <summary>With a minus of its own width, and no minus before a nought.</summary>
    private static string Plainly(double value, string form)
    {
        var text = value.ToString(form, CultureInfo.InvariantCulture);
        return text.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? text.TrimStart('-') : text.Replace('-', '−');
    }
}
