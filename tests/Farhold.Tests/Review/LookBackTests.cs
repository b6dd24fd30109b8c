using System.Text.Json;
using CsCheck;

namespace Farhold.Tests.Review;

public class LookBackTests
{
    private static readonly Rulebook Shipped = ShippedRules.Book;
    private static readonly LookBack Demonstrated = LookBack.Of(Demo.Record(), Shipped, Demo.Record().LastRecorded!.Value);

    [Fact]
    public void The_demo_shows_what_was_done_against_the_verdict_of_the_time()
    {
        var begun = Demonstrated.Points.Where(p => p.Kind == ReviewKind.AttemptBegun).ToArray();
        Assert.Equal([Verdict.Attempt, Verdict.Attempt], begun.Select(p => p.WrittenVerdict));
        Assert.Equal([2, 2], begun.Select(p => p.Lasting!.Value.Max.TotalMinutes)); // allowed from 03:22, and again from 04:11
        Assert.Equal(["bled", "held"], Demonstrated.Points.Where(p => p.Kind == ReviewKind.AttemptEnded).Select(p => p.Text));
        var first = Demonstrated.Points.Single(p => p.Kind == ReviewKind.FirstFullLook);
        Assert.Equal((Some.At("02:49"), Duration.FromMinutes(59)), (first.When.Latest, first.SinceTightened!.Value.Max));
    }

    [Fact]
    public void An_attempt_begun_while_the_verdict_was_leave_it_on_does_not_fit_and_the_reason_is_named()
    {
        var begun = Of(
                "10:40",
                ("10:00", Aged),
                ("10:00", Story.Wound("w1", Limb.LeftLeg)),
                ("10:00", Story.Tight("t1", wound: "w1")),
                ("10:20", Some.GoodSigns with { HeartRate = 130 }),
                ("10:30", Story.Begun()),
                ("10:35", Story.Ended(AttemptOutcome.Bled))
            )
            .Single(p => p.Kind == ReviewKind.AttemptBegun);
        Assert.Equal((Truth.NotMet, Verdict.LeaveOn), (begun.Fits, begun.WrittenVerdict));
        Assert.Contains("shock.heart-rate", begun.Reasons);
        Assert.Null(begun.Lasting);
    }

    /// <summary>Nobody can go by what was entered only later; with hindsight it counts.</summary>
    [Fact]
    public void What_was_written_down_later_counts_only_with_hindsight()
    {
        Entry At(int number, string when, string written, Payload what) =>
            EntryWriting.Write(new("a", number), Happened.At(Some.At(when)), Some.At(written), "Ane", what);
        var record = new CareRecord(
            [
                At(1, "10:00", "10:00", Aged),
                At(2, "10:00", "10:00", Story.Tight("t1")),
                At(3, "10:30", "10:30", Story.Begun()),
                At(4, "10:20", "12:00", Some.GoodSigns with { HeartRate = 130 }),
            ],
            []
        );
        var points = LookBack.Of(record, Shipped, Some.At("12:00")).Points;
        var begun = points.Single(p => p.Kind == ReviewKind.AttemptBegun);
        Assert.Equal((Verdict.CheckFirst, Verdict.LeaveOn, Truth.Unknown), (begun.WrittenVerdict, begun.Verdict, begun.Fits));
        var late = points.Single(p => p.Kind == ReviewKind.WrittenLate);
        Assert.Equal([new EntryId("a", 4)], late.Entries);
        Assert.Equal(Duration.FromMinutes(100), late.Lasting!.Value.Max);
    }

    /// <summary>Task <c>signs</c>: every hour at least (JTS crush guideline).</summary>
    [Fact]
    public void A_time_without_signs_longer_than_the_protocol_asks_is_shown_and_the_last_of_it_too()
    {
        var gaps = Of("14:00", ("10:00", Story.Tight("t1")), ("10:50", Some.GoodSigns), ("12:10", Some.GoodSigns))
            .Where(p => p.Kind == ReviewKind.NoSigns)
            .Select(p => (p.When.Earliest, p.Lasting!.Value.Min.TotalMinutes, p.Fits));
        Assert.Equal([(Some.At("10:50"), 80, Truth.NotMet), (Some.At("12:10"), 110, Truth.NotMet)], gaps);
        Assert.Equal(
            Truth.Met,
            Of("11:10", ("10:00", Story.Tight("t1")), ("10:50", Some.GoodSigns)).Single(p => p.Kind == ReviewKind.NoSigns).Fits
        );
    }

    [Fact]
    public void Bleeding_seen_is_measured_to_the_next_tightening_of_its_limb()
    {
        (string, Payload)[] told =
        [
            ("10:00", Story.Wound("w1", Limb.LeftLeg)),
            ("10:00", Story.Tight("t1", wound: "w1")),
            ("10:30", new Payload.BleedingChecked("w1", Bleeding.Active)),
            ("10:32", new Payload.BleedingChecked("w1", Bleeding.Active)),
        ];
        var seen = Of("11:00", [.. told, ("10:35", Story.Tight("t2", wound: "w1"))]).Single(p => p.Kind == ReviewKind.BleedingSeen);
        Assert.Equal((Some.At("10:30"), 5, Truth.NotMet), (seen.When.Latest, seen.Lasting!.Value.Max.TotalMinutes, seen.Fits));
        var never = Of("11:00", told).Single(p => p.Kind == ReviewKind.BleedingSeen);
        Assert.Equal((null, Truth.Unknown), (never.Lasting, never.Fits)); // silence is no proof
    }

    [Fact]
    public void Advice_is_measured_from_the_question_to_its_answer()
    {
        var points = Of(
            "11:00",
            ("10:00", new Payload.ContactTried(false)),
            ("10:05", new Payload.QuestionAsked("duty doctor", "may we?")),
            ("10:25", new Payload.AdviceReceived("duty doctor", "yes", ["attempt"], ReadBack: true))
        );
        var asked = points.Single(p => p.Kind == ReviewKind.QuestionAsked);
        Assert.Equal((20, Truth.Met), (asked.Lasting!.Value.Max.TotalMinutes, asked.Fits));
        Assert.Equal(25, points.Single(p => p.Kind == ReviewKind.AdviceTried).Lasting!.Value.Max.TotalMinutes);
    }

    [Fact]
    public void The_forecast_of_help_is_held_against_the_hand_over()
    {
        var help = Of(
                "16:00",
                ("10:00", new Payload.HelpExpected(Some.At("14:00"), Some.At("13:00"), Some.At("15:00"), Care: HelpCare.Surgery)),
                ("10:10", new Payload.HelpExpected(Some.At("11:00"), Some.At("10:30"), Some.At("12:00"), Care: HelpCare.Clinic)),
                ("14:40", new Payload.CareEnded(CareEnd.HandedOver))
            )
            .Where(p => p.Kind == ReviewKind.HelpForecast)
            .Select(p => (p.Off!.Value.TotalMinutes, p.Fits, p.Score!.Value));
        // By hand: 100, 40 and −20 min off lose 10, 20 and 2 min; 250, 220 and 160 lose 25, 110 and 144.
        Assert.Equal([(40, Truth.Met, Score(10 + 20 + 2)), (220, Truth.NotMet, Score(25 + 110 + 144))], help);

        static Duration Score(double sum) => Duration.FromMinutes(sum / 3);
    }

    /// <summary>A proper score: to say the true tenths does best on average (Gneiting and Raftery 2007).</summary>
    [Fact]
    public void Over_even_arrivals_the_true_tenths_score_best_and_wider_or_narrower_ones_worse()
    {
        double Mean(int early, int late) =>
            Enumerable
                .Range(0, 200)
                .Average(i =>
                    QuantileScore
                        .Of(
                            new(
                                Some.At("10:00") + Duration.FromMinutes(100),
                                Some.At("10:00") + Duration.FromMinutes(early),
                                Some.At("10:00") + Duration.FromMinutes(late)
                            ),
                            Some.At("10:00") + Duration.FromMinutes(i + 0.5),
                            0.9
                        )
                        .TotalMinutes
                );
        foreach (var (early, late) in ((int, int)[])[(0, 200), (50, 150), (20, 150), (50, 180)])
            Assert.True(Mean(20, 180) < Mean(early, late));
    }

    [Fact]
    public void What_came_of_it_weeks_later_is_told_and_stretches_no_gap()
    {
        Entry At(int number, string when, Payload what) =>
            EntryWriting.Write(new("a", number), Happened.At(Some.Time(when)), Some.Time(when), "Ane", what);
        var record = new CareRecord(
            [
                At(1, "2031-05-04T10:00:00Z", Story.Tight("t1")),
                At(2, "2031-05-04T10:30:00Z", new Payload.CareEnded(CareEnd.HandedOver)),
                At(3, "2031-06-20T10:00:00Z", new Payload.OutcomeReported("letter", Survived: true, HospitalDays: 12)),
            ],
            []
        );
        var points = LookBack.Of(record, Shipped, record.LastRecorded!.Value).Points;
        Assert.Contains("12 days in hospital", points.Single(p => p.Kind == ReviewKind.Outcome).Text, StringComparison.Ordinal);
        Assert.DoesNotContain(points, p => p.Kind is ReviewKind.NoSigns or ReviewKind.NoLimbCheck);
        Assert.DoesNotContain(points, p => p.Kind == ReviewKind.VerdictChanged && p.When.Latest > Some.At("10:30"));
    }

    /// <summary>No point is called right where the verdict of the time did not allow it; no words of praise or blame.</summary>
    [Fact]
    public void Of_any_record_every_point_is_told_in_order_and_nothing_is_called_right_against_the_verdict() =>
        Gens.StrangeRecord.Sample(
            r =>
            {
                var look = LookBack.Of(r.Record, Shipped, r.Now);
                Assert.Equal(look.Points.Select(p => p.When.Earliest).Order(), look.Points.Select(p => p.When.Earliest));
                Assert.All(look.Points, p => Assert.True(p.When.Latest <= r.Now, p.ToString()));
                foreach (var point in look.Points)
                {
                    var said = ReviewWords.Of(point);
                    Assert.NotEqual("", said);
                    if (point.Text is null)
                        Assert.DoesNotMatch("(?i)mistake|wrong|fail|should|too late|blame|good|well done", said);
                    if (point is { Kind: ReviewKind.AttemptBegun, Fits: Truth.Met })
                        Assert.Equal(Verdict.Attempt, point.WrittenVerdict);
                }

                Assert.All(look.Points, p => Assert.Single(ReviewWords.Parts, x => x.Kinds.Contains(p.Kind)));
                using var json = JsonDocument.Parse(ReviewJson.Write(look));
                Assert.Equal(look.Points.Length, json.RootElement.GetProperty("points").GetArrayLength());
            },
            iter: Gens.Cases(150),
            print: r => r.ToString()
        );

    private static Payload Aged => new Payload.CasualtyOpened("Runa", AgeYears: 34, Medicines: []);

    private static System.Collections.Immutable.ImmutableArray<ReviewPoint> Of(string until, params (string When, Payload What)[] told) =>
        LookBack
            .Of(
                new(
                    told.Select(
                        (s, i) => EntryWriting.Write(new("a", i + 1), Story.When(s.When), Story.When(s.When).Latest, "Ane", s.What)
                    ),
                    []
                ),
                Shipped,
                Some.At(until)
            )
            .Points;
}
