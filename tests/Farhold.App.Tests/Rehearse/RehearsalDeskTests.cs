using System.Reflection;
using System.Text.Json;
using Farhold.App.Rehearse;
using Farhold.Rehearsal.Runs;
using Farhold.Rehearsal.Scenarios;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Rehearse;

public class RehearsalDeskTests : RehearsalTest
{
    [Fact]
    public async Task A_run_opens_its_record_and_every_line_says_practice()
    {
        await BeginAsync("held-at-once", 12);
        Assert.True(Session.Open!.Practice);
        Assert.All(Session.Lines, l => Assert.True(JsonDocument.Parse(l.Text).RootElement.GetProperty("practice").GetBoolean()));
        Assert.Contains(Desk.Picture!.Limbs, l => l.Limb == Limb.LeftLeg);
        Assert.Equal(1, Rehearsal.Rate);
        Assert.Equal(ShippedScenarios.All[0].Start, Session.Now);
    }

    [Fact]
    public async Task A_look_takes_its_time_and_only_then_shows_anything()
    {
        await BeginAsync("held-at-once", 12);
        var before = Rehearsal.Noticed.Count();
        Assert.Null(Rehearsal.Do("pulse"));
        Pass(5);
        Assert.Equal((1, before), (Rehearsal.Looking, Rehearsal.Noticed.Count()));
        Pass(60);
        Assert.Equal((0, before + 1), (Rehearsal.Looking, Rehearsal.Noticed.Count()));
        Assert.Contains("pulse", Rehearsal.Noticed.First().Text, StringComparison.OrdinalIgnoreCase);
        Assert.Null(Rehearsal.Pressing);
    }

    [Fact]
    public async Task Letting_out_a_bare_wound_bleeds_in_view_and_takes_the_pace_back_to_one()
    {
        await BeginAsync("bled-at-slackening", 24);
        await Logbook.LogAsync(new Payload.TourniquetSlackened("t1"));
        Rehearsal.Run(15);
        for (var i = 0; i < 60 && Rehearsal.Pressing is null; i++)
            Pass(1);
        Assert.Contains("bleeds", Rehearsal.Pressing!.Text, StringComparison.Ordinal);
        Assert.Equal(1, Rehearsal.Rate);
        Rehearsal.See();
        Assert.Null(Rehearsal.Pressing);
    }

    [Fact]
    public async Task A_page_loaded_anew_makes_the_same_truth_again()
    {
        await BeginAsync("held-at-once", 12);
        Rehearsal.Do("pulse");
        Pass(70);
        await Logbook.LogAsync(new Payload.SignsTaken { HeartRate = 96 });
        Rehearsal.Do("bleeding", "w1");
        Rehearsal.Run(60);
        Pass(20);
        await Logbook.LogAsync(new Payload.WoundPacked("w1", PackingMaterial.HaemostaticGauze));
        Pass(10);
        Rehearsal.Run(0);
        var truth = ((RunningRehearsal)Rehearsal.Running!).Session.Truth.Select(l => l.Json()).ToArray();

        using var again = new RehearsalDesk(Practice, Session, Store, Desk, Ticker, Phone, Scene);
        await again.StartAsync(() => Task.CompletedTask);
        Assert.Equal(truth, ((RunningRehearsal)again.Running!).Session.Truth.Select(l => l.Json()));
        Assert.Equal(Rehearsal.Noticed, again.Noticed);
    }

    [Fact]
    public async Task Out_of_view_time_stands()
    {
        await BeginAsync("held-at-once", 12);
        Pass(3);
        Phone.Hide();
        var at = Session.Now;
        Pass(600);
        Assert.Equal((0d, at), (Rehearsal.Rate, Session.Now));
    }

    [Fact]
    public async Task To_the_next_thing_goes_as_far_as_that_and_not_further()
    {
        await BeginAsync("held-at-once", 12);
        await Rehearsal.ToNextAsync(() => Task.CompletedTask);
        Assert.InRange(
            Session.Now,
            ShippedScenarios.All[0].Start + Duration.FromSeconds(1),
            ShippedScenarios.All[0].Start + Duration.FromMinutes(10) + Duration.FromSeconds(1)
        );
        Assert.Equal(1, Rehearsal.Rate);
    }

    [Fact]
    public async Task Whether_something_real_was_packed_is_asked_once_after_packing()
    {
        await BeginAsync("held-at-once", 12);
        Assert.False(Rehearsal.AsksPacked);
        await Logbook.LogAsync(new Payload.WoundPacked("w1", PackingMaterial.HaemostaticGauze));
        Assert.True(Rehearsal.AsksPacked);
        Rehearsal.SayPacked(PackedFor.Real);
        Assert.False(Rehearsal.AsksPacked);
        Assert.Equal(PackedFor.Real, KeptRun.Read(Practice.Run)!.Packed);
    }

    /// <summary>Let out bare, and nobody looked: the debrief says so, the learner first, and the next practice has a date.</summary>
    [Fact]
    public async Task The_debrief_comes_after_the_learner_and_ends_the_rehearsal()
    {
        await BeginAsync("bled-at-slackening", 24);
        await Logbook.LogAsync(new Payload.TourniquetSlackened("t1"));
        Pass(120);
        var screen = Render<DebriefScreen>();
        Assert.Empty(screen.FindAll("li"));
        screen.Find("textarea").Input("I let it out");
        await Button(screen, Texts.DebriefShow).ClickAsync(new());
        screen.WaitForAssertion(() => Assert.NotEmpty(screen.FindAll("li")));
        Assert.Contains("I let it out", screen.Markup, StringComparison.Ordinal);
        Assert.Equal(0, Rehearsal.Rate);
        await Button(screen, Texts.DebriefAgain).ClickAsync(new());
        Assert.Equal("rehearse/bled-at-slackening", Practice.EndedTo);
        var past = Assert.Single(new PastRehearsals(Practice).All);
        Assert.Equal(("bled-at-slackening", PackedFor.Unsaid, false), (past.Scenario, past.Packed, past.Mastered));
    }

    /// <summary>Nothing was done, so there is nothing to remark; that is no mastery.</summary>
    [Fact]
    public async Task A_rehearsal_that_is_ended_early_counts_as_none_mastered()
    {
        await BeginAsync("bled-at-slackening", 24);
        Pass(120);
        var debrief = Rehearsal.Debrief()!;
        Assert.False(debrief.IsClean);
        Assert.Contains("carry one through to its end", string.Join(' ', debrief.Parts[^1].Lines), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_debrief_shows_the_course_and_the_delays_each_as_a_picture_and_as_a_table()
    {
        await BeginAsync("bled-at-slackening", 24);
        await Logbook.LogAsync(new Payload.TourniquetSlackened("t1"));
        Pass(120);
        var screen = Render<DebriefScreen>();
        await Button(screen, Texts.DebriefShow).ClickAsync(new());
        screen.WaitForAssertion(() => Assert.Equal(3, screen.FindAll(".debrief-picture").Count));
        foreach (var picture in screen.FindAll(".debrief-picture"))
        {
            var label = picture.QuerySelector("svg[role=img]")!.GetAttribute("aria-label")!;
            Assert.NotEmpty(picture.QuerySelectorAll("figcaption li"));
            var cells = picture.QuerySelectorAll("details tbody th, details tbody td").Select(c => c.TextContent).ToArray();
            Assert.NotEmpty(cells);
            Assert.All(cells, c => Assert.Contains(c, label, StringComparison.Ordinal));
        }

        Assert.Single(screen.FindAll("#debrief-course-hatch"));
        Assert.NotEmpty(screen.FindAll("circle.c-hollow")); // it was let out
    }

    [Fact]
    public async Task A_what_if_counts_casualties_alike_and_stands_with_its_denominator()
    {
        await BeginAsync("bled-at-slackening", 24);
        await Logbook.LogAsync(new Payload.TourniquetSlackened("t1"));
        Pass(120);
        Rehearsal.Alike = 2;
        var screen = Render<DebriefScreen>();
        await Button(screen, Texts.DebriefShow).ClickAsync(new());
        screen.WaitForAssertion(() => Assert.Equal(5, screen.FindAll(".what-if .tiles button").Count));
        await screen.FindAll(".what-if .tiles button")[1].ClickAsync(new());
        screen.WaitForAssertion(() => Assert.Equal("2", screen.Find(".what-if progress").GetAttribute("value")));
        Assert.Contains(Texts.DebriefAlike(2, 2), screen.Find(".what-if").TextContent, StringComparison.Ordinal);
        Assert.Contains(screen.FindAll(".what-if li"), l => l.TextContent.EndsWith(" of 2 so", StringComparison.Ordinal));
        var counts = screen.FindAll(".what-if table td").Select(c => c.TextContent).ToArray();
        Assert.Equal(4, counts.Length);
        Assert.Equal(2, counts.Sum(c => int.Parse(c.Split(" of ")[0], System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Contains(counts[0], screen.Find(".what-if svg[role=img]").GetAttribute("aria-label")!, StringComparison.Ordinal);
        Assert.Contains(" of 2", screen.Find(".what-if table td").TextContent, StringComparison.Ordinal);
        Assert.Equal(5, screen.FindAll(".what-if .tiles button").Count); // another can be asked
    }

    /// <summary>What is counted so far stays.</summary>
    [Fact]
    public async Task A_what_if_can_be_stopped_between_two_pieces()
    {
        await BeginAsync("bled-at-slackening", 24);
        Pass(120);
        var (breaths, shown) = (0, new List<WhatIfShown>());
        await Assert.ThrowsAsync<OperationCanceledException>(() =>
            Rehearsal.WhatIfAsync(
                "never-let-out",
                shown.Add,
                () => ++breaths < 50 ? Task.CompletedTask : Task.FromException(new OperationCanceledException())
            )
        );
        Assert.Equal(50, breaths);
        Assert.DoesNotContain(shown, s => s.Done == s.Count);
    }

    [Fact]
    public void Every_look_has_a_name_and_every_name_a_look()
    {
        var named = LookNames.Groups(Texts).SelectMany(g => g.Looks).ToArray();
        Assert.All(named, n => Assert.NotEmpty(LookNames.Say(n, Texts)));
        Assert.Equal(
            Enum.GetValues<Farhold.Physiology.Rehearsal.LookKind>().Select(k => Wire.Word(k)).Order(StringComparer.Ordinal),
            named.Except(Deeds.All).Order(StringComparer.Ordinal)
        );
    }

    /// <summary>
    /// The router looks at every component when the app starts: one with a field of the model's would ask for an assembly that is not
    /// on the phone yet.
    /// </summary>
    [Fact]
    public void No_component_holds_anything_of_the_model()
    {
        var later = new[] { typeof(Scenario).Assembly, typeof(Farhold.Physiology.Rehearsal.LookKind).Assembly };
        var fields =
            from type in typeof(Root).Assembly.GetExportedTypes()
            where typeof(IComponent).IsAssignableFrom(type)
            from field in type.GetFields(BindingFlags.Instance | BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public)
            from part in (Type[])[field.FieldType, .. field.FieldType.GenericTypeArguments]
            where later.Contains(part.Assembly)
            select $"{type.Name}.{field.Name}";
        Assert.Empty(fields);
    }
}
