namespace Farhold.Tests.Drugs;

/// <summary>Sums of what was given, for every hand-over and screen alike.</summary>
public class DrugSumTests
{
    [Fact]
    public void One_drug_by_two_names_is_one_sum() =>
        Assert.Equal(
            [new DrugSum("paracetamol", "mg", new(Between.Exactly(1500), 2))],
            All(("paracetamol", 1000, "mg"), ("Acetaminophen", 500, "mg"))
        );

    [Fact]
    public void Masses_in_different_units_are_added_in_milligrams() =>
        Assert.Equal(
            [new DrugSum("paracetamol", "mg", new(Between.Exactly(1500), 2))],
            All(("paracetamol", 1, "g"), ("paracetamol", 500, "mg"))
        );

    [Fact]
    public void A_unit_that_is_no_mass_is_never_added_to_one() =>
        Assert.Equal(
            [
                new DrugSum("paracetamol", "g", new(Between.Exactly(1), 1)),
                new DrugSum("paracetamol", "tablets", new(Between.Exactly(2), 1)),
            ],
            All(("paracetamol", 1, "g"), ("paracetamol", 2, "tablets"))
        );

    [Fact]
    public void A_drug_that_no_formulary_knows_is_summed_as_written() =>
        Assert.Equal([new DrugSum("herb tea", "cups", new(Between.Exactly(3), 2))], All(("herb tea", 1, "cups"), ("Herb Tea ", 2, "cups")));

    private static System.Collections.Immutable.ImmutableArray<DrugSum> All(params (string Drug, double Amount, string Unit)[] given) =>
        DrugSum.All(
            given
                .Select((g, i) => (g, i))
                .Aggregate(
                    Case.Well,
                    (c, x) =>
                        c.And(
                            Happened.At(Case.Now - Duration.FromMinutes(60 - x.i)),
                            new Payload.DrugGiven(x.g.Drug, x.g.Amount, x.g.Unit, "mouth")
                        )
                )
                .Record,
            ShippedFormulary.Formulary,
            Case.Now
        );
}
