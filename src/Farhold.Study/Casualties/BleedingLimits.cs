using Farhold.Physiology.Body;
using Farhold.Physiology.Constants;
using Farhold.Physiology.Lanewise;
using Farhold.WayOut.Chance;

namespace Farhold.Study.Casualties;

/// <summary>Asks the casualty model how long each casualty may bleed: all that it adds to a study.</summary>
/// <remarks>
/// One course with the tourniquet on is stepped for 12 hours. At each hour of <see cref="LimitTable.Hours"/> a branch parts from it: let
/// out, the packing fails five minutes later, and nobody looks. Where that kills within an hour, eight more branches are tied off again
/// after a growing share of the time to arrest, each watched half an hour longer: the limit lies between the last that lives and the
/// first that dies. Steps of two seconds, eight casualties a vector. Irreversible shock that kills later than that is not counted, nor is
/// a bleed that is slower than <see cref="Slowest"/>.
/// </remarks>
public sealed class BleedingLimits
{
    /// <summary>mL/min through the opening below which a bleed kills nobody whose limb was tied in time (a test holds it).</summary>
    public const double Slowest = 60;

    private const double Step = 2;
    private const int Eight = 8;

    /// <summary>Seconds from slackening to the opening: the middle of the ten minutes in which packing fails.</summary>
    private const double Opens = 300;

    private const double Watched = 3600;
    private const double After = 1800;

    private static readonly double[] Shares = [0.3, 0.5, 0.6, 0.7, 0.78, 0.86, 0.93, 0.98];

    private readonly ModelConstants model;
    private readonly CasualtyFigures figures;
    private readonly StudyDraws draws;

    public BleedingLimits(StudyPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        (model, figures, draws) = (Models.ByNumber(plan.Model), plan.Casualties, new(plan.Seed));
    }

    /// <summary>Of as many casualties from a number on; the same whatever the number of threads.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public LimitTable Find(long first, int count, int threads, CancellationToken cancellation = default)
    {
        var minutes = new double[count * 2 * LimitTable.Hours.Length];
        Array.Fill(minutes, double.PositiveInfinity);
        var wounds = Enumerable
            .Range(0, 2 * count)
            .Select(i => Draw(first + (i / 2), i, needed: i % 2 == 0))
            .Where(w => w.Bleed * w.Leak >= Slowest)
            .Chunk(Eight)
            .ToArray();
        Parallel.For(
            0,
            wounds.Length,
            new() { MaxDegreeOfParallelism = threads, CancellationToken = cancellation },
            i => Follow(wounds[i], minutes)
        );
        return new(minutes);
    }

    /// <param name="Row">Where its minutes stand.</param>
    private readonly record struct Wound(int Row, Person Person, double Bleed, double Leak);

    private Wound Draw(long casualty, int row, bool needed)
    {
        var rng = draws.Casualty(casualty);
        var bleed = (needed ? figures.BleedNeeded : figures.BleedNotNeeded).Quantile(rng.Draw(BleedKey));
        return new(row, VirtualPerson.Draw(rng), Math.Min(bleed, 5000), figures.Leak.Quantile(rng.Draw(LeakKey)));
    }

    private static readonly ulong BleedKey = StudyDraws.Key("wound:w1/bleed");
    private static readonly ulong LeakKey = StudyDraws.Key("wound:w1/leak");

    private void Follow(Wound[] wounds, double[] minutes)
    {
        Wound At(int lane) => wounds[Math.Min(lane, wounds.Length - 1)];
        EightCasualties New(Func<int, Person> who) => new(model, [.. Enumerable.Range(0, Eight).Select(who)], wounds: 2, step: Step);
        var (trunk, branch, opened, tied) = (
            New(i => At(i).Person),
            New(i => At(i).Person),
            New(i => At(i).Person),
            New(_ => At(0).Person)
        );
        for (var lane = 0; lane < Eight; lane++)
            trunk.SetConditions(lane, Conditions(first: WoundConditions.Bleeding(WoundKind.LimbArtery, At(lane).Bleed)));
        Pass(trunk, figures.TiedAfterMin * 60);
        for (var lane = 0; lane < Eight; lane++)
            trunk.SetConditions(lane, Conditions(occluded: 1));
        var now = 0.0;
        for (var hour = 0; hour < LimitTable.Hours.Length; hour++)
        {
            Pass(trunk, (3600 * LimitTable.Hours[hour]) - now);
            now = 3600 * LimitTable.Hours[hour];
            for (var lane = 0; lane < Eight; lane++)
            {
                branch.CopyFrom(trunk, lane, lane);
                branch.SetConditions(lane, Conditions());
            }

            Pass(branch, Opens);
            for (var lane = 0; lane < Eight; lane++)
            {
                opened.CopyFrom(branch, lane, lane);
                opened.SetConditions(lane, Conditions(second: Failed(At(lane))));
            }

            Pass(opened, Watched);
            for (var lane = 0; lane < wounds.Length; lane++)
                minutes[(wounds[lane].Row * LimitTable.Hours.Length) + hour] =
                    trunk.IsArrested(lane) || branch.IsArrested(lane) ? LimitTable.Dead
                    : opened.IsArrested(lane)
                        ? Math.Round(Limit(branch, lane, opened.Time(lane) - branch.Time(lane), wounds[lane], tied) / 60, 3)
                    : double.PositiveInfinity;
        }
    }

    /// <summary>Seconds of bleeding between the longest that lives and the shortest that dies.</summary>
    /// <param name="arrest">Seconds from opening to arrest where nobody looks.</param>
    private double Limit(EightCasualties from, int lane, double arrest, Wound wound, EightCasualties eight)
    {
        for (var i = 0; i < Eight; i++)
        {
            eight.CopyFrom(from, lane, i);
            eight.SetConditions(i, Conditions(second: Failed(wound)));
        }

        var now = 0.0;
        for (var i = 0; i < Eight; i++)
        {
            var until = Step * Math.Round(Shares[i] * arrest / Step);
            Pass(eight, until - now);
            now = until;
            eight.SetConditions(i, Conditions(occluded: 1, second: Failed(wound)));
        }

        Pass(eight, arrest - now + After);
        var lives = 0.0;
        for (var i = 0; i < Eight; i++)
        {
            if (eight.IsArrested(i))
                return arrest * (lives + Shares[i]) / 2;
            lives = Shares[i];
        }

        return arrest * (lives + 1) / 2;
    }

    private static void Pass(EightCasualties eight, double seconds) => eight.Advance((int)Math.Round(seconds / Step));

    private static WoundConditions Failed(Wound wound) =>
        WoundConditions.Bleeding(WoundKind.LimbArtery, wound.Bleed) with
        {
            Opening = wound.Leak,
        };

    private Conditions Conditions(double occluded = 0, WoundConditions? first = null, WoundConditions? second = null) =>
        new()
        {
            AirTemperature = figures.AirC,
            Insulation = figures.Insulation,
            Pain = figures.Pain,
            Anxiety = figures.Anxiety,
            NociceptiveBlock = 0.8, // as the model's reference has the injured
            ArterialOcclusion = occluded,
            VenousOcclusion = occluded,
            Wounds = [first ?? new(), second ?? new()],
        };
}
