using CsCheck;

namespace Farhold.Tests.Kit;

/// <summary>When things run out, against when help comes.</summary>
/// <remarks>Ranges of use are from the shipped kit list (design); water at rest from the JTS nursing guideline.</remarks>
public class SupplyOutlookTests
{
    private static readonly DateTimeZone Utc = DateTimeZone.Utc;

    private static readonly Gen<Case> Uses = Gen.Select(Gen.Int[0, 3], Gen.Int[0, 26 * 60], Gen.Int[0, 180])
        .Array[0, 8]
        .Select(uses => uses.Aggregate(Case.Well, (c, u) => c.And(Ago(u.Item2, u.Item3), Use(u.Item1))));

    private static readonly Gen<string> Item = Gen.OneOf<string>([
        "plain-gauze",
        "pressure-dressing",
        "gloves",
        "water-ml",
        "paracetamol-500-mg",
    ]);

    private static readonly Gen<Surroundings> Around = Gen.Select(Gen.Int[1, 8], Gen.Int[-1, 2], Gen.Enum<Work>(), Gen.Double[0, 24])
        .Select((n, h, w, hours) => new Surroundings(n, h < 0 ? null : (Heat)h, w, hours));

    [Fact]
    public void Water_lasts_by_the_published_need_at_rest()
    {
        // JTS nursing guideline: 2.1 to 3.0 L a day; 6 L for one person last two days to two days and twenty hours
        var alone = Of(Case.Well.And("00:05", new Payload.SuppliesStated("water-ml", 6000)), "water-ml", new(1, Heat.Cool));
        Assert.Equal(Case.Now + Duration.FromHours(48), alone.RunsOut!.Value.Earliest);
        Assert.Equal(6000 / 2100.0 * 24, (alone.RunsOut.Value.Latest!.Value - Case.Now).TotalHours, 6);
    }

    [Fact]
    public void What_was_used_before_raises_what_is_foreseen_and_never_lowers_it()
    {
        Assert.Equal(new Between(1, 4), new UseRate(Between.Exactly(0), new(1, 4)).PerHour);
        Assert.Equal(new Between(2, 4), new UseRate(new(2, 3), new(1, 4)).PerHour);
        Assert.Equal(new Between(4, 9), new UseRate(new(6, 9), new(1, 4)).PerHour);
        Assert.Null(new UseRate(Between.Exactly(0), null).PerHour);
    }

    [Fact]
    public void An_unknown_heat_is_anything_from_cool_to_hot()
    {
        foreach (var work in Enum.GetValues<Work>())
            Assert.Equal(
                Between.Hull(WaterNeed.MlPerHour(Heat.Cool, work), WaterNeed.MlPerHour(Heat.Hot, work)),
                WaterNeed.MlPerHour(null, work)
            );
    }

    [Fact]
    public void Nobody_is_told_to_drink_more_than_harms() =>
        Assert.All(
            from h in Enum.GetValues<Heat>()
            from w in Enum.GetValues<Work>()
            select WaterNeed.MlPerHour(h, w), // TB MED 507, from memory: 1.5 qt/h
            n => Assert.InRange(n.High, n.Low, WaterNeed.MostMlPerHour)
        );

    [Fact]
    public void Unknown_stock_never_lasts() =>
        Assert.All(
            Enum.GetValues<Heat>(),
            heat =>
            {
                var water = Of(Case.Well, "water-ml", new(3, heat));
                Assert.Equal((null, null, Truth.Unknown), (water.RunsOut, water.HelpLater, water.Short));
            }
        );

    [Fact]
    public void Without_a_latest_time_for_help_the_chance_is_unknown_and_nothing_is_enough()
    {
        var gauze = Of(Case.Well.With("help", new Payload.HelpExpected(Case.Now + Duration.FromHours(9))), "plain-gauze", new(2));
        Assert.Null(gauze.HelpLater);
        Assert.Equal(Truth.Unknown, gauze.Short);
        Assert.Null(Of(Case.Well.HelpIn("02:00"), "plain-gauze", new(2), Case.Now + Duration.FromHours(3)).HelpLater);
    }

    [Fact]
    public void The_chance_goes_through_the_three_times_of_the_entry()
    {
        var law = HelpLater.Of(Help(2, 5, 9), 0.9)!;
        double At(double hours) => law.After(Case.Now + Duration.FromHours(hours), Case.Now);
        Assert.Equal((0.9, 0.5, 0.1), (At(2), At(5), Math.Round(At(9), 9)));
        Assert.Equal(0.3, At(7), 9); // a straight line between the middle and nine in ten
        Assert.Equal(0.05, At(13), 9); // half of one in ten, a span of 4 h after the latest time (design)
    }

    [Fact]
    public void More_stock_never_runs_out_earlier() =>
        Gen.Select(Uses, Item, Around, Gen.Int[0, 9000], Gen.Int[0, 9000])
            .Sample(
                (uses, item, around, a, b) =>
                {
                    var (less, more) = (
                        Of(Counted(uses, item, Math.Min(a, b)), item, around),
                        Of(Counted(uses, item, Math.Max(a, b)), item, around)
                    );
                    Assert.True(NotBefore(more, less));
                    if (more.HelpLater is { } later)
                        Assert.True(later.High <= less.HelpLater!.Value.High && later.Low <= less.HelpLater.Value.Low);
                },
                iter: 400
            );

    [Fact]
    public void More_use_never_lasts_longer() =>
        Gen.Select(Uses, Item, Around, Gen.Int[0, 4000], Gen.Int[0, 3], Gen.Int[0, 26 * 60], Gen.Int[0, 180])
            .Sample(
                (uses, item, around, count, use, ago, range) =>
                {
                    var before = Counted(uses, item, count);
                    Assert.True(NotBefore(Of(before, item, around), Of(before.And(Ago(ago, range), Use(use)), item, around)));
                },
                iter: 400
            );

    [Fact]
    public void A_chance_is_one_and_falls_with_time() =>
        Gen.Select(Gen.Double[-5, 20], Gen.Double[0, 20], Gen.Double[0, 20], Gen.Double[0, 60], Gen.Double[0, 60])
            .Sample(
                (start, a, b, x, y) =>
                {
                    var law = HelpLater.Of(Help(start, start + a, start + a + b + 5), 0.9)!;
                    var (soon, late) = (law.After(In(Math.Min(x, y)), Case.Now), law.After(In(Math.Max(x, y)), Case.Now));
                    Assert.InRange(late, 0, soon);
                    Assert.InRange(soon, 0, 1);
                }
            );

    [Fact]
    public void Help_that_comes_later_never_makes_it_likelier_before() =>
        Gen.Select(Gen.Double[5, 20], Gen.Double[0, 19], Gen.Double[0, 20], Gen.Double[0, 60], Gen.Double[0, 30])
            .Sample(
                (start, a, b, x, shift) =>
                {
                    var law = HelpLater.Of(Help(start, start + a, start + a + b), 0.9)!;
                    var whole = HelpLater.Of(Help(start + shift, start + a + shift, start + a + b + shift), 0.9)!;
                    var tail = HelpLater.Of(Help(start, start + a, start + a + b + shift), 0.9)!;
                    Assert.True(whole.After(In(x), Case.Now) >= law.After(In(x), Case.Now) - 1e-12);
                    Assert.True(tail.After(In(x), Case.Now) >= law.After(In(x), Case.Now) - 1e-12);
                }
            );

    [Fact]
    public void The_lines_say_a_range_a_chance_and_what_to_do()
    {
        var used = Case.Well.And("00:06", new Payload.WoundPacked("w1", PackingMaterial.PlainGauze));
        var gauze = Of(used, "plain-gauze", new(2));
        Assert.Equal(
            "1 to 2 rolls; lasts until today 15:00 to tomorrow 12:00; more than 9 in 10 that help comes later",
            new SupplyWords(Case.Now, Utc).Of(gauze)
        );
        Assert.Equal(
            [
                "Do not change a packing that holds. Use clean cloth for padding.",
                "Keep 1 back for bleeding that starts again.",
                "In its place: haemostatic gauze, or clean cloth strips.",
            ],
            SupplyWords.Advice(gauze, ShippedRules.Book.Kit)
        );
        var gap = Of(
            Case.Well.And("00:06", new Payload.SuppliesStated("plain-dressing", 1)).And("00:05", new Payload.TaskDone("wound")),
            "plain-dressing",
            new(2)
        );
        Assert.StartsWith("0 to 1 pieces; may be used up; ", new SupplyWords(Case.Now, Utc).Of(gap), StringComparison.Ordinal);
        Assert.Equal("not counted: count it", new SupplyWords(Case.Now, Utc).Of(Of(used, "meal", new(2))));
    }

    [Fact]
    public void A_stand_in_that_is_used_up_is_not_offered() =>
        Assert.DoesNotContain(
            "haemostatic-gauze",
            Of(Case.Well.And("00:05", new Payload.SuppliesStated("haemostatic-gauze", 0)), "plain-gauze", new(2)).Instead
        );

    [Theory]
    [InlineData(0, "less than 1 in 20")]
    [InlineData(0.25, "3 in 10")] // rounded to the worse side
    [InlineData(0.3, "3 in 10")]
    [InlineData(1, "more than 9 in 10")]
    public void A_chance_is_said_in_tens(double chance, string words) => Assert.Equal(words, SupplyWords.OneIn(chance));

    private static Case Counted(Case uses, string item, int count) =>
        (
            item switch
            {
                "plain-gauze" => uses.With("gauze", null),
                "pressure-dressing" => uses.With("dressing", null),
                _ => uses,
            }
        ).And("12:00", new Payload.SuppliesStated(item, count));

    private static Happened Ago(int minutes, int range) =>
        new(Case.Now - Duration.FromMinutes(minutes), Case.Now - Duration.FromMinutes(Math.Max(0, minutes - range)));

    private static Payload Use(int which) =>
        which switch
        {
            0 => new Payload.WoundPacked("w1", PackingMaterial.PlainGauze),
            1 => new Payload.DressingApplied("w1", DressingKind.Pressure),
            2 => new Payload.FluidGiven(Fluid.OralWater, 300, "mouth"),
            _ => new Payload.DrugGiven("paracetamol", 1000, "mg", "mouth"),
        };

    /// <summary>Null is later than any time; what can't be told at all is told by neither.</summary>
    private static bool NotBefore(ItemOutlook later, ItemOutlook sooner)
    {
        static bool Not(Instant? a, Instant? b) => a is null || (b is { } other && a >= other - Duration.FromMilliseconds(1));
        return later.RunsOut is not { } l || sooner.RunsOut is not { } s
            ? sooner.RunsOut is not null || later.RunsOut is null
            : Not(l.Earliest, s.Earliest) && Not(l.Latest, s.Latest);
    }

    private static Payload.HelpExpected Help(double earliest, double likely, double latest) => new(In(likely), In(earliest), In(latest));

    private static Instant In(double hours) => Case.Now + Duration.FromHours(hours);

    private static ItemOutlook Of(Case of, string item, Surroundings around, Instant? at = null) =>
        SupplyOutlook.Of(of.Record, ShippedRules.Book, around, at ?? Case.Now).Items.Single(i => i.Item.Id == item);
}
