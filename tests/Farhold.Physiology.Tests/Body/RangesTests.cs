namespace Farhold.Physiology.Tests.Body;

public class RangesTests
{
    [Fact]
    public void A_person_out_of_range_is_refused_by_name() =>
        Assert.Contains(
            "HeartRate",
            Assert.Throws<ArgumentOutOfRangeException>(() => new CasualtySimulation(Models.Current, new() { HeartRate = 0 })).ParamName,
            StringComparison.Ordinal
        );

    public static TheoryData<Conditions, string> Impossible =>
        new()
        {
            {
                new() { Insulation = 0 },
                "Insulation"
            },
            {
                new() { AirTemperature = double.NaN },
                "AirTemperature"
            },
            {
                new() { ArterialOcclusion = 1.1 },
                "ArterialOcclusion"
            },
            {
                new() { Infusion = new(-1) },
                "Infusion.Rate"
            },
            {
                new() { Wounds = [new() { Opening = -1 }] },
                "wound.Opening"
            },
        };

    [Theory, MemberData(nameof(Impossible))]
    public void Conditions_out_of_range_are_refused_by_name_and_what_held_stays(Conditions impossible, string name)
    {
        var simulation = new CasualtySimulation(Models.Current, new());
        var held = simulation.Conditions;
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => simulation.Conditions = impossible);
        Assert.Contains(name, refused.ParamName, StringComparison.Ordinal);
        Assert.Same(held, simulation.Conditions);
    }
}
