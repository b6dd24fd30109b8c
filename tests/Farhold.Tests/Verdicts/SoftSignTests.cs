namespace Farhold.Tests.Verdicts;

/// <summary>
/// A soft sign of shock: alone it asks for a second look, two together forbid, and one that stays forbids until it is lifted (design).
/// </summary>
public class SoftSignTests
{
    private static readonly Payload.SignsTaken Pale = Some.GoodSigns with { Pale = true };

    private static readonly Case Stays = Case.Well.Looks(("00:17", Pale), ("00:05", Pale));

    [Fact]
    public void Alone_it_is_checked_first_with_what_to_do()
    {
        var lone = Case.Well.Looks(("00:05", Pale)).Limb;
        Assert.Equal(Verdict.CheckFirst, lone.Verdict);
        Assert.StartsWith("Lie flat, keep warm, calm, ease the pain; look again in ten minutes", lone.Act.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("00:14:59", Verdict.CheckFirst)]
    [InlineData("00:15:00", Verdict.LeaveOn)]
    public void Still_there_ten_minutes_later_it_forbids(string first, Verdict verdict)
    {
        var limb = Case.Well.Looks((first, Pale), ("00:05", Pale)).Limb;
        Assert.Equal(verdict, limb.Verdict);
        Assert.NotEmpty(limb.Act.Changes);
    }

    [Fact]
    public void Another_soft_sign_at_the_second_look_is_no_better() =>
        Assert.Equal(Verdict.LeaveOn, Case.Well.Looks(("00:17", Some.GoodSigns with { Dizzy = true }), ("00:05", Pale)).Verdict);

    [Fact]
    public void Two_together_forbid_and_no_advice_lifts_them()
    {
        var two = Case.Well.Looks(("00:17", Pale), ("00:05", Pale with { Clammy = true }));
        Assert.Equal(Verdict.LeaveOn, two.Verdict);
        Assert.Equal(Verdict.LeaveOn, two.Advised("00:04").Verdict);
        Assert.Equal(Verdict.LeaveOn, two.Unreached().Verdict);
    }

    [Fact]
    public void A_childs_rates_and_index_count_as_one()
    {
        var crying = Some.GoodSigns with { HeartRate = 125, RespiratoryRate = 27, Systolic = 110 };
        Assert.Equal(Verdict.CheckFirst, Case.Well.Aged(8).Looks(("00:05", crying)).Verdict);
        Assert.Equal(Verdict.LeaveOn, Case.Well.Aged(8).Looks(("00:05", crying with { Pale = true })).Verdict);
    }

    [Fact]
    public void A_later_clear_look_lifts_it_and_two_are_needed_then()
    {
        Assert.Equal(Verdict.CheckFirst, Case.Well.Looks(("00:30", Pale), ("00:17", Pale), ("00:05", Some.GoodSigns)).Verdict);
        Assert.Equal(
            Verdict.Attempt,
            Case.Well.Looks(("00:40", Pale), ("00:30", Pale), ("00:17", Some.GoodSigns), ("00:05", Some.GoodSigns)).Verdict
        );
    }

    [Theory]
    [InlineData("00:04", Verdict.Attempt)]
    [InlineData("00:16", Verdict.Attempt)] // it stood then
    [InlineData("00:18", Verdict.LeaveOn)] // before anybody saw it
    public void Advice_lifts_it_if_it_stood_before(string advised, Verdict verdict)
    {
        Assert.Equal(verdict, Stays.Advised(advised).Verdict);
        if (verdict == Verdict.Attempt)
            Assert.Contains(
                Stays.Advised(advised).Limb.Act.Cautions,
                c => c.Contains("Advice given since allows", StringComparison.Ordinal)
            );
    }

    [Fact]
    public void Advice_on_one_sign_does_not_lift_another() =>
        Assert.NotEqual(
            Verdict.Attempt,
            Case.Well.Looks(("00:30", Pale), ("00:17", Pale), ("00:05", Some.GoodSigns with { Dizzy = true })).Advised("00:16").Verdict
        );

    [Fact]
    public void Where_nobody_can_be_reached_it_gives_way_after_three_looks_over_half_an_hour_with_a_caution()
    {
        var steady = Three("00:20").Unreached().Limb;
        Assert.Equal(Verdict.Attempt, steady.Verdict);
        Assert.Contains(steady.Act.Cautions, c => c.Contains("Nobody can be reached", StringComparison.Ordinal));
        Assert.Equal(Verdict.LeaveOn, Three("00:20").Verdict);
        Assert.Equal(Verdict.LeaveOn, Case.Well.Looks(("00:35", Pale), ("00:05", Pale)).Unreached().Verdict);
    }

    [Theory]
    [InlineData("00:35:00", Verdict.Attempt)]
    [InlineData("00:34:59", Verdict.LeaveOn)]
    public void The_three_looks_take_thirty_minutes(string first, Verdict verdict) =>
        Assert.Equal(verdict, Case.Well.Looks((first, Pale), ("00:20", Pale), ("00:05", Pale)).Unreached().Verdict);

    [Theory]
    [InlineData(93, 124, Verdict.Attempt)] // 84 at the looks before
    [InlineData(94, 124, Verdict.LeaveOn)]
    [InlineData(70, 124, Verdict.Attempt)]
    [InlineData(84, 115, Verdict.Attempt)] // 124 before
    [InlineData(84, 114, Verdict.LeaveOn)]
    [InlineData(84, 140, Verdict.Attempt)]
    public void With_the_heart_rate_up_by_ten_or_the_pressure_down_by_ten_it_stays(double rate, double systolic, Verdict verdict) =>
        Assert.Equal(
            verdict,
            Case.Well.Looks(("00:35", Pale), ("00:20", Pale), ("00:05", Pale with { HeartRate = rate, Systolic = systolic }))
                .Unreached()
                .Verdict
        );

    [Fact]
    public void With_another_sign_in_one_of_the_looks_it_stays()
    {
        Assert.Equal(
            Verdict.LeaveOn,
            Case.Well.Looks(("00:35", Pale), ("00:20", Pale with { Dizzy = true }), ("00:05", Pale)).Unreached().Verdict
        );
        Assert.Equal(
            Verdict.LeaveOn,
            Case.Well.Looks(("00:35", Pale), ("00:20", Pale with { HeartRate = 125 }), ("00:05", Pale)).Unreached().Verdict
        );
        Assert.Equal(Verdict.LeaveOn, Three("00:20").And("00:12", new Payload.SignsTaken { Dizzy = true }).Unreached().Verdict);
    }

    private static Case Three(string middle) => Case.Well.Looks(("00:35", Pale), (middle, Pale), ("00:05", Pale));
}
