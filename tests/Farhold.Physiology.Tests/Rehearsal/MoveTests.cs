namespace Farhold.Physiology.Tests.Rehearsal;

public class MoveTests
{
    /// <summary>Design (remarks of <see cref="Dislodgement"/>): a third in the first hour, then half as often every two hours.</summary>
    [Theory]
    [InlineData(0, true, 0.33333)]
    [InlineData(3_600, true, 0.33333)]
    [InlineData(10_800, true, 0.16667)]
    [InlineData(18_000, true, 0.08333)]
    [InlineData(600, false, 0.03333)]
    public void A_move_dislodges_less_often_the_longer_it_has_held(double since, bool needed, double chance) =>
        Assert.Equal(chance, Dislodgement.Chance(Dislodgement.FirstHour, needed, since), 4);

    /// <summary>Over many seeds the share is the stated one; 2,000 draws have a standard error of 0.011.</summary>
    [Fact]
    public void Of_many_casualties_a_third_bleed_after_the_first_move()
    {
        const int casualties = 2_000;
        var came = Enumerable.Range(1, casualties).Count(seed => MovedAfterHolding((ulong)seed, seed % 2 == 0).Comes);
        Assert.InRange((double)came / casualties, 0.29, 0.38);
    }

    [Fact]
    public void A_tight_tourniquet_or_a_bare_wound_has_nothing_to_lose()
    {
        var run = Some();
        run.Begin(new Act.Pack("w1", PackingGauze.Plain));
        run.Begin(new Act.Tighten());
        run.Advance(600);
        run.Begin(new Act.Move(1));
        Assert.DoesNotContain(run.Truth, e => e is TruthEvent.Failed);
        var bare = Some();
        bare.Begin(new Act.Move(1));
        Assert.DoesNotContain(bare.Truth, e => e is TruthEvent.Failed);
    }

    [Fact]
    public void What_comes_off_bleeds_again()
    {
        var run = Some();
        run.Begin(new Act.Pack("w1", PackingGauze.Haemostatic));
        run.Advance(240);
        run.Begin(new Act.Dress("w1"));
        run.Advance(1_200);
        var before = run.Flow("w1");
        run.Begin(new Act.Move(1));
        run.Advance(4);
        Assert.Contains(run.Truth, e => e is TruthEvent.Failed { Wound: "w1" });
        Assert.True(run.Flow("w1") > 5 * before, $"{before} to {run.Flow("w1")}");
    }

    /// <summary>
    /// The second limb's tourniquet stops its own wound and no other; the first limb's veins and muscle know nothing of it.
    /// </summary>
    [Fact]
    public void Two_limbs_are_tied_apart()
    {
        var run = new RehearsalRun(
            Models.Current,
            "c1",
            new(),
            new(),
            [new("w1", WoundKind.LimbArtery, 320), new("w2", WoundKind.LimbArtery, 200, Limb: "right-arm")],
            71
        );
        run.Advance(4);
        Assert.True(run.Flow("w1") > 250 && run.Flow("w2") > 150);
        run.Begin(new Act.Tighten(Limb: "right-arm"));
        run.Advance(140);
        Assert.Equal(0, run.Flow("w2"));
        Assert.True(run.Flow("w1") > 100);
        Assert.Equal(0, run.Simulation.Conditions.ArterialOcclusion);
        Assert.True(run.IsTight("right-arm") && !run.IsTight(null));
        run.Begin(new Act.Tighten());
        run.Advance(140);
        Assert.Equal((0.0, 0.0), (run.Flow("w1"), run.Flow("w2")));
        run.Begin(new Act.Slacken("right-arm"));
        run.Advance(1_400);
        Assert.True(run.Flow("w2") > 0);
        Assert.Equal(0, run.Flow("w1"));
        Assert.Throws<ArgumentException>(() => run.Begin(new Act.Slacken("left-arm")));
    }

    private static RehearsalRun Some() => new(Models.Current, "c1", new(), new(), [new("w1", WoundKind.LimbArtery, 200)], 71);

    private static (bool Comes, double Flow) MovedAfterHolding(ulong seed, bool early)
    {
        var run = new RehearsalRun(Models.Current, "c1", new(), new(), [new("w1", WoundKind.LimbArtery, 200)], seed);
        run.Begin(new Act.Dress("w1"));
        run.Advance(early ? 130 : 600);
        run.Begin(new Act.Move());
        return (run.Truth.Any(e => e is TruthEvent.Failed), run.Flow("w1"));
    }
}
