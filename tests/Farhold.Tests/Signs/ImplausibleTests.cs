namespace Farhold.Tests.Signs;

/// <summary>
/// What is asked back and what is believed, on both sides of each number. The numbers are design: see <see cref="SignBounds"/>.
/// </summary>
public class ImplausibleTests
{
    [Theory]
    [InlineData("heartRate", 34, 24, 25)]
    [InlineData("heartRate", 34, 221, 220)]
    [InlineData("heartRate", 5, 29, 30)]
    [InlineData("heartRate", 5, 251, 250)]
    [InlineData("heartRate", 0.5, 301, 300)]
    [InlineData("breathRate", 34, 3, 4)]
    [InlineData("breathRate", 34, 61, 60)]
    [InlineData("breathRate", 5, 4, 5)]
    [InlineData("breathRate", 5, 81, 80)]
    [InlineData("breathRate", 0.5, 101, 100)]
    [InlineData("systolic", 34, 39, 40)]
    [InlineData("systolic", 34, 281, 280)]
    [InlineData("systolic", 5, 34, 35)]
    [InlineData("systolic", 0.5, 151, 150)]
    [InlineData("diastolic", 34, 9, 10)]
    [InlineData("diastolic", 34, 181, 180)]
    [InlineData("spo2", 34, 59, 60)]
    [InlineData("temperatureC", 34, 27.9, 28)]
    [InlineData("temperatureC", 34, 43.1, 43)]
    [InlineData("capillaryRefillS", 34, 6.5, 6)]
    public void A_value_outside_its_bounds_is_asked_back_and_one_at_the_bound_is_believed(
        string field,
        double ageYears,
        double outside,
        double within
    )
    {
        Assert.Equal([field], Asked(One(field, outside), ageYears));
        Assert.Empty(Asked(One(field, within), ageYears));
    }

    /// <summary>
    /// Seen in living casualties: published cases and rule 2 of the shipped protocol; the athlete's pulse is from memory.
    /// </summary>
    [Fact]
    public void What_is_alarming_and_possible_is_believed()
    {
        Assert.Empty(Asked(new() { RespiratoryRate = 8 }));
        Assert.Empty(Asked(new() { Spo2 = 84 }));
        Assert.Empty(
            Asked(
                new()
                {
                    HeartRate = 38,
                    Mental = Mental.Alert,
                    RadialPulse = RadialPulse.Strong,
                }
            )
        );
        Assert.Empty(Asked(new() { TemperatureC = 31, Mental = Mental.Confused }));
        Assert.Empty(
            Asked(
                new()
                {
                    Systolic = 60,
                    Mental = Mental.Unresponsive,
                    RadialPulse = RadialPulse.Absent,
                }
            )
        );
        Assert.Empty(
            Asked(
                new()
                {
                    HeartRate = 170,
                    RespiratoryRate = 44,
                    Systolic = 62,
                    Mental = Mental.Confused,
                    RadialPulse = RadialPulse.Weak,
                }
            )
        );
        Assert.Empty(Asked(new() { HeartRate = 205, RespiratoryRate = 53 }, 0.05)); // PALS card 2015/2020: newborn and infant, upper ends
        Assert.Empty(Asked(new() { CapillaryRefillS = 8, RadialPulse = RadialPulse.Weak }));
    }

    [Theory]
    [InlineData("heartRate", 0.0)]
    [InlineData("heartRate", 20.0)]
    [InlineData("breathRate", 0.0)]
    [InlineData("breathRate", 3.0)]
    [InlineData("spo2", 50.0)]
    [InlineData("temperatureC", 27.0)]
    [InlineData("capillaryRefillS", 8.0)]
    public void What_no_calm_casualty_has_is_asked_back(string field, double value) =>
        Assert.Contains(field, Asked(One(field, value) with { Mental = Mental.Alert }));

    /// <summary>Swiss stage III, under 28 °C: unconscious, with signs of life (ICAR, seen second-hand).</summary>
    [Fact]
    public void A_low_value_is_believed_of_a_casualty_so_deep()
    {
        Assert.Empty(Asked(new() { TemperatureC = 26, Mental = Mental.Pain }));
        Assert.Empty(
            Asked(
                new()
                {
                    HeartRate = 20,
                    RespiratoryRate = 3,
                    Mental = Mental.Pain,
                }
            )
        );
        Assert.Empty(
            Asked(
                new()
                {
                    HeartRate = 0,
                    RespiratoryRate = 0,
                    Mental = Mental.Unresponsive,
                }
            )
        );
        Assert.Equal(["heartRate"], Asked(new() { HeartRate = 0, Mental = Mental.Pain }));
        Assert.Equal(["temperatureC"], Asked(new() { TemperatureC = 26, Mental = Mental.Voice }));
        Assert.Equal(["temperatureC"], Asked(new() { TemperatureC = 44, Mental = Mental.Unresponsive }));
    }

    [Fact]
    public void A_slow_refill_is_believed_beside_any_other_sign_of_poor_flow()
    {
        var slow = new Payload.SignsTaken
        {
            CapillaryRefillS = 8,
            Mental = Mental.Alert,
            RadialPulse = RadialPulse.Strong,
            Systolic = 90,
        };
        Assert.Equal(["capillaryRefillS"], Asked(slow));
        foreach (
            var poor in new[]
            {
                slow with
                {
                    Mental = Mental.Confused,
                },
                slow with
                {
                    RadialPulse = RadialPulse.Weak,
                },
                slow with
                {
                    Pale = true,
                },
                slow with
                {
                    Cool = true,
                },
                slow with
                {
                    Clammy = true,
                },
                slow with
                {
                    Systolic = 89,
                },
            }
        )
            Assert.Empty(Asked(poor));
    }

    [Fact]
    public void Of_an_unknown_age_only_what_is_implausible_at_every_age_is_asked_back()
    {
        Assert.Empty(Asked(new() { HeartRate = 260 }, null));
        Assert.Equal(["heartRate"], Asked(new() { HeartRate = 301 }, null));
        Assert.Empty(Asked(new() { HeartRate = 25, RespiratoryRate = 4 }, null));
        Assert.Equal(["heartRate"], Asked(new() { HeartRate = 24 }, null));
    }

    [Fact]
    public void A_contradiction_makes_both_values_doubtful()
    {
        Assert.Equal(["gcs", "mental"], Asked(new() { Mental = Mental.Alert, Gcs = new(1, 1, 1) }));
        Assert.Empty(Asked(new() { Mental = Mental.Unresponsive, Gcs = new(1, 1, 1) }));
        Assert.Empty(Asked(new() { Mental = Mental.Alert, Gcs = new(4, 4, 6) })); // perhaps newly confused: no contradiction
        Assert.Equal(["diastolic", "systolic"], Asked(new() { Systolic = 70, Diastolic = 70 }));
        Assert.Empty(Asked(new() { Systolic = 70, Diastolic = 69 }));
        Assert.Equal(["dizzy", "mental"], Asked(new() { Mental = Mental.Unresponsive, Dizzy = true }));
        Assert.Empty(Asked(new() { Mental = Mental.Unresponsive, Dizzy = false }));
        Assert.Equal(
            ["heartRate", "radialPulse"],
            Asked(
                new()
                {
                    Mental = Mental.Unresponsive,
                    HeartRate = 0,
                    RadialPulse = RadialPulse.Weak,
                }
            )
        );
        Assert.Empty(
            Asked(
                new()
                {
                    Mental = Mental.Unresponsive,
                    HeartRate = 0,
                    RadialPulse = RadialPulse.Absent,
                }
            )
        );
        Assert.Equal(["mental", "temperatureC"], Asked(new() { Mental = Mental.Alert, TemperatureC = 29.9 }));
        Assert.Empty(Asked(new() { Mental = Mental.Alert, TemperatureC = 30 }));
    }

    /// <summary>Deakin and Low 2000, BMJ 321:673 (from memory), for the pulse at the wrist.</summary>
    [Fact]
    public void Pulse_mental_state_and_pressure_are_held_against_each_other_from_twelve_years()
    {
        Assert.Equal(["radialPulse", "systolic"], Asked(new() { Systolic = 59, RadialPulse = RadialPulse.Strong }));
        Assert.Empty(Asked(new() { Systolic = 60, RadialPulse = RadialPulse.Strong }));
        Assert.Empty(Asked(new() { Systolic = 59, RadialPulse = RadialPulse.Weak }));
        Assert.Equal(["radialPulse", "systolic"], Asked(new() { Systolic = 110, RadialPulse = RadialPulse.Absent }));
        Assert.Empty(Asked(new() { Systolic = 109, RadialPulse = RadialPulse.Absent }));
        Assert.Equal(["mental", "systolic"], Asked(new() { Systolic = 49, Mental = Mental.Alert }));
        Assert.Empty(Asked(new() { Systolic = 50, Mental = Mental.Alert }));
        Assert.Empty(
            Asked(
                new()
                {
                    Systolic = 49,
                    Mental = Mental.Alert,
                    RadialPulse = RadialPulse.Strong,
                },
                11
            )
        );
        Assert.NotEmpty(
            Asked(
                new()
                {
                    Systolic = 49,
                    Mental = Mental.Alert,
                    RadialPulse = RadialPulse.Strong,
                },
                12
            )
        );
    }

    [Fact]
    public void No_heart_beat_and_no_breath_are_never_settled_by_saying_so() =>
        Assert.All(
            Implausible.Of(
                new Payload.SignsTaken
                {
                    HeartRate = 0,
                    RespiratoryRate = 0,
                    Mental = Mental.Alert,
                },
                34
            ),
            o => Assert.False(o.BySaying)
        );

    [Theory]
    [InlineData(0.0, 78.0, true)]
    [InlineData(0.0, 10.4, false)] // 2.6 × 4 kg
    [InlineData(0.0, 10.5, true)]
    [InlineData(8.0, 160.0, true)]
    [InlineData(8.0, 80.0, false)] // 2.6 × 31 kg = 80.6 kg
    [InlineData(8.0, 10.0, true)] // 0.35 × 31 kg = 10.85 kg
    [InlineData(8.0, 11.0, false)]
    [InlineData(15.0, 201.0, true)]
    [InlineData(15.0, 200.0, false)]
    [InlineData(34.0, 19.0, true)]
    [InlineData(34.0, 20.0, false)]
    [InlineData(34.0, 300.0, false)]
    [InlineData(34.0, 301.0, true)]
    public void An_age_and_a_mass_that_can_not_both_be_are_both_doubtful(double age, double mass, bool doubtful) =>
        Assert.Equal(
            doubtful ? ["ageYears", "massKg"] : [],
            Implausible.Of(new Payload.CasualtyOpened("Runa", AgeYears: age, MassKg: mass)).Select(o => o.Field).ToArray()
        );

    [Fact]
    public void An_age_or_a_mass_alone_is_doubtful_by_itself()
    {
        Assert.Equal("ageYears", Assert.Single(Implausible.Of(new Payload.CasualtyOpened("Runa", AgeYears: 116))).Field);
        Assert.Empty(Implausible.Of(new Payload.CasualtyOpened("Runa", AgeYears: 115)));
        Assert.Equal("massKg", Assert.Single(Implausible.Of(new Payload.CasualtyOpened("Runa", MassKg: 301))).Field);
        Assert.Empty(Implausible.Of(new Payload.CasualtyOpened("Runa", MassKg: 300)));
        Assert.Equal("massKg", Assert.Single(Implausible.Of(new Payload.CasualtyOpened("Runa", MassKg: 0.4))).Field);
    }

    [Fact]
    public void What_is_doubtful_in_the_record_is_asked_back_before_it_is_logged_too()
    {
        foreach (
            var doubtful in new Payload[]
            {
                new Payload.SignsTaken { HeartRate = 20 },
                new Payload.SignsTaken { Mental = Mental.Alert, Gcs = new(1, 1, 1) },
                new Payload.CasualtyOpened("Runa", AgeYears: 0, MassKg: 78),
                new Payload.CasualtyOpened("Runa", AgeYears: 120),
                new Payload.CasualtyOpened("Runa", MassKg: 301),
            }
        )
            Assert.Single(Plausible.Slips(doubtful, null, ShippedFormulary.Formulary));
    }

    [Fact]
    public void What_is_possible_reaches_further_than_what_is_usual()
    {
        foreach (var age in Enumerable.Range(0, 130).Select(a => (double?)a).Append(null))
            Assert.True(
                MassBounds.Possible(age).Low < MassBounds.Usual(age).Low && MassBounds.Possible(age).High > MassBounds.Usual(age).High
            );
    }

    private static string[] Asked(Payload.SignsTaken look, double? age = 34) =>
        [.. Implausible.Of(look, age).Select(o => o.Field).Distinct().Order(StringComparer.Ordinal)];

    private static Payload.SignsTaken One(string field, double value) =>
        field switch
        {
            "heartRate" => new() { HeartRate = value },
            "breathRate" => new() { RespiratoryRate = value },
            "systolic" => new() { Systolic = value },
            "diastolic" => new() { Diastolic = value },
            "spo2" => new() { Spo2 = value },
            "temperatureC" => new() { TemperatureC = value },
            _ => new() { CapillaryRefillS = value },
        };
}
