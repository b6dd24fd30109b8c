using CsCheck;

namespace Farhold.Tests.Records;

/// <summary>Slips that are asked back. The limits are design; masses of children are APLS 2011 (seen second-hand).</summary>
public class PlausibleTests
{
    private const double PoundsPerKilogram = 1 / 0.45359237; // exact by definition, 1959

    private static readonly Formulary Shipped = ShippedFormulary.Formulary;

    private static readonly Gen<(Drug Drug, Regimen Regimen, double Age, double Mass)> Ordered =
        from drug in Gen.OneOf<Drug>([.. Shipped.Drugs])
        from regimen in Gen.OneOf<Regimen>([.. drug.Regimens])
        from age in Gen.Double[regimen.FromYears, Math.Min(90, regimen.UnderYears - 0.01)]
        from share in Gen.Double[0, 1]
        let usual = MassBounds.Usual(age)
        select (drug, regimen, age, usual.Low + (share * (usual.High - usual.Low)));

    [Fact]
    public void A_mass_that_was_pounds_is_asked_back_in_both_units() =>
        Assert.Equal(
            "160 kg (353 lb) is very heavy at 8 years. If 160 lb was meant, it is 73 kg.", // 72.6 kg: a pound is 0.45359237 kg
            Assert.Single(Plausible.Slips(new Payload.CasualtyOpened("Eir", AgeYears: 8, MassKg: 160), null, ShippedFormulary.Formulary))
        );

    [Theory]
    [InlineData(0.25, 5.5)] // worked examples of the APLS formulas (derived)
    [InlineData(1, 10)]
    [InlineData(5, 18)]
    [InlineData(6, 25)]
    [InlineData(12, 43)]
    public void The_mass_of_a_child_is_never_asked_about_and_pounds_for_kilograms_always_are(double age, double mass)
    {
        Assert.Empty(Asked(Person(age, mass)));
        Assert.Single(Asked(Person(age, mass * PoundsPerKilogram)));
        Assert.Single(Asked(Person(age, mass / PoundsPerKilogram)));
    }

    [Theory]
    [InlineData(34, 68, 0)]
    [InlineData(34, 150, 1)] // 68 kg told in pounds
    [InlineData(34, 31, 1)] // 68 taken for pounds
    [InlineData(8, 8, 1)] // eight months told as years
    [InlineData(110, 60, 1)]
    public void An_odd_mass_or_age_is_asked_about(double age, double mass, int doubts) =>
        Assert.Equal(doubts, Asked(Person(age, mass)).Length);

    [Fact]
    public void No_dose_that_may_be_ordered_is_asked_about() =>
        Ordered.Sample(o =>
        {
            foreach (var mg in Doses(o.Regimen, o.Mass))
                Assert.Empty(Asked(new Payload.DrugGiven(o.Drug.Id, mg, "mg", o.Regimen.Route), Person(o.Age, o.Mass)));
        });

    [Fact]
    public void A_thousand_times_too_much_or_too_little_is_always_asked_about() =>
        Ordered.Sample(o =>
        {
            foreach (var mg in Doses(o.Regimen, o.Mass))
            {
                Assert.NotEmpty(Asked(new Payload.DrugGiven(o.Drug.Id, mg, "g", o.Regimen.Route), Person(o.Age, o.Mass)));
                Assert.NotEmpty(Asked(new Payload.DrugGiven(o.Drug.Id, mg, "µg", o.Regimen.Route), Person(o.Age, o.Mass)));
            }
        });

    [Fact]
    public void Nobody_s_age_and_mass_make_a_thousand_times_the_dose_pass() =>
        Ordered.Sample(o =>
            Assert.NotEmpty(Asked(new Payload.DrugGiven(o.Drug.Id, 3 * o.Drug.Regimens.Max(r => r.MostMg), "mg", "x"), null))
        );

    [Fact]
    public void What_is_no_mass_is_said_to_be_none() =>
        Assert.Contains(
            "no unit of mass",
            Assert.Single(Asked(new Payload.DrugGiven("paracetamol", 2, "tablets", "mouth"))),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(0.5, 1)] // half a litre told in litres
    [InlineData(500, 0)]
    [InlineData(5000, 1)]
    public void A_volume_in_litres_is_asked_about(double millilitres, int doubts)
    {
        Assert.Equal(doubts, Asked(new Payload.FluidGiven(Fluid.OralWater, millilitres, "mouth")).Length);
        Assert.Equal(doubts, Asked(new Payload.UrineMeasured(millilitres)).Length);
    }

    [Fact]
    public void Mixed_up_pressures_are_asked_about()
    {
        Assert.Single(Asked(new Payload.SignsTaken { Systolic = 70, Diastolic = 110 }));
        Assert.Empty(
            Asked(
                new Payload.SignsTaken
                {
                    Systolic = 110,
                    Diastolic = 70,
                    HeartRate = 88,
                    TemperatureC = 36.8,
                }
            )
        );
    }

    [Fact]
    public void Nothing_in_the_example_is_asked_about() =>
        Assert.All(Demo.Record().Entries, e => Assert.Empty(Asked(e.Payload, Person(34, 68))));

    private static double[] Doses(Regimen regimen, double mass) =>
        regimen.FixedMg is { } fixedMg
            ? [Math.Min(fixedMg.Low, regimen.MostMg), Math.Min(fixedMg.High, regimen.MostMg)]
            : [Math.Min(regimen.MgPerKg!.Value.Low * mass, regimen.MostMg), Math.Min(regimen.MgPerKg.Value.High * mass, regimen.MostMg)];

    private static Payload.CasualtyOpened Person(double age, double mass) => new("Runa", AgeYears: age, MassKg: mass);

    private static System.Collections.Immutable.ImmutableArray<string> Asked(Payload what, Payload.CasualtyOpened? person = null) =>
        Plausible.Slips(what, person, Shipped);
}
