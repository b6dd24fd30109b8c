using Farhold.Physiology.Body;
using Farhold.Physiology.Constants;
using Farhold.Physiology.Lanewise;

namespace Farhold.Study.Tests.Casualties;

public class BleedingLimitsTests
{
    private static readonly StudyPlan Plan = SomePlan.Read(SomePlan.Shipped());

    private static readonly Lazy<LimitTable> Found = new(() => new BleedingLimits(Plan).Find(0, 24, 2));

    /// <summary>A branch goes on as its trunk would have, to the bit, in whatever lane it stands.</summary>
    [Fact]
    public void A_copied_casualty_goes_on_as_the_one_it_was_copied_from()
    {
        Person[] people = [.. Enumerable.Range(0, 8).Select(i => new Person { MassKg = 60 + (5 * i) })];
        var (trunk, branch) = (new EightCasualties(Models.Current, people, step: 2), new EightCasualties(Models.Current, people, step: 2));
        trunk.SetConditions(3, new() { Pain = 6, Wounds = [WoundConditions.Bleeding(WoundKind.LimbArtery, 400)] });
        trunk.Advance(200);
        branch.CopyFrom(trunk, 3, 6);
        trunk.Advance(300);
        branch.Advance(300);
        for (var slot = 0; slot < Slots.Body.Length + Slots.Wound.Length; slot++)
            Assert.Equal(trunk.State(3, slot), branch.State(6, slot));
        Assert.Equal(trunk.Time(3), branch.Time(6));
        Assert.Equal(trunk.IsArrested(3), branch.IsArrested(6));
        Assert.Throws<ArgumentException>(() => branch.CopyFrom(new(Models.Current, people, wounds: 2, step: 2), 0, 0));
    }

    [Fact]
    public void Threads_and_batches_change_no_limit()
    {
        Assert.Equal(Found.Value.Minutes.ToArray(), new BleedingLimits(Plan).Find(0, 24, 1).Minutes.ToArray());
        Assert.Equal(
            Found.Value.Minutes[(16 * 2 * LimitTable.Hours.Length)..].ToArray(),
            new BleedingLimits(Plan).Find(16, 8, 2).Minutes.ToArray()
        );
    }

    /// <summary>The limit is one: tied off well before it the casualty lives, well after it not, stepped alone by half a second.</summary>
    [Fact]
    public void Tied_before_the_limit_a_casualty_lives_and_after_it_not()
    {
        var json = SomePlan.Shipped();
        json["casualties"]!["bleedNeeded"] = SomePlan.Value(700);
        json["casualties"]!["leak"] = SomePlan.Value(1);
        var limit = new BleedingLimits(SomePlan.Read(json)).Find(5, 8, 2).At(0, true, 1.5);
        Assert.InRange(limit, 1, 12);
        var person = VirtualPerson.Draw(new StudyDraws(Plan.Seed).Casualty(5));
        Assert.False(Dies(person, 0.85 * limit));
        Assert.True(Dies(person, 1.15 * limit));
    }

    private static bool Dies(Person person, double minutes)
    {
        var wound = WoundConditions.Bleeding(WoundKind.LimbArtery, 700);
        var hurt = new Conditions
        {
            AirTemperature = 12,
            Insulation = 0.45,
            Pain = 6,
            Anxiety = 0.7,
            NociceptiveBlock = 0.8,
        };
        var tied = hurt with { ArterialOcclusion = 1, VenousOcclusion = 1 };
        var casualty = new CasualtySimulation(Models.Current, person, wounds: 2);
        void For(double seconds, Conditions conditions)
        {
            casualty.Conditions = conditions;
            casualty.Advance((int)Math.Round(seconds / casualty.Step));
        }

        For(120, hurt with { Wounds = [wound] });
        For(5400, tied);
        For(300, hurt);
        For(60 * minutes, hurt with { Wounds = [new(), wound] });
        For(1800, tied with { Wounds = [new(), wound] });
        return casualty.IsArrested;
    }

    /// <summary>
    /// Nobody is left out who could die: at the bound, through the widest and the narrowest leak, all live an hour unseen.
    /// </summary>
    [Fact]
    public void The_slowest_bleed_that_is_asked_about_kills_nobody()
    {
        foreach (var leak in new[] { 0.25, 1.0 })
        {
            var json = SomePlan.Shipped();
            json["casualties"]!["bleedNeeded"] = SomePlan.Value(BleedingLimits.Slowest / leak);
            json["casualties"]!["leak"] = SomePlan.Value(leak);
            var limits = new BleedingLimits(SomePlan.Read(json)).Find(0, 16, 2);
            for (var i = 0; i < 16; i++)
                Assert.All(limits.Of(i, true).ToArray(), m => Assert.Equal(double.PositiveInfinity, m));
        }
    }

    [Fact]
    public void A_faster_bleed_leaves_less_time()
    {
        double Limit(double bleed)
        {
            var json = SomePlan.Shipped();
            json["casualties"]!["bleedNeeded"] = SomePlan.Value(bleed);
            json["casualties"]!["leak"] = SomePlan.Value(1);
            return new BleedingLimits(SomePlan.Read(json)).Find(0, 8, 2).At(0, true, 2);
        }

        var (fast, middling, slow) = (Limit(1000), Limit(600), Limit(350));
        Assert.True(fast < middling && middling < slow, $"{fast} {middling} {slow}");
    }

    [Fact]
    public void Between_two_hours_a_limit_lies_between_theirs_and_the_worse_end_holds_where_one_never_kills()
    {
        var one = new double[2 * LimitTable.Hours.Length];
        Array.Fill(one, double.PositiveInfinity);
        (one[0], one[1], one[2]) = (10, 20, 30);
        var table = new LimitTable(one);
        Assert.Equal(10, table.At(0, true, 0.1));
        Assert.Equal(15, table.At(0, true, 0.75));
        Assert.Equal(30, table.At(0, true, 1.7)); // 2 h never kills
        Assert.Equal(double.PositiveInfinity, table.At(0, true, 5));
        Assert.Equal(double.PositiveInfinity, table.At(0, false, 1));
    }
}
