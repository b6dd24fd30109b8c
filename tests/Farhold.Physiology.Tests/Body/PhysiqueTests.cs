namespace Farhold.Physiology.Tests.Body;

public class PhysiqueTests
{
    private static readonly Physique Default = new(Models.Current, new());

    /// <summary>From the reference, which prints them for checking; half a unit of its last digit is allowed.</summary>
    public static TheoryData<string, double, double, double> Printed =>
        new()
        {
            { "BSA", Default.Surface, 1.926734, 5e-7 },
            { "BV0", Default.BloodVolume, 5087.575, 5e-4 },
            { "CO0", Default.Output, 93.12550, 2e-5 },
            { "SV0", Default.StrokeVolume, 85.96200, 2e-5 },
            { "Cv", Default.VenousCompliance, 173.0196, 5e-5 },
            { "Ca", Default.ArterialCompliance, 1.810215, 5e-7 },
            { "Cpp", Default.PulseCompliance, 1.868739, 5e-7 },
            { "Gli", Default.LimbInflowConductance, 0.06170967, 5e-9 },
            { "Glo", Default.LimbOutflowConductance, 1.463400, 1e-6 },
            { "Gs", Default.SystemicConductance, 1.017383, 5e-7 },
            { "Vuv", Default.VenousUnstressedVolume, 3097.329, 5e-4 },
            { "HRmax", Default.HeartRateCeiling - 5, 134.64, 5e-3 },
            { "dHR", Default.HeartRateReserve, 69.64, 5e-3 },
            { "Hb0", Default.Haemoglobin, 14.491, 5e-4 },
            { "rho", Default.CapillaryShare, 0.1081668, 5e-8 },
            { "PS", Default.ProteinDiffusion, 0.009583333, 5e-10 },
            { "VO20", Default.OxygenUse, 4.1625, 5e-5 },
            { "Vm", Default.LactateClearance, 0.126875, 5e-7 },
            { "PL0", Default.LactateMade, 0.02746212, 5e-9 },
            { "U0", Default.Urine, 0.01666667, 5e-9 },
        };

    [Theory, MemberData(nameof(Printed))]
    public void The_default_person_has_the_constants_of_the_reference(string name, double found, double expected, double tolerance) =>
        Assert.True(Math.Abs(found - expected) <= tolerance, $"{name} is {found:R}, expected {expected:R}");

    /// <summary>Nadler 1962, worked out by hand: 0.3561 · 1.64³ + 0.03308 · 60 + 0.1833 = 3.7388 L.</summary>
    [Fact]
    public void A_woman_of_60_kg_and_164_cm_has_3_74_litres_of_blood() =>
        Assert.Equal(
            3738.8,
            new Physique(
                Models.Current,
                new()
                {
                    Sex = Sex.Female,
                    MassKg = 60,
                    HeightM = 1.64,
                }
            ).BloodVolume,
            0.1
        );

    /// <summary>The reference calls it a balance to within 0.03 %, since its constants are rounded.</summary>
    [Fact]
    public void At_rest_what_flows_in_flows_out()
    {
        var now = new CasualtySimulation(Models.Current, new()).Now();
        Near(Default.Output, now.Output);
        Near(now.Output, now.SystemicFlow + now.LimbInflow);
        Near(now.LimbInflow, now.LimbOutflow);
        Near(Default.Lymph, now.LymphFlow);
        Near(Default.Lymph, now.Filtration, 0.01);
        Near(Default.OxygenUse, now.OxygenUse, 0.001);

        static void Near(double expected, double found, double within = 0.0004) =>
            Assert.True(Math.Abs(found - expected) <= within * expected, $"{found:R}, expected {expected:R}");
    }

    [Fact]
    public void Slots_name_the_state_in_its_order()
    {
        Assert.Equal(typeof(Levels).GetFields().Select(f => f.Name), Slots.Body.Select(s => s.Name));
        Assert.Equal(typeof(WoundLevels).GetFields().Select(f => f.Name), Slots.Wound.Select(s => s.Name));
        Assert.Equal(Slots.BodyCount, Slots.Body.Length);
        Assert.Equal(Slots.WoundCount, Slots.Wound.Length);
    }
}
