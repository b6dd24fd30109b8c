namespace Farhold.Tests.Kit;

/// <summary>Something to pack with and something to press with, by every item that will do (rule 11 of the shipped protocol).</summary>
public class MaterialsTests
{
    private const string Haemostatic = "haemostatic-gauze",
        Plain = "plain-gauze",
        Cloth = "cloth",
        Dressing = "pressure-dressing",
        Elastic = "elastic-bandage";

    [Fact]
    public void Any_packing_will_do_and_all_have_to_be_gone_for_none()
    {
        foreach (var item in (string[])[Haemostatic, Plain, Cloth])
            Assert.Equal(Truth.Met, Supplies.CanPack(ShippedRules.Book.Kit, Counted((item, 1)), Case.Now));
        Assert.Equal(Truth.Met, Supplies.CanPack(ShippedRules.Book.Kit, Counted((Plain, 0), (Cloth, 1)), Case.Now));
        Assert.Equal(Truth.NotMet, Supplies.CanPack(ShippedRules.Book.Kit, Counted((Haemostatic, 0), (Plain, 0), (Cloth, 0)), Case.Now));
        Assert.Equal(Truth.Unknown, Supplies.CanPack(ShippedRules.Book.Kit, Counted((Haemostatic, 0), (Plain, 0)), Case.Now));
        Assert.Equal(Truth.Unknown, Supplies.CanPack(ShippedRules.Book.Kit, Counted(), Case.Now));
    }

    [Fact]
    public void Any_dressing_bandage_or_spare_strip_will_do_to_press()
    {
        Assert.Equal(Truth.Met, Supplies.CanPress(ShippedRules.Book.Kit, Counted((Dressing, 1)), Case.Now));
        Assert.Equal(Truth.Met, Supplies.CanPress(ShippedRules.Book.Kit, Counted((Dressing, 0), (Elastic, 1)), Case.Now));
        Assert.Equal(Truth.NotMet, Supplies.CanPress(ShippedRules.Book.Kit, Counted((Dressing, 0), (Elastic, 0), (Cloth, 0)), Case.Now));
        // nobody counted bandages
        Assert.Equal(Truth.Unknown, Supplies.CanPress(ShippedRules.Book.Kit, Counted((Dressing, 0), (Cloth, 0)), Case.Now));
        // nor strips
        Assert.Equal(Truth.Unknown, Supplies.CanPress(ShippedRules.Book.Kit, Counted((Dressing, 0), (Elastic, 0)), Case.Now));
        Assert.Equal(Truth.Unknown, Supplies.CanPress(ShippedRules.Book.Kit, Counted(), Case.Now));
    }

    [Fact]
    public void A_strip_that_the_packing_needs_is_no_dressing()
    {
        (string, int)[] none = [(Dressing, 0), (Elastic, 0)];
        (string, int)[] noGauze = [.. none, (Haemostatic, 0), (Plain, 0)];
        Assert.Equal(Truth.NotMet, Supplies.CanPress(ShippedRules.Book.Kit, Counted([.. noGauze, (Cloth, 1)]), Case.Now));
        Assert.Equal(Truth.Met, Supplies.CanPress(ShippedRules.Book.Kit, Counted([.. noGauze, (Cloth, 2)]), Case.Now));
        Assert.Equal(Truth.Met, Supplies.CanPress(ShippedRules.Book.Kit, Counted([.. none, (Plain, 1), (Cloth, 1)]), Case.Now));
        // nobody counted gauze
        Assert.Equal(Truth.Unknown, Supplies.CanPress(ShippedRules.Book.Kit, Counted([.. none, (Cloth, 1)]), Case.Now));
    }

    [Fact]
    public void A_bandage_may_have_been_used_up_by_a_dressing()
    {
        var one = Bare.And("00:20", new Payload.SuppliesStated(Elastic, 1)).And("00:19", new Payload.SuppliesStated(Dressing, 0));
        Assert.Equal(Truth.Met, Supplies.CanPress(ShippedRules.Book.Kit, State(one), Case.Now));
        Assert.Equal(
            Truth.Unknown,
            Supplies.CanPress(
                ShippedRules.Book.Kit,
                State(one.And("00:10", new Payload.DressingApplied("w9", DressingKind.Pressure))),
                Case.Now
            )
        );
    }

    [Fact]
    public void What_is_in_the_wound_since_the_last_failure_is_at_hand()
    {
        var spent = With((Haemostatic, 0), (Plain, 0), (Cloth, 0), (Dressing, 0), (Elastic, 0));
        var used = spent
            .And("00:06", new Payload.WoundPacked("w1", PackingMaterial.Cloth))
            .And("00:05", new Payload.DressingApplied("w1", DressingKind.Pressure));
        Assert.Equal((Truth.NotMet, Truth.NotMet), Both(spent));
        Assert.Equal((Truth.Met, Truth.Met), Both(used));
        Assert.Equal(
            (Truth.NotMet, Truth.NotMet),
            (
                Supplies.CanPack(ShippedRules.Book.Kit, State(used), Case.Now, Limb.RightArm),
                Supplies.CanPress(ShippedRules.Book.Kit, State(used), Case.Now, Limb.RightArm)
            )
        );
        Assert.Equal(
            (Truth.NotMet, Truth.NotMet),
            (
                Supplies.CanPack(ShippedRules.Book.Kit, State(used), Case.Now),
                Supplies.CanPress(ShippedRules.Book.Kit, State(used), Case.Now)
            )
        );
        Assert.Equal((Truth.NotMet, Truth.NotMet), Both(used.Tried("00:07", "00:03", AttemptOutcome.Bled)));
        Assert.Equal((Truth.Met, Truth.Met), Both(used.Tried("00:09", "00:07", AttemptOutcome.Bled)));
        Assert.Equal((Truth.NotMet, Truth.NotMet), Both(spent.And("00:06", new Payload.DressingApplied("w1", DressingKind.Plain))));
    }

    [Fact]
    public void A_packed_wound_leaves_its_strip_for_the_dressing() =>
        Assert.Equal(
            (Truth.Met, Truth.Met),
            Both(
                With((Haemostatic, 0), (Plain, 0), (Dressing, 0), (Elastic, 0))
                    .And("00:06", new Payload.WoundPacked("w1", PackingMaterial.PlainGauze))
                    .And("00:05", new Payload.SuppliesStated(Cloth, 1))
            )
        );

    [Fact]
    public void All_that_is_asked_about_is_on_the_kit_list() =>
        Assert.All(Supplies.Asked, item => Assert.NotNull(ShippedRules.Book.Kit.Named(item)));

    private static Case Bare => Case.Well.With("gauze", null).With("dressing", null);

    private static (Truth, Truth) Both(Case of) =>
        (
            Supplies.CanPack(ShippedRules.Book.Kit, State(of), Case.Now, Limb.LeftLeg),
            Supplies.CanPress(ShippedRules.Book.Kit, State(of), Case.Now, Limb.LeftLeg)
        );

    private static Case With(params (string Item, int Count)[] counts) =>
        counts.Aggregate(Bare, (scene, c) => scene.And("00:20", new Payload.SuppliesStated(c.Item, c.Count)));

    private static State Counted(params (string Item, int Count)[] counts) => State(With(counts));

    private static State State(Case of) => of.Record.Readings.Single();
}
