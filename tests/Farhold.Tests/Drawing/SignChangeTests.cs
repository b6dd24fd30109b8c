using System.Collections.Immutable;

namespace Farhold.Tests.Drawing;

/// <summary>A mark from 20 % on, and what it is held against: design (hands-and-eyes.md 5).</summary>
public class SignChangeTests
{
    private static SignChange? Of(string field, params (string At, double Value)[] readings) =>
        SignChange.From(
            [.. readings.Select(r => new Seen<double>(r.Value, Happened.At(Some.At(r.At))))],
            ChartedSign.All.Single(s => s.Field == field)
        );

    [Fact]
    public void A_pulse_that_rose_by_a_fifth_is_marked_with_its_percent()
    {
        // Middle of 80, 82 and 90 is 82; (100 - 82) / 82 = 22 %.
        var change = Of("heartRate", ("04:00", 80), ("05:00", 90), ("06:00", 82), ("07:00", 92), ("07:30", 100))!;
        Assert.True(change.Marked);
        Assert.Equal(82, change.Reference);
        Assert.Equal(21.95, change.By, 0.01);
        Assert.Equal(Some.At("04:00"), change.Since);
    }

    [Fact]
    public void A_fifth_to_the_point_is_marked_and_less_is_only_told()
    {
        Assert.True(Of("heartRate", ("07:00", 80), ("07:30", 96))!.Marked);
        Assert.False(Of("heartRate", ("07:00", 80), ("07:30", 95))!.Marked);
        Assert.False(Of("systolic", ("07:00", 120), ("07:30", 97))!.Marked);
        Assert.True(Of("systolic", ("07:00", 120), ("07:30", 96))!.Marked);
    }

    /// <summary>Two counts of one adult's breaths differ by up to 6 (Lim 2002).</summary>
    [Fact]
    public void What_counting_alone_may_do_is_no_change()
    {
        Assert.Null(Of("breathRate", ("07:00", 15), ("07:30", 20)));
        Assert.Equal(40, Of("breathRate", ("07:00", 15), ("07:30", 21))!.By, 1e-9);
        Assert.Null(Of("heartRate", ("07:30", 180)));
    }

    [Fact]
    public void Oxygen_temperature_and_pain_change_in_their_own_units()
    {
        Assert.Equal(-4, Of("spo2", ("07:00", 97), ("07:30", 93))!.By);
        Assert.True(Of("temperatureC", ("07:00", 36.8), ("07:30", 36.2))!.Marked);
        Assert.Null(Of("pain", ("07:00", 4), ("07:30", 5)));
    }

    [Fact]
    public void After_a_gap_longer_than_the_reach_it_is_held_against_the_reading_before() =>
        Assert.Equal(80, Of("heartRate", ("00:00", 60), ("01:00", 80), ("07:30", 120))!.Reference);

    [Fact]
    public void Of_two_the_one_further_from_the_last_counts() =>
        Assert.Equal(70, Of("heartRate", ("05:00", 88), ("06:00", 70), ("07:30", 100))!.Reference);

    [Fact]
    public void A_heart_that_beats_again_is_told_in_beats()
    {
        var change = Of("heartRate", ("07:00", 0), ("07:30", 60))!;
        Assert.Equal((false, 60.0, true), (change.InPercent, change.By, change.Marked));
    }
}
