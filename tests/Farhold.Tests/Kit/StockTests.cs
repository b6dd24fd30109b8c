using System.Text;

namespace Farhold.Tests.Kit;

/// <summary>What is left: the last count, less what was used since, on the worse side.</summary>
/// <remarks>Pieces for one use come from the shipped kit list, where they are marked as a design.</remarks>
public class StockTests
{
    private static readonly Payload.WoundPacked Packed = new("w1", PackingMaterial.PlainGauze);

    [Fact]
    public void What_was_never_counted_is_unknown() => Assert.Null(Left("cloth", Case.Well.And("00:02", Packed)));

    [Fact]
    public void A_use_after_the_count_takes_its_range_off() =>
        Assert.Equal(new Between(1, 2), Left("plain-gauze", Case.Well.And("00:02", Packed))); // 3 rolls, 1 to 2 for a packing

    [Fact]
    public void A_use_before_the_count_was_counted_already() =>
        Assert.Equal(Between.Exactly(3), Left("plain-gauze", Case.Well.And("00:20", Packed)));

    [Fact]
    public void A_use_that_may_have_come_before_the_count_counts_on_the_worse_side_only() =>
        Assert.Equal(new Between(1, 3), Left("plain-gauze", Case.Well.And(new Happened(Case.Ago("00:20"), Case.Ago("00:02")), Packed)));

    [Fact]
    public void Of_two_counts_in_no_sure_order_both_count() =>
        Assert.Equal(
            new Between(3, 9),
            Left(
                "plain-gauze",
                Case.Well.And(new Happened(Case.Ago("00:20"), Case.Ago("00:02")), new Payload.SuppliesStated("plain-gauze", 9))
            )
        );

    [Fact]
    public void Another_count_at_the_same_instant_replaces_the_one_before() =>
        Assert.Equal(Between.Exactly(4), Left("plain-gauze", Case.Well.And("00:08", new Payload.SuppliesStated("plain-gauze", 4))));

    [Fact]
    public void Drink_takes_its_volume_off_the_water()
    {
        var drunk = Case
            .Well.And("00:30", new Payload.SuppliesStated("water-ml", 2000))
            .And("00:10", new Payload.FluidGiven(Fluid.OralRehydration, 250, "mouth"))
            .And("00:05", new Payload.FluidGiven(Fluid.Crystalloid, 500, "vein"));
        Assert.Equal(Between.Exactly(1750), Left("water-ml", drunk));
    }

    [Fact]
    public void A_drug_is_counted_in_pieces_by_any_of_its_names() =>
        Assert.Equal(
            Between.Exactly(8),
            Left(
                "paracetamol-500-mg",
                Case.Well.And("00:30", new Payload.SuppliesStated("paracetamol-500-mg", 10))
                    .And("00:10", new Payload.DrugGiven("Acetaminophen", 1, "g", "mouth"))
            )
        );

    [Fact]
    public void An_amount_in_no_unit_of_mass_may_have_taken_all() =>
        Assert.Equal(
            new Between(0, 10),
            Left(
                "paracetamol-500-mg",
                Case.Well.And("00:30", new Payload.SuppliesStated("paracetamol-500-mg", 10))
                    .And("00:10", new Payload.DrugGiven("paracetamol", 2, "tablets", "mouth"))
            )
        );

    [Fact]
    public void A_withdrawn_use_is_given_back()
    {
        var record = Case.Well.And("00:02", Packed).Record;
        var use = record.Entries.Single(e => e.Payload is Payload.WoundPacked);
        record.Add(
            EntryWriting.Write(
                new("a", record.Count + 1),
                Happened.At(Case.Now),
                Case.Now,
                "Ane",
                new Payload.EntryWithdrawn(use.Id, "slip")
            )
        );
        Assert.Equal(Between.Exactly(3), Of("plain-gauze", record));
    }

    [Fact]
    public void A_gap_in_the_record_may_have_taken_all()
    {
        var record = Case.Well.Record;
        record.Add(
            EntryWriting.Write(new("a", record.Count + 2), Happened.At(Case.Now), Case.Now, "Ane", new Payload.NoteWritten("after a gap"))
        );
        Assert.Equal(new Between(0, 3), Of("plain-gauze", record));
    }

    [Fact]
    public void The_shipped_list_names_a_source_for_every_item_and_stand_ins_that_exist() =>
        Assert.All(
            ShippedRules.Book.Kit.Items,
            i =>
            {
                Assert.NotEmpty(i.Sources);
                Assert.All(i.Instead.Where(x => !x.Contains(' ')), x => Assert.NotNull(ShippedRules.Book.Kit.Named(x)));
                Assert.All(i.Uses.Where(u => u.Kind == Kind.DrugGiven), u => Assert.NotNull(ShippedFormulary.Formulary.Named(u.Of!)));
            }
        );

    [Fact]
    public void The_list_holds_every_item_the_decision_asks_about() =>
        Assert.All(Supplies.PackingItems.Append(Supplies.PressureDressing), i => Assert.NotNull(ShippedRules.Book.Kit.Named(i)));

    [Theory]
    [InlineData("""{"kind":"note","each":[1,1]}""", "kind has to be one of")]
    [InlineData("""{"kind":"wound.packed"}""", "gives each")]
    [InlineData("""{"kind":"wound.packed","pieceMg":500}""", "for a drug")]
    [InlineData("""{"kind":"wound.packed","each":[2,1]}""", "least and the most")]
    public void A_broken_list_is_refused_with_its_place(string use, string says)
    {
        var file = $$$"""
            {"kit":"x","version":"1","title":"X","sources":{"design":{"title":"D","known":"design"}},"items":[
             {"id":"a","name":"a","unit":"piece","step":1,"uses":[{{{use}}}],"sources":["design"]}]}
            """;
        var refused = Assert.IsType<Read<KitList>.Refused>(KitReader.Read(Encoding.UTF8.GetBytes(file), "x.json"));
        Assert.Contains(refused.Refusals, r => r.Line == 2 && r.Reason.Contains(says, StringComparison.Ordinal));
    }

    private static Between? Left(string item, Case of) => Of(item, of.Record);

    private static Between? Of(string item, CareRecord record) => Stock.Of(ShippedRules.Book.Kit.Named(item)!, record, Case.Now).Left;
}
