using System.Text;
using Farhold.Exchange.Document;
using Microsoft.AspNetCore.Components.Forms;

namespace Farhold.App.Tests.HandOver;

/// <summary>What comes in from elsewhere: whose it is, what it unsays, by which clock, and taking it back.</summary>
public class TakingInTests : CareTest
{
    private const string Girl =
        """{"id":"m2rt-1","happened":"2031-05-04T01:00:00Z","recorded":"2031-05-04T01:00:00Z","by":"Bo","kind":"casualty.opened","alias":"Siri","sex":"female","ageYears":6,"massKg":20,"allergies":["penicillin"]}""";

    [Fact]
    public async Task A_child_allergic_to_penicillin_is_not_mixed_with_a_man_until_somebody_says_so()
    {
        await TightAsync();
        var offer = await OfferAsync(Girl);
        Assert.Equal(["Siri", "Tor"], offer.FindAll(".person strong").Select(p => p.TextContent));
        Assert.Contains("Female", offer.FindAll(".person")[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("6 years", offer.FindAll(".person")[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("Tourniquet on the left leg since", offer.FindAll(".person")[1].TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(offer.FindAll("button"), b => b.TextContent == "Take these entries in");

        Button(offer, "Another casualty: keep them apart").Click();
        Assert.Contains("A casualty new to this phone: Siri", offer.Markup, StringComparison.Ordinal);
        await Button(offer, "Take these entries in").ClickAsync(new());
        Assert.Equal(["Siri", "Tor"], Session.Casualties.Select(c => c.Alias).Order(StringComparer.Ordinal));
        Assert.Empty(Desk.Record!.Doubts);
    }

    [Fact]
    public async Task Said_to_be_the_same_they_are_a_doubt_and_doses_are_for_the_child_until_it_is_taken_back()
    {
        await TightAsync();
        var before = Session.Lines;
        var offer = await OfferAsync(Girl);
        Button(offer, "Same person: Tor").Click();
        await Button(offer, "Take these entries in").ClickAsync(new());
        Assert.StartsWith("openings-", Assert.Single(Desk.Record!.Doubts).Id, StringComparison.Ordinal);
        Assert.Equal((6.0, 20.0), (CasualtyProfile.At(State, Now)!.AgeYears, CasualtyProfile.At(State, Now)!.MassKg));

        await Button(offer, "Take this back out").ClickAsync(new());
        offer.WaitForAssertion(() => Assert.Contains("Taken back out.", offer.Markup, StringComparison.Ordinal));
        Assert.Equal(before.Select(l => l.Text), Session.Lines.Select(l => l.Text));
        Assert.Empty(Desk.Record!.Doubts);
    }

    [Fact]
    public async Task A_record_that_shares_a_line_or_an_identity_is_the_same_casualtys()
    {
        await TightAsync();
        var opened = Session.Lines[0].Text;
        Assert.Equal(Casualty, (await PlanAsync(opened, Note(1))).Into?.Id);
        var identity = ((Payload.CasualtyOpened)Desk.Record!.Entries.First(e => e.Payload is Payload.CasualtyOpened).Payload).Casualty!;
        Assert.Equal(26, identity.Length);
        Assert.Equal(
            Casualty,
            (await PlanAsync(Girl.Replace("\"alias\"", $"\"casualty\":\"{identity}\",\"alias\"", StringComparison.Ordinal))).Into?.Id
        );
        Assert.Null(
            (
                await PlanAsync(
                    opened,
                    Girl.Replace("\"alias\"", "\"casualty\":\"zzzzzzzzzzzzzzzzzzzzzzzzzz\",\"alias\"", StringComparison.Ordinal)
                )
            ).Into
        ); // a line of ours, and somebody else
        Assert.Null((await PlanAsync(Note(1))).Into);
    }

    /// <summary>
    /// Onto an empty phone a file is taken in at once; while that lasts no button may be there to take it in a second time.
    /// </summary>
    [Fact]
    public async Task While_entries_are_taken_in_there_is_nothing_to_tap()
    {
        Preferences.Carer = "Ane";
        await Session.StartAsync();
        var slow = new TaskCompletionSource();
        Store.Merging = slow.Task;
        var panel = Render<ImportRecord>();
        Choose(panel, Girl);
        panel.WaitForAssertion(() => Assert.Contains(Texts.TakingIn, panel.Markup, StringComparison.Ordinal));
        Assert.Empty(panel.FindAll("button"));
        slow.SetResult();
        panel.WaitForAssertion(() => Assert.Equal("Siri", Assert.Single(Session.Casualties).Alias));
        panel.WaitForAssertion(() => Assert.DoesNotContain(Texts.TakingIn, panel.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_FHIR_document_is_taken_in_by_the_lines_it_carries()
    {
        await TightAsync();
        var line = Session.Lines[0].Text;
        var panel = Render<ImportRecord>();
        Choose(panel, Document(("Provenance", line), ("Provenance", Note(1))));
        panel.WaitForAssertion(() => Assert.Contains("Take these entries in", panel.Markup, StringComparison.Ordinal));
        await Button(panel, "Take these entries in").ClickAsync(new());
        Assert.Contains(Note(1), Session.Lines.Select(l => l.Text));
    }

    [Theory]
    [InlineData("Observation", "a line of the record is to be carried here")]
    [InlineData("", "Nothing was imported")]
    public async Task A_FHIR_document_that_carries_no_line_in_its_place_is_refused(string resource, string why)
    {
        await TightAsync();
        var before = Session.Lines.Length;
        var panel = Render<ImportRecord>();
        Choose(panel, resource.Length > 0 ? Document((resource, Note(1))) : Document());
        panel.WaitForAssertion(() => Assert.Contains(why, panel.Find("[role=status]").TextContent, StringComparison.Ordinal));
        Assert.Equal(before, Session.Lines.Length);
    }

    [Fact]
    public async Task Of_two_casualties_the_one_that_is_known_by_its_first_line_is_taken()
    {
        await TightAsync();
        var first = Casualty;
        var line = Session.Lines[0].Text;
        await Session.NewCasualtyAsync("Bo", practice: false);
        Assert.Equal(first, (await PlanAsync(line, Note(1))).Into?.Id);
    }

    [Fact]
    public async Task What_it_withdraws_and_corrects_is_listed_before_anything_is_added_and_waits_for_a_person()
    {
        await TightAsync();
        await LogAsync(1, new Payload.SignsTaken { Mental = Mental.Confused });
        var signs = Desk.Record!.Entries.Last().Id;
        var leaveOn = Desk.Picture!.Limbs.Single().Verdict;
        Assert.Equal(Verdict.LeaveOn, leaveOn);
        var offer = await OfferAsync(
            Session.Lines[0].Text,
            $$"""{"id":"m2rt-1","happened":"2031-05-04T01:59:00Z","recorded":"2031-05-04T01:59:00Z","by":"Bo","kind":"entry.withdrawn","target":"{{signs}}","reason":"mistyped"}""",
            """{"id":"m2rt-2","happened":"2031-05-04T01:59:00Z","recorded":"2031-05-04T01:59:00Z","by":"Bo","kind":"entry.amended","target":"7k3f-2","replace":{"note":"small"}}"""
        );
        Assert.Contains("It withdraws 1 and corrects 1 of the entries on this phone:", offer.Markup, StringComparison.Ordinal);
        Assert.Contains("Withdraws: Signs", offer.Markup, StringComparison.Ordinal);
        Assert.Contains("(Bo: mistyped)", offer.Markup, StringComparison.Ordinal);
        await Button(offer, "Take these entries in").ClickAsync(new());
        Assert.Equal(Verdict.LeaveOn, Desk.Picture!.Limbs.Single().Verdict);

        var task = Desk.Picture!.Due.Single(d => d.Task == "unsaid-m2rt-1");
        var step = new NextStep(Desk.Record!, Desk.Picture!, Texts).OfDue(task);
        Assert.Equal("Accept this change", step.Text);
        await Logbook.WriteAsync(Session.Open!, step.Logs!, Happened.At(Now));
        Assert.Equal(Verdict.CheckFirst, Desk.Picture!.Limbs.Single().Verdict);
        Assert.Equal("unsaid-m2rt-2", Assert.Single(Desk.Record!.Unaccepted).Task);
    }

    [Fact]
    public async Task A_note_of_a_phone_whose_clock_is_26_hours_ahead_does_not_move_this_phones_now()
    {
        await TightAsync();
        Store.Now = () => Now;
        var plan = await PlanAsync(Session.Lines[0].Text, Note(1, "2031-05-05T04:00:00Z"));
        await Session.MergeAsync(plan.Into!, plan.Coming.File.Lines, "a file");
        Assert.Equal(Now, Desk.Now);
        var task = Desk.Picture!.Due.Single(d => d.Task == "clock-m2rt");
        var steps = new NextStep(Desk.Record!, Desk.Picture!, Texts);
        Assert.Equal("This phone's clock is right", steps.OfDue(task).Text);
        Assert.Equal("The other clock is right: I set this one", steps.OrElse(task)!.Text);
        await Logbook.WriteAsync(Session.Open!, steps.OfDue(task).Logs!, Happened.At(Now));
        Assert.DoesNotContain(Desk.Picture!.Due, d => d.Task == "clock-m2rt");
    }

    [Fact]
    public async Task A_line_that_says_this_phone_wrote_it_and_is_not_its_own_unsays_nothing()
    {
        await TightAsync();
        await LogAsync(1, new Payload.SignsTaken { Mental = Mental.Confused });
        var signs = Desk.Record!.Entries.Last().Id;
        var plan = await PlanAsync(
            Session.Lines[0].Text,
            $$"""{"id":"7k3f-{{signs.Number + 1}}","happened":"2031-05-04T01:59:00Z","recorded":"2031-05-04T01:59:00Z","by":"Ane","kind":"entry.withdrawn","target":"{{signs}}","reason":"mistyped"}"""
        );
        await Session.MergeAsync(plan.Into!, plan.Coming.File.Lines, "a file");
        Assert.Equal(Verdict.LeaveOn, Desk.Picture!.Limbs.Single().Verdict);
        Assert.Contains("it says that this phone wrote it", Assert.Single(Desk.Record!.Doubts).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_taken_in_can_be_taken_back_later_and_ones_own_stays()
    {
        await TightAsync();
        var plan = await PlanAsync(Session.Lines[0].Text, Note(1), Note(2));
        await Session.MergeAsync(plan.Into!, plan.Coming.File.Lines, "from-bo.jsonl");
        await LogAsync(0, new Payload.NoteWritten("mine"));
        var list = Render<TakenIn>(p => p.Add(t => t.Of, Session.Open!));
        Assert.Contains("From from-bo.jsonl, imported", list.Markup, StringComparison.Ordinal);
        Button(list, "Take this back out").Click();
        await Button(list, "Yes, take all 2 back out").ClickAsync(new());
        Assert.DoesNotContain(Session.Lines, l => l.Text.Contains("m2rt", StringComparison.Ordinal));
        Assert.Contains(Session.Lines, l => l.Text.Contains("mine", StringComparison.Ordinal));
        list.WaitForAssertion(() => Assert.Empty(list.FindAll("h2")));
    }

    [Fact]
    public async Task A_casualty_is_erased_only_after_a_copy_was_checked_or_knowingly_refused()
    {
        await TightAsync();
        var screen = Render<EraseScreen>(p => p.Add(s => s.Casualty, Casualty));
        Assert.Contains("Care has not been ended", screen.Markup, StringComparison.Ordinal);
        Assert.True(Button(screen, "Erase Tor for good").HasAttribute("disabled"));
        screen.FindAll("input[type=radio]")[1].Change(true);
        await Button(screen, "Erase Tor for good").ClickAsync(new());
        Assert.Empty(Session.Casualties);
        Assert.Null(Session.Open);
        Assert.Empty(await Store.ReadAsync(Casualty));
        Assert.DoesNotContain("Tor", Phone.Get("glance"), StringComparison.Ordinal);
    }

    private static string Note(int number, string at = "2031-05-04T01:00:00Z") =>
        $$"""{"id":"m2rt-{{number}}","happened":"{{at}}","recorded":"{{at}}","by":"Bo","kind":"note","text":"calm"}""";

    private Task<MergePlan> PlanAsync(params string[] lines) =>
        MergePlan.OfAsync(IncomingFile.Split(Encoding.UTF8.GetBytes(string.Join('\n', lines))), "a file", null, Session, Store, Phone);

    private async Task<IRenderedComponent<MergeOffer>> OfferAsync(params string[] lines)
    {
        var plan = await PlanAsync(lines);
        return Render<MergeOffer>(p => p.Add(o => o.Plan, plan).Add(o => o.Again, "again"));
    }

    private static void Choose(IRenderedComponent<ImportRecord> panel, string content) =>
        panel.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText(content, "document.json"));

    private static string Document(params (string Resource, string Line)[] lines) =>
        """{"resourceType":"Bundle","type":"document","entry":[{"resource":{"resourceType":"Composition"}}"""
        + string.Concat(
            lines.Select(l =>
                ",{\"resource\":{\"resourceType\":\""
                + l.Resource
                + "\",\"extension\":[{\"url\":\""
                + CarriedLine.Extension
                + "\",\"valueBase64Binary\":\""
                + Convert.ToBase64String(Encoding.UTF8.GetBytes(l.Line))
                + "\"}]}}"
            )
        )
        + "]}";
}
