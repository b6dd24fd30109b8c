using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Farhold.Tests.Text;
using Farhold.Tests.WayOut.Reach;
using Farhold.Xml;
using static Farhold.Tests.Text.Spoken;

namespace Farhold.Tests.WayOut;

/// <summary>What the way out says in another language than English, and what stays as it is.</summary>
public class WayOutWordsTests
{
    private const string Marked = "xw";

    /// <summary>Places as someone may type them who gets them wrong, nearly each in another way.</summary>
    private static readonly string[] Mistyped =
    [
        "",
        "46,5",
        "46 N",
        "46",
        "46 N 8",
        "46 N 8 S",
        "8 W 9 E",
        "99 8",
        "99 N 8 E",
        "8 199",
        "46 O",
        "46 x",
        "1 2 3 4, 5",
        "46 -3, 8",
        "46.5 3, 8",
        "46 61, 8",
        "46 1 61, 8",
        "46 ° °, 8",
        "N, 8 E",
        "-46 N, 8 E",
        "61ABC 12",
        "32I 12",
        "32VOO 12",
        "32VKO 12",
        "32VKA 12",
        "IAB 12",
        "AIB 12",
        "AJI 12",
        "32VKN",
        "32VKN 123",
        "32VKN 123456 123456",
        "32V 1",
    ];

    private static readonly Plan Ground = SomePlan.Of(
        """
        {"mode":"walk","distanceKm":4,"ascentM":100,"rule":"runner","terrain":"sand"},
        {"mode":"carry","distanceKm":3,"ascentM":50,"bearers":6,"ropePitches":1,"snowCm":10,
         "joining":{"bearers":4,"low":30,"likely":60,"high":120},"halts":{"every":40,"for":5}},
        {"mode":"vehicle","distanceKm":9},{"mode":"vehicle","distanceKm":9,"speedKmh":20},
        {"first":[{"probability":0.6,"legs":[{"mode":"wait","low":20,"likely":40,"high":90}]},
                  {"legs":[{"mode":"carry","distanceKm":4,"wheel":true}]}]},
        {"branches":[{"probability":0.5,"legs":[{"mode":"boat","low":20,"likely":40,"high":90}]},{"legs":[]}]},
        {"all":[{"legs":[{"mode":"wait","low":5,"likely":6,"high":7}]},{"legs":[{"mode":"wait","low":1,"likely":5,"high":9}]}]},
        {"mode":"aircraft","distanceKm":40,"hold":{"probability":0.3,"low":30,"likely":60,"high":200}}
        """
    );

    private static readonly Plan Waiting = SomePlan.Of(
        """
        {"waitFor":{"probability":0.7,"legs":[{"mode":"wait","low":30,"likely":60,"high":200}]},"until":90,
         "onward":{"legs":[{"mode":"aircraft","low":20,"likely":30,"high":40}]},
         "otherwise":{"legs":[{"mode":"carry","distanceKm":5}]}}
        """
    );

    private static readonly Plan Trying = SomePlan.Of(
        """
        {"try":{"probability":0.6,"legs":[{"mode":"walk","distanceKm":3}]},"closes":{"low":30,"likely":60,"high":120},
         "onward":{"legs":[{"mode":"wait","low":10,"likely":20,"high":30}]}}
        """
    );

    static WayOutWordsTests()
    {
        var all = JsonNode.Parse(TextFiles.Together("en", TextFiles.Marked))!.AsObject();
        var priors = PriorTable.Figures.Select(f => f.What).Concat(PriorTable.Times.Select(t => t.What));
        all["priors"] = new JsonObject(priors.Select(p => KeyValuePair.Create(p, (JsonNode?)TextFiles.Marked(p))));
        Translation.Add(Marked, JsonSerializer.SerializeToUtf8Bytes(all));
    }

    [Fact]
    public void Forecasts_take_the_way_of_a_translation() =>
        Translated(() => [.. Forecast(Ground), .. Forecast(Waiting), .. Forecast(Trying), .. Decided(), .. Beside()]);

    [Fact]
    public void A_carry_and_what_it_goes_by_take_the_way_of_a_translation()
    {
        var legs = Ground.All.OfType<Travel>().Where(leg => leg.Mode == TravelMode.Carry).ToArray();
        Assert.Equal(2, legs.Length);
        Translated(() =>
            [
                .. legs.SelectMany(leg =>
                    ((bool[])[true, false]).SelectMany(s => CarryWords.Of(CarryStops.Of(leg, Case.Well.Judgement, s)))
                ),
                .. LitterEndurance.All.Select(e => e.Means),
                .. Surfaces.All.Select(s => s.Name),
                .. PaceRules.All.Select(r => r.Caution),
            ]
        );
    }

    [Fact]
    public void Reach_takes_the_way_of_a_translation()
    {
        foreach (var json in (string[])[SomeRoute.Walk(Ends), """{"track":"a.gpx","mode":"carry","snowCm":5,""" + Ends + "}"])
            Translated(() =>
            {
                var profile = SomeRoute.Profile(json);
                return
                [
                    ReachWords.Hours(profile),
                    .. ReachWords.Sentences(profile),
                    ReachWords.Table(profile).First(),
                    .. profile.Rests.Select(r => r.What),
                    .. profile.Ways.Select(w => w.Name),
                ];
            });
    }

    [Fact]
    public void What_is_odd_of_a_track_and_wrong_of_a_place_takes_the_way_of_a_translation()
    {
        var odd = Encoding.UTF8.GetBytes(
            """
            <gpx version="1.0"><trk><trkseg>
            <trkpt lat="61,50" lon="8.10"><ele>abc</ele><time>yesterday</time></trkpt>
            <trkpt lat="61.50" lon="8.10"><ele>99999</ele><time>2031-05-04T02:00:00</time></trkpt>
            <trkpt lat="61.501" lon="8.101"><ele>10</ele><time>2031-05-04T01:00:00Z</time></trkpt>
            <trkpt lat="61.501" lon="8.101"><ele>10</ele><time>2031-05-04T01:00:00Z</time></trkpt>
            </trkseg><trkseg><trkpt lat="61.8" lon="8.9"/><trkpt lat="62.5" lon="8.9"/></trkseg></trk><trk></trk>
            <rte><rtept lat="1" lon="1"/></rte></gpx>
            """
        );
        var reasons = Mistyped.Select(text => CoordinateText.Parse(text)).OfType<Read<GeoPoint>.Refused>().SelectMany(r => r.Refusals);
        Assert.InRange(reasons.Select(r => r.Reason).Distinct().Count(), 24, Mistyped.Length);
        Translated(() =>
            [
                .. Assert.IsType<Read<Track>.Usable>(XmlTracks.Parse(odd, "odd.gpx")).Value.Warnings.Select(w => w.Text),
                .. Mistyped.Select(text => CoordinateText.Parse(text)).OfType<Read<GeoPoint>.Refused>().Select(r => r.Refusals[0].Reason),
            ]
        );
    }

    [Fact]
    public void The_record_names_a_stage_in_English()
    {
        var english = StagesAhead.Of(Ground, State.Empty, Some.At("08:10"))[0];
        var marked = In(Marked, () => StagesAhead.Of(Ground, State.Empty, Some.At("08:10"))[0]);
        Assert.Equal(("walk 4 km", "walk 4 km"), (english.Name, english.Recorded));
        Assert.Equal(("w›alk 4 k›m", "walk 4 km"), (marked.Name, marked.Recorded));
    }

    [Fact]
    public void What_help_is_expected_is_noted_the_same_in_every_language() =>
        Assert.Equal(HelpForecast.Of(Ran(Waiting), 0.9), In(Marked, () => HelpForecast.Of(Ran(Waiting), 0.9)));

    /// <summary>Days stand where German and Spanish have them.</summary>
    [Theory]
    [InlineData("de", "am 4. Mai zwischen 14:00 UTC und 15:30 UTC", "heute, 4. Mai, 14:20 UTC", "5. Mai, 14:20 UTC")]
    [InlineData(
        "es",
        "entre las 14:00 UTC y las 15:30 UTC del 4 de mayo",
        "las 14:20 UTC de hoy, 4 de mayo",
        "las 14:20 UTC del 5 de mayo"
    )]
    public void Times_are_said_as_the_language_says_them(string language, string between, string today, string day)
    {
        Translation.Add("xw" + language, TextFiles.Together(language, text => text));
        var clock = new ArrivalClock(DateTimeZone.Utc, Some.At("08:00"));
        var (at, later) = (Some.At("14:20"), Some.At("15:30"));
        Assert.Equal(
            (between, today, day),
            In("xw" + language, () => (clock.Between(at, later), clock.Exactly(at, at), clock.Exactly(at + Duration.FromDays(1))))
        );
    }

    private static string Ends =>
        $"\"end\":{{\"onward\":{SomeRoute.Just(90)}}},\"back\":{{}},\"exits\":[{{\"at\":{SomeRoute.Place(3)},\"distanceKm\":2}}],"
        + $"\"pickUps\":[{{\"at\":{SomeRoute.Place(5)},\"mode\":\"vehicle\",\"probability\":0.5,\"wait\":{SomeRoute.Just(40)}}}],"
        + $"\"helicopter\":{{\"probability\":0.2,\"wait\":{SomeRoute.Just(50)}}}";

    /// <summary>Every line is made of texts, which are asked for anew in each language: nothing keeps the words it once had.</summary>
    private static void Translated(Func<IEnumerable<string>> lines)
    {
        string[] english = [.. lines()];
        string[] marked = In(Marked, () => lines().ToArray());
        Assert.Equal(english, marked.Select(l => l.Replace(TextFiles.Mark.ToString(), "", StringComparison.Ordinal)));
        Assert.All(marked, l => Assert.True(l.Contains(TextFiles.Mark, StringComparison.Ordinal), l));
        Assert.All(english, l => Assert.False(l.Contains(TextFiles.Mark, StringComparison.Ordinal), l));
    }

    private static IEnumerable<string> Forecast(Plan plan)
    {
        var simulation = Ran(plan);
        var outlook = Outlook.Of(simulation, [new("limit", Some.At("10:00"))]);
        var clock = ArrivalClock.Of(plan);
        return
        [
            .. ArrivalWords.Sentences(outlook),
            .. outlook.Rests.Select(r => r.What),
            .. outlook.Drivers.Select(d => d.What),
            .. simulation.Plan.Places.Select(p => p.Label),
            .. WhatIf
                .Usual.Select(w => (Asked: w, Changed: w.Start(simulation)))
                .Where(w => w.Changed is not null)
                .Select(w => WhatIfAnswer.Of(w.Asked, simulation, w.Changed!.Run(), outlook.Deadlines.Select(d => d.Deadline)))
                .Select(answer => ArrivalWords.Sentence(answer, outlook)),
            DotWords.Sentence(ArrivalDots.Of(simulation), "it", null, clock, plan.Start),
            DotWords.Sentence(ArrivalDots.Of(simulation), "it", Some.At("10:00"), clock, plan.Start),
            .. ArrivalShape.Of(simulation) is { } shape ? [shape.Source, shape.Names.Middle] : (string[])[],
        ];
    }

    private static ImmutableArray<string> Decided() =>
        DecisionWords.Of(DecisionTime.Of(Ran(Waiting), Array.Empty<Deadline>())!, ArrivalClock.Of(Waiting));

    private static IEnumerable<string> Beside()
    {
        var ran = SideBySide.Aligned([Ground, Waiting]).Select(plan => Ran(plan)).ToArray();
        return DecisionWords.Of(SideBySide.Of(ran, [new("limit", Some.At("10:00"))]), ArrivalClock.Of(Ground));
    }

    private static Simulation Ran(Plan plan) =>
        new Simulation(CompiledPlan.Of(plan, SomePlan.Nights), new Rng(1), SamplingLimits.Exactly(400)).Run();
}
