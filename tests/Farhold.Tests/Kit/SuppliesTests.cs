using CsCheck;

namespace Farhold.Tests.Kit;

/// <summary>What the decision believes is left: never more than may be left.</summary>
/// <remarks>Pieces for one use come from the shipped kit list (design): a packing takes one or two rolls.</remarks>
public class SuppliesTests
{
    private static readonly Payload.WoundPacked Packed = new("w1", PackingMaterial.PlainGauze);

    private static readonly string[] Asked = [.. Supplies.PackingItems, Supplies.PressureDressing];

    [Fact]
    public void A_packing_may_have_taken_two_of_two()
    {
        var two = Case.Well.With("gauze", new Payload.SuppliesStated("plain-gauze", 2), "00:08");
        Assert.Equal(Truth.Met, Left("plain-gauze", two));
        Assert.Equal(Truth.Unknown, Left("plain-gauze", two.And("00:02", Packed)));
        Assert.Equal(Truth.Unknown, two.And("00:02", Packed).State("materials.packing"));
    }

    [Fact]
    public void Of_three_rolls_one_is_left_after_a_packing() =>
        Assert.Equal(Truth.Met, Left("plain-gauze", Case.Well.And("00:02", Packed)));

    [Fact]
    public void None_counted_is_none_left_until_counted_again()
    {
        var none = Case.Well.With("gauze", new Payload.SuppliesStated("plain-gauze", 0), "00:08");
        Assert.Equal(Truth.NotMet, Left("plain-gauze", none));
        Assert.Equal(Truth.Met, Left("plain-gauze", none.And("00:02", new Payload.SuppliesStated("plain-gauze", 1))));
    }

    [Fact]
    public void What_is_used_up_may_have_been_more_pieces_than_counted() =>
        Assert.Equal(
            Truth.Unknown,
            Left(
                "pressure-dressing",
                Case.Well.With("dressing", new Payload.SuppliesStated("pressure-dressing", 1), "00:08")
                    .And("00:02", new Payload.DressingApplied("w1", DressingKind.Pressure))
            )
        );

    [Fact]
    public void Of_two_counts_in_no_sure_order_the_lower_one_is_taken() =>
        Assert.Equal(
            Truth.Unknown,
            Left(
                "plain-gauze",
                Case.Well.And(new Happened(Case.Ago("00:20"), Case.Ago("00:02")), new Payload.SuppliesStated("plain-gauze", 0))
            )
        );

    [Fact]
    public void What_the_list_does_not_name_is_a_mistake_of_the_caller() =>
        Assert.Throws<ArgumentException>(() =>
            Supplies.Left(ShippedRules.Book.Kit, "blanket", Case.Well.Record.Readings.Single(), Case.Now)
        );

    [Fact]
    public void The_decision_and_the_outlook_count_alike() =>
        Gens.Record.Sample(
            written =>
                Assert.All(
                    Asked,
                    item =>
                    {
                        var left = Stock.Of(ShippedRules.Book.Kit.Named(item)!, written.Record, written.Now).Left;
                        if (written.Record.Doubts.IsEmpty)
                            Assert.Equal(
                                left is { Low: >= 1 },
                                Supplies.Left(ShippedRules.Book.Kit, item, written.Record.Readings.Single(), written.Now) == Truth.Met
                            );
                    }
                ),
            iter: Gens.Cases(300)
        );

    private static Truth Left(string item, Case of) => Supplies.Left(ShippedRules.Book.Kit, item, of.Record.Readings.Single(), Case.Now);
}
