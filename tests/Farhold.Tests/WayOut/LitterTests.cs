namespace Farhold.Tests.WayOut;

public class LitterTests
{
    private static readonly CheckRow[] FactorRows = [.. CheckRow.Of("terrain_factors.csv")];
    private static readonly CheckRow[] Cases = [.. CheckRow.Of("litter_cases.csv")];

    public static TheoryData<int, string> Factors =>
        CheckRow.Theory("terrain_factors.csv", _ => true, "surface", "constant_effort_speed_factor_1_over_sqrt_eta");

    public static TheoryData<int, string> Carries => CheckRow.Theory("litter_cases.csv", Timed, "case_id", "speed_km_h");

    public static TheoryData<int, string> Teams => CheckRow.Theory("litter_rules.csv", Team, "rule", "value_or_low");

    public static TheoryData<int, string> Endurance =>
        CheckRow.Theory("litter_rules.csv", Lasting, "rule", "value_or_low", "high_or_spread");

    [Theory, MemberData(nameof(Endurance))]
    public void Bearers_last_as_long_as_was_measured(int row, string source)
    {
        var rule = CheckRow.Of("litter_rules.csv").Where(Lasting).ElementAt(row);
        var ours = LitterEndurance.All.Single(e => e.Id == rule["rule"]);
        Assert.True(ours.Minutes == rule.Number("value_or_low") && $"sd {ours.Sd:0.0}" == rule["high_or_spread"], source);
    }

    [Fact]
    public void Priors_rise_and_a_law_passes_their_ends()
    {
        foreach (var prior in Priors.All)
        {
            var law = LogNormal.FromQuantiles(prior.P10Minutes, prior.P50Minutes, prior.P90Minutes);
            Assert.Equal(prior.P10Minutes, law.Quantile(0.1), 1e-9);
            Assert.Equal(prior.P90Minutes, law.Quantile(0.9), 1e-9);
            Assert.InRange(law.Quantile(0.5), 0.85 * prior.P50Minutes, 1.15 * prior.P50Minutes);
            Assert.NotEmpty(prior.Source);
        }
    }

    [Theory, MemberData(nameof(Factors))]
    public void Ground_snow_and_night_slow_as_published(int row, string source)
    {
        var check = FactorRows[row];
        var name = check["surface"];
        var published = check.Number("constant_effort_speed_factor_1_over_sqrt_eta");
        var snow = name.StartsWith("snow", StringComparison.Ordinal);
        var ours = name switch
        {
            _ when snow => Effort.SpeedFactor(Snow.EnergyCoefficient(Sinkage(name))),
            "march, road, day to night" => Night.OnPath,
            _ when name.StartsWith("march, cross-country", StringComparison.Ordinal) => Night.OffPath,
            _ when name.StartsWith("march, day, road", StringComparison.Ordinal) => Night.CrossCountryByDay,
            _ => Surfaces.All.Single(s => s.Name == name).SpeedFactor,
        };
        Assert.True(Math.Abs(ours - published) <= 5e-5, $"{ours}: {source}");
        if (snow)
            Assert.Equal(check.Number("energy_coefficient_eta"), Snow.EnergyCoefficient(Sinkage(name)), 1e-9);
    }

    [Fact]
    public void Snow_never_slows_below_a_quarter_and_no_snow_slows_nothing()
    {
        Assert.Equal(0.25, Snow.SpeedFactor(60));
        Assert.Equal(1, Snow.SpeedFactor(0));
    }

    [Theory, MemberData(nameof(Carries))]
    public void A_reported_carry_lies_within_the_prior(int row, string source)
    {
        var carry = Cases.Where(Timed).ElementAt(row);
        var kmh = carry.Number("distance_km") / carry.Number("carry_time_h");
        Assert.Equal(carry.Number("speed_km_h"), kmh, 0.006);
        Assert.InRange(LitterCarry.OnTrailKmh.Cdf(kmh), 0.01, 0.99);
        var seconds = new LitterCarry(new Stretch(carry.Number("distance_km")), Surfaces.Path).TimeSeconds();
        Assert.True(seconds.Cdf(3600 * carry.Number("carry_time_h")) is > 0.01 and < 0.99, source);
    }

    // Source: litter_cases.csv c01 to c07, rows marked as used in the fit: the spread of the raw speeds.
    [Fact]
    public void The_spread_of_the_prior_is_that_of_the_reported_speeds()
    {
        var fit = LogNormal.Fitted([.. Cases.Where(c => c["used_in_speed_fit"] == "1").Select(c => c.Number("speed_km_h"))]);
        Assert.Equal(0.427, fit.Sigma, 0.002);
        Assert.Equal(LitterCarry.OnTrailKmh.Sigma, fit.Sigma, 0.005);
    }

    // Worked by hand: 5 km at 1.8 km/h, and a spread of .43 at the ninth tenth.
    [Fact]
    public void Five_kilometres_take_a_full_party_two_hours_and_three_quarters()
    {
        var hours = new LitterCarry(new Stretch(5), Surfaces.Path).TimeSeconds();
        Assert.Equal(2.78, hours.Quantile(0.5) / 3600, 0.01);
        Assert.Equal(4.82, hours.Quantile(0.9) / 3600, 0.01);
    }

    [Theory, MemberData(nameof(Teams))]
    public void The_party_wanted_for_a_distance_is_the_rule_of_thumb(int row, string source)
    {
        var rule = CheckRow.Of("litter_rules.csv").Where(Team).ElementAt(row);
        double km = rule["rule"] switch
        {
            "teams_up_to_0.4_km" => 0.4,
            "teams_0.4_to_1.6_km" => 1.6,
            _ => 5,
        };
        Assert.True(LitterTeam.Wanted(km) == (int)rule.Number("value_or_low"), source);
    }

    // Source: litter_rules.csv, wheeled_litter_people 4 to 6 and wheeled_litter_speed 2 to 4 km/h on a smooth trail, from memory.
    [Fact]
    public void Four_people_with_a_wheel_on_a_smooth_path_go_two_to_four_kilometres_an_hour()
    {
        var wheeled = new LitterCarry(new Stretch(3), Surfaces.Path, 4, Wheel: true);
        Assert.InRange(3 * 3600 / wheeled.TimeSeconds().Median, 2, 4);
        // No wheel runs on boulders: four carry, the square root of 4 in 18.
        Assert.Equal(0.471, (wheeled with { Surface = Surfaces.Find("boulders")! }).SpeedFactor, 0.001);
    }

    // A law at the far ends too: the spread of a small party never makes one more bearer slower, to scores of five and a half.
    [Fact]
    public void More_bearers_are_never_slower_in_any_luck()
    {
        foreach (var z in new[] { -5.5, -1, 0, 1, 5.5 })
            for (var people = LitterTeam.Fewest; people < 30; people++)
                Assert.True(At(people + 1, z) <= At(people, z) * (1 + 1e-12), $"{people} at {z}");
        Assert.Throws<ArgumentOutOfRangeException>(() => LitterTeam.SpeedFactor(1));

        static double At(int people, double z) => new LitterCarry(new Stretch(3), Surfaces.Path, people).TimeSeconds().AtScore(z);
    }

    // Worked by hand from the way-out review's table: .47, .58 and .82 of a full party's speed.
    [Theory, InlineData(4, 0.47), InlineData(6, 0.58), InlineData(12, 0.82), InlineData(18, 1), InlineData(40, 1)]
    public void A_small_party_goes_by_the_root_of_its_number(int bearers, double factor) =>
        Assert.Equal(factor, LitterTeam.SpeedFactor(bearers), 0.005);

    [Fact]
    public void Snow_and_soft_ground_together_slow_a_litter_no_further_than_the_floor()
    {
        var deep = new LitterCarry(new Stretch(3), Surfaces.Find("swamp")!, 18, SnowCm: 100);
        Assert.Equal(0.6, deep.SpeedFactor, 1e-9);
    }

    private static bool Timed(CheckRow row) => row["distance_km"].Length > 0 && row["carry_time_h"].Length > 0;

    private static bool Team(CheckRow row) => row["rule"].StartsWith("teams_", StringComparison.Ordinal);

    private static bool Lasting(CheckRow row) => row["high_or_spread"].StartsWith("sd", StringComparison.Ordinal);

    private static double Sinkage(string name) => double.Parse(name.Split(' ')[^2]);
}
