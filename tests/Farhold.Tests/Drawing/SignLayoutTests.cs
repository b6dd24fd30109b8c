using System.Collections.Immutable;
using System.Xml.Linq;
using CsCheck;

namespace Farhold.Tests.Drawing;

public class SignLayoutTests
{
    private static readonly Payload Grown = new Payload.CasualtyOpened("Ane", AgeYears: 34, Sex: Sex.Male);
    private static readonly PlainChartWords Words = new();

    private static Payload.SignsTaken Pulse(double rate) => new() { HeartRate = rate };

    private static SignPicture Picture(string now, params (string, Payload)[] said) =>
        SignPicture.At(Story.Of(said), ShippedRules.Book, Some.At(now), DateTimeZone.Utc)!;

    private static SignPanel Panel(SignLayout layout, int at = 0) => layout.Panels[at];

    /// <summary>
    /// From 10:00 to 14:00 on 44 to 244 px: 50 px an hour. Pulse of 34 years: usual 51 to 90, limits 40 and 120 (RCP 2017; common
    /// practice), so the scale is 40 to 120 with 12 % on either side, 30.4 to 129.6 on 44 to 96 px, 52 px for 99.2.
    /// </summary>
    [Fact]
    public void A_reading_lies_where_its_time_and_value_are()
    {
        var layout = new SignLayout(Picture("14:00", ("09:00", Grown), ("10:00", Pulse(60)), ("12:00", Pulse(100))), Words, 328);
        var panel = Panel(layout);
        Assert.Equal((44.0, 96.0), (panel.Top, panel.Bottom));
        Assert.Equal([44, 144], panel.Dots.Select(d => d.X));
        Assert.Equal(96 - (52 * (60 - 30.4) / 99.2), panel.Dots[0].Y, 1e-6);
        Assert.Equal(96 - (52 * (100 - 30.4) / 99.2), panel.Dots[1].Y, 1e-6);
        Assert.Equal(96 - (52 * (90 - 30.4) / 99.2), panel.Usual!.Value.From, 1e-6);
        Assert.Equal(96 - (52 * (51 - 30.4) / 99.2), panel.Usual.Value.To, 1e-6);
        Assert.Equal((44, 96), (panel.Past[0].From, panel.Past[1].To));
        Assert.Equal(96 - (52 * (120 - 30.4) / 99.2), panel.Past[0].To, 1e-6);
        Assert.Equal(96 - (52 * (40 - 30.4) / 99.2), panel.Past[1].From, 1e-6);
    }

    /// <summary>Signs are due every hour at rest (protocol task <c>signs</c>), so two hours are no gap and a minute more is.</summary>
    [Theory]
    [InlineData("12:00", 1)]
    [InlineData("12:01", 0)]
    [InlineData("11:30-12:00", 1)]
    [InlineData("11:30-12:01", 0)]
    public void The_line_breaks_where_the_gap_may_exceed_twice_the_due_interval(string second, int lines)
    {
        var picture = Picture("14:00", ("10:00", Pulse(60)), (second, Pulse(70)));
        Assert.Equal(Duration.FromHours(2), picture.Gap);
        Assert.Equal(lines, Panel(new(picture, Words, 328)).Lines.Length);
    }

    [Fact]
    public void A_reading_between_two_times_is_a_bar_and_no_dot()
    {
        var panel = Panel(new(Picture("14:00", ("10:00", Pulse(60)), ("11:00-12:00", Pulse(70))), Words, 328));
        Assert.Single(panel.Dots);
        Assert.Equal((94.0, 144.0), (panel.Bars[0].From, panel.Bars[0].To));
        Assert.Equal(119, panel.Lines[0][1].X);
    }

    [Fact]
    public void What_was_left_out_of_a_look_is_hollow_at_the_foot_and_no_reading()
    {
        var picture = Picture(
            "14:00",
            ("10:00", new Payload.SignsTaken { HeartRate = 60, Systolic = 120 }),
            ("11:00", new Payload.SignsTaken { HeartRate = 62, Mental = Mental.Alert }),
            // Both within one look of five minutes.
            ("12:00", new Payload.SignsTaken { HeartRate = 62, Mental = Mental.Alert }),
            ("12:04", new Payload.SignsTaken { Systolic = 118 }),
            // One sign alone is no look at the others.
            ("13:00", Pulse(64))
        );
        var layout = new SignLayout(picture, Words, 328);
        Assert.Empty(Panel(layout).Hollow);
        Assert.Equal([94], Panel(layout, 1).Hollow);
        Assert.Equal(2, Panel(layout, 1).Dots.Length);
    }

    [Fact]
    public void A_marked_change_has_its_ring_and_words()
    {
        var layout = new SignLayout(Picture("14:00", ("12:30", Pulse(82)), ("14:00", Pulse(100))), Words, 328);
        Assert.Equal(Panel(layout).Dots[^1], Panel(layout).Ring);
        Assert.Contains(layout.Texts, t => t is { Text: "▲ 22 %", Look: "mark" });
        Assert.Contains(layout.Texts, t => t is { Text: "100", Size: 24 });
    }

    [Fact]
    public void A_last_value_too_old_to_decide_by_has_its_time()
    {
        var layout = new SignLayout(Picture("14:00", ("13:44", Pulse(82))), Words, 328);
        Assert.Contains(layout.Texts, t => t.Text == "13:44");
        Assert.DoesNotContain(new SignLayout(Picture("14:00", ("13:46", Pulse(82))), Words, 328).Texts, t => t.Text == "13:46");
    }

    [Fact]
    public void Without_an_age_there_is_no_band_and_no_limit()
    {
        var panel = Panel(new(Picture("14:00", ("13:00", Pulse(150)), ("14:00", Pulse(50))), Words, 328));
        Assert.Equal((null, 0, 0), (panel.Usual, panel.Past.Length, panel.LimitLines.Length));
    }

    [Fact]
    public void The_limb_lies_on_the_same_axis()
    {
        var layout = new SignLayout(
            Picture("14:00", ("10:00", Story.Tight("t1")), ("12:00", Story.Slack("t1")), ("13:00", Pulse(80))),
            Words,
            328
        );
        var lane = Assert.Single(layout.Limbs);
        Assert.Equal([new ChartSpan(44, 144)], lane.Sure);
        Assert.Equal(new ChartSpan(144, 244), lane.Loose);
        Assert.Equal(194, Assert.Single(Panel(layout).Dots).X);
    }

    [Fact]
    public void A_changed_mind_is_a_word_where_it_changed()
    {
        static Payload Mind(Mental mental) => new Payload.SignsTaken { Mental = mental };
        var layout = new SignLayout(
            Picture("14:00", ("10:00", Mind(Mental.Alert)), ("12:00", Mind(Mental.Voice)), ("13:00", Mind(Mental.Voice))),
            Words,
            328
        );
        Assert.Equal((1, 2), (layout.Mind!.Clear.Length, layout.Mind.Altered.Length));
        Assert.Equal(144, layout.Texts.Single(t => t is { Text: "voice", Look: "plain" }).X, 1e-6);
        Assert.Contains(layout.Texts, t => t is { Text: "voice", Look: "strong", Right: 328 });
    }

    /// <summary>RCP 2017: made for 16 years and over, not for pregnancy.</summary>
    [Theory]
    [InlineData(34.0, false, true)]
    [InlineData(15.9, false, false)]
    [InlineData(34.0, true, false)]
    [InlineData(null, false, false)]
    public void The_score_is_drawn_only_for_whom_it_is_made(double? age, bool pregnant, bool drawn)
    {
        var opened = new Payload.CasualtyOpened("Ane", Sex.Female, age, Pregnant: pregnant);
        Assert.Equal(drawn, !Picture("14:00", ("09:00", opened), ("13:00", Some.GoodSigns)).Scores.IsEmpty);
    }

    [Fact]
    public void A_score_with_open_parts_is_a_range()
    {
        // Some.GoodSigns score 0 (RCP 2017, chart 1); oxygen saturation and temperature (0 to 3 each) and oxygen (0 to 2) are open.
        var picture = Picture(
            "14:00",
            ("09:00", Grown),
            ("12:00", Some.GoodSigns),
            ("13:00", Some.GoodSigns with { Spo2 = 98, TemperatureC = 37, OnOxygen = false })
        );
        Assert.Equal([new ScoreBounds(0, 8), ScoreBounds.Exactly(0)], picture.Scores.Select(s => s.Value));
        var panel = new SignLayout(picture, Words, 328).Panels[^1];
        Assert.Equal((1, 2), (panel.Ranges.Length, panel.Dots.Length));
        Assert.Equal(panel.Dots[0].Y, panel.Ranges[0].Y.From);
        Assert.Equal(panel.Bottom, panel.Ranges[0].Y.To);
    }

    private static readonly Gen<SignPicture> Pictures = Gen.Select(
            Gen.Select(Gen.Int[0, 6000], Gen.Frequency((4, Gen.Const(0)), (1, Gen.Int[1, 90])), Taken()).Array[1, 50],
            Gen.OneOf<double?>(null, 0.5, 4, 9, 14, 34, 70),
            Gen.OneOf("UTC", "Europe/Berlin", "Asia/Kathmandu"),
            Gen.Int[0, 300],
            Gens.Statement.Array[0, 6],
            (looks, age, zone, later, others) =>
            {
                var start = Some.Time("2031-03-27T09:07:00Z");
                var entries = looks
                    .Select((l, i) => Line(i, start + Duration.FromMinutes(l.Item1), l.Item2, l.Item3))
                    .Concat(others.Select((o, i) => Line(100 + i, start + Duration.FromMinutes(i * 37), 0, o)))
                    .Append(Line(200, start, 0, new Payload.CasualtyOpened("Ane", AgeYears: age)));
                var now = start + Duration.FromMinutes(looks.Max(l => l.Item1 + l.Item2) + later);
                return SignPicture.At(State.Of(entries), ShippedRules.Book, now, DateTimeZoneProviders.Tzdb[zone])!;
            }
        )
        .Where(p => p is not null);

    private static Dated Line(int number, Instant from, int width, Payload what) =>
        new(new("a", number + 1), new(from, from + Duration.FromMinutes(width)), from, "Ane", what);

    private static Gen<Payload> Taken()
    {
        Gen<double?> Maybe(FieldRange range) =>
            Gen.Frequency((1, Gen.Const((double?)null)), (2, Gens.Within(range).Select(n => (double?)n)));
        return Gen.Select(
            Maybe(FieldRange.HeartRate),
            Maybe(FieldRange.RespiratoryRate),
            Maybe(FieldRange.Systolic),
            Maybe(FieldRange.Spo2),
            Maybe(FieldRange.TemperatureC),
            Maybe(FieldRange.Pain),
            Gens.Any<Mental>(),
            (rate, breaths, systolic, oxygen, warmth, pain, mind) =>
                (Payload)
                    new Payload.SignsTaken
                    {
                        HeartRate = rate,
                        RespiratoryRate = breaths,
                        Systolic = systolic,
                        Spo2 = oxygen,
                        TemperatureC = warmth,
                        Pain = pain,
                        Mental = mind == Mental.Confused ? null : mind,
                    }
        );
    }

    [Fact]
    public void Every_mark_lies_in_its_panel_and_time_runs_to_the_right() =>
        Gen.Select(Pictures, Gen.OneOf(328.0, 656.0))
            .Sample(
                (picture, width) =>
                {
                    var layout = new SignLayout(picture, Words, width);
                    foreach (var panel in layout.Panels)
                    {
                        void Inside(double x, double y)
                        {
                            Assert.InRange(x, SignLayout.Left, layout.Right);
                            Assert.InRange(y, panel.Top, panel.Bottom);
                        }

                        Assert.All(panel.Dots, d => Inside(d.X, d.Y));
                        Assert.All(panel.Bars, b => Inside(b.From, b.Y));
                        Assert.All(panel.Bars, b => Assert.InRange(b.To, b.From, layout.Right));
                        Assert.All(panel.Ranges, r => Inside(r.X, r.Y.From));
                        Assert.All(panel.Ranges, r => Inside(r.X, r.Y.To));
                        Assert.All(panel.Past.Concat(panel.Usual is { } u ? [u] : []), s => Assert.True(s.From <= s.To + 1e-9));
                        Assert.All(panel.Lines, l => Assert.True(l.Length > 1));
                        Assert.All(panel.Lines.SelectMany(l => l.Zip(l.Skip(1))), p => Assert.True(p.First.X <= p.Second.X));
                        var tops = layout.Panels.Select(p => p.Top).ToArray();
                        Assert.All(tops.Zip(layout.Panels.Skip(1)), p => Assert.True(p.First < p.Second.Top));
                    }

                    Assert.All(layout.Times.Zip(layout.Times.Skip(1)), t => Assert.True(layout.X(t.First.At) < layout.X(t.Second.At)));
                },
                iter: Gens.Cases(300),
                threads: 1
            );

    /// <summary>In words of Farhold's own, and in a language 40 % longer.</summary>
    [Fact]
    public void No_label_touches_another_or_leaves_the_picture_and_none_is_too_small() =>
        Gen.Select(Pictures, Gen.OneOf(328.0, 656.0), Gen.OneOf(1, 1.4))
            .Sample(
                (picture, width, longer) =>
                {
                    var layout = new SignLayout(picture, new PlainChartWords(longer), width);
                    Assert.All(layout.Texts, t => Assert.True(t.Size >= 14, $"{t}"));
                    Assert.All(layout.Texts, t => Assert.True(t.Left >= 0 && t.Top >= 0 && t.Bottom <= layout.Height, $"{t}"));
                    if (longer == 1)
                        Assert.All(layout.Texts, t => Assert.True(t.Right <= width, $"{t} {t.Right}"));
                    for (var i = 0; i < layout.Texts.Count; i++)
                    for (var j = 0; j < i; j++)
                        Assert.False(Touch(layout.Texts[i], layout.Texts[j]), $"{layout.Texts[i]} and {layout.Texts[j]} at {width}");
                },
                iter: Gens.Cases(300),
                threads: 1
            );

    private static bool Touch(ChartText a, ChartText b) => a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;

    [Fact]
    public void The_drawing_is_sound_markup_that_says_what_it_is() =>
        Pictures.Sample(
            picture =>
            {
                var svg = XDocument.Parse(SignDrawing.Draw(picture, Words, 328, "Signs <so far> & \"more\"")).Root!;
                Assert.Equal("img", svg.Attribute("role")!.Value);
                Assert.Equal("ltr", svg.Attribute("dir")!.Value);
                Assert.Equal("Signs <so far> & \"more\"", svg.Attribute("aria-label")!.Value);
                Assert.DoesNotContain("NaN", svg.ToString(), StringComparison.Ordinal);
            },
            iter: Gens.Cases(100),
            threads: 1
        );
}
