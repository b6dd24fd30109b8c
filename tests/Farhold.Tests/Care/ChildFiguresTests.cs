using System.Text;

namespace Farhold.Tests.Care;

/// <summary>Drink and urine by mass where an adult's figures do not fit.</summary>
/// <remarks>
/// Water by 4-2-1 (Holliday and Segar 1957, from memory); urine of a child 1 mL/kg/h, infants up to 2 (seen second-hand).
/// </remarks>
public class ChildFiguresTests
{
    [Theory]
    [InlineData(null, null, false)] // unknown: as an adult
    [InlineData(34.0, 68.0, false)]
    [InlineData(34.0, 38.0, false)] // light, but grown up
    [InlineData(11.9, null, true)]
    [InlineData(11.0, 45.0, true)]
    [InlineData(12.0, null, false)]
    [InlineData(12.0, 40.0, false)]
    [InlineData(14.0, 39.0, true)]
    [InlineData(null, 39.9, true)]
    [InlineData(null, 40.0, false)]
    public void Figures_go_by_mass_for_the_young_and_the_light(double? age, double? mass, bool fit) =>
        Assert.Equal(fit, ChildFigures.Fit(new Payload.CasualtyOpened("Eir", AgeYears: age, MassKg: mass)));

    [Theory]
    [InlineData(3, 20)] // 12 mL/h (derived), 24 in two hours, to the nearest ten
    [InlineData(10, 80)] // 40 mL/h
    [InlineData(20, 120)] // 60 mL/h
    [InlineData(25, 130)] // 65 mL/h
    [InlineData(30, 140)] // 70 mL/h
    public void A_drink_of_two_hours_is_the_need_of_two_hours(double mass, double millilitres) =>
        Assert.Equal(millilitres, ChildFigures.DrinkMl(mass, Duration.FromHours(2)));

    [Fact]
    public void A_child_is_offered_its_share_and_measured_by_its_mass()
    {
        var child = Of(7, 25);
        Assert.Equal(("Offer a drink in small sips: about 130 ml.", "A child's need for water goes by mass."), Words(child, "drink"));
        Assert.Equal("Aim at 25 ml an hour.", Words(child, "urine").Reason);
        Assert.Equal("Aim at 6 to 11 ml an hour.", Words(Of(0.3, 5.5), "urine").Reason); // 5.5 to 11, upwards
        // from 30 kg on 0.5 to 1 mL/kg/h (JTS nursing guideline)
        Assert.Equal("Aim at 18 to 35 ml an hour.", Words(Of(11, 35), "urine").Reason);
    }

    [Fact]
    public void A_child_whose_mass_nobody_entered_is_told_by_the_kilogram()
    {
        var child = Of(7, null);
        Assert.Equal("Offer a drink in small sips: 80 ml for 10 kg, 120 ml for 20 kg; enter the mass.", Words(child, "drink").Text);
        Assert.Equal("Aim at 1 ml an hour for each kg.", Words(child, "urine").Reason);
    }

    [Fact]
    public void An_adult_and_one_of_unknown_age_are_told_as_before()
    {
        foreach (var adult in new[] { Of(34, 68), Of(null, null), Of(34, 38) })
        {
            Assert.Equal("Offer a drink in small sips, about a mug (250 ml).", Words(adult, "drink").Text);
            Assert.Equal("Aim at 0.5 ml an hour for each kg (70 kg: 35 ml).", Words(adult, "urine").Reason);
        }
    }

    [Fact]
    public void After_a_release_a_child_is_held_against_two_millilitres_a_kilogram()
    {
        // As the rule of the warning signs: below 16 years under 2 mL/kg/h (RCEM: twice the ordinary) instead of 100 mL/h.
        var released = Person(Case.Well.TightFor("06:30"), 7, 25).And("01:00", new Payload.TourniquetSlackened("t1"));
        Assert.Contains(
            "or under 50 ml an hour, means",
            released.Judgement.Due.Single(d => d.Task == "release-urine.left-leg").Text,
            StringComparison.Ordinal
        );
        var adult = Person(Case.Well.TightFor("06:30"), 34, 68).And("01:00", new Payload.TourniquetSlackened("t1"));
        Assert.Contains(
            "under 100 ml an hour in an adult",
            adult.Judgement.Due.Single(d => d.Task == "release-urine.left-leg").Text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void No_word_of_the_plan_keeps_a_brace_or_an_adult_s_figure_for_a_child()
    {
        foreach (var mass in new double?[] { null, 12, 18, 25 })
            Assert.All(
                Person(Case.Well.TightFor("06:30"), 5, mass).And("01:00", new Payload.TourniquetSlackened("t1")).Judgement.Plan,
                p =>
                {
                    var words = p.Task.Text + p.Task.Reason;
                    Assert.DoesNotContain("{", words, StringComparison.Ordinal);
                    Assert.DoesNotContain("250 ml", words, StringComparison.Ordinal);
                    Assert.DoesNotContain("adult", words, StringComparison.OrdinalIgnoreCase);
                }
            );
    }

    [Theory]
    [InlineData(null)]
    [InlineData(12.0)]
    [InlineData(35.0)]
    public void On_paper_every_word_is_a_child_s_and_asks_for_nothing_to_be_entered(double? mass) =>
        Assert.All(
            ShippedProtocol.Protocol.Tasks.Select(t => ChildFigures.OnPaper(t, mass)),
            t =>
            {
                Assert.DoesNotMatch("[{}]|250 ml|an adult|enter the mass", t.Text + t.Reason);
            }
        );

    [Fact]
    public void On_paper_a_drink_is_that_of_the_usual_interval() =>
        Assert.Equal(
            "Offer a drink in small sips: about 120 ml.",
            ChildFigures.OnPaper(ShippedProtocol.Protocol.Tasks.Single(t => t.Id == "drink"), 20).Text
        );

    [Fact]
    public void A_body_below_30_kg_whose_age_is_unknown_is_a_child_s() =>
        Assert.Equal(Between.Exactly(20), UrineTarget.Of(null, 20, KidneyLoad.None).MlPerHour);

    [Fact]
    public void Words_with_a_figure_that_is_none_are_refused()
    {
        var text = Encoding.UTF8.GetString(ShippedProtocol.Json.Span).Replace("{drink}", "{drinks}", StringComparison.Ordinal);
        var refused = Assert.IsType<Read<Protocol>.Refused>(ProtocolReader.Read(Encoding.UTF8.GetBytes(text), "x.json"));
        Assert.Contains(refused.Refusals, r => r.Reason == "only {drink}, {urine}, {kidneys} stand for figures");
    }

    private static Case Of(double? age, double? mass) => Person(Case.Well, age, mass);

    private static Case Person(Case of, double? age, double? mass) =>
        of.With("person", new Payload.CasualtyOpened("Eir", AgeYears: age, MassKg: mass), "08:00");

    private static (string Text, string? Reason) Words(Case of, string task)
    {
        var planned = of.Judgement.Due.Single(d => d.Task == task);
        return (planned.Text, planned.Reason);
    }
}
