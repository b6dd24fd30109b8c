using System.Text;
using Farhold.Exchange.HandOver;
using Farhold.Exchange.Message;
using Farhold.Exchange.Qr;

namespace Farhold.App.Tests.HandOver;

public class HandOverScreensTests : ScreenTest
{
    [Fact]
    public async Task Every_form_is_shown_and_copied_as_it_stands()
    {
        var id = await OpenWithTourniquetAsync();
        var screen = Render<ReadAloudScreen>(p => p.Add(s => s.Casualty, id));
        Assert.Equal(
            [
                "A – Age and person",
                "T – Time",
                "M – Mechanism",
                "I – Injuries",
                "S – Signs",
                "T – Treatment",
                "Needs",
                "Our recommendation",
                "Not said here",
            ],
            screen.FindAll("article h2").Select(h => h.TextContent)
        );
        screen.FindAll("input[type=radio]")[2].Change(true);
        Assert.Equal(
            ["S – Situation", "B – Background", "A – Assessment", "R – Recommendation"],
            screen.FindAll("article h2").Select(h => h.TextContent)
        );
        Button(screen, "Copy the text").Click();
        Assert.Equal(Forms.Of(FormKind.Sbar, CareFacts.Of(Desk.Record!, Desk.Rules, Desk.Now), Clock.Zone).Text(), Phone.Copied);
        Assert.Contains("left leg: tourniquet tight", Phone.Copied, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_short_message_is_shown_shared_and_can_be_read_back()
    {
        var id = await OpenWithTourniquetAsync();
        var screen = Render<ShortMessageScreen>(p => p.Add(s => s.Casualty, id));
        var text = screen.Find("pre").TextContent;
        Assert.Contains("TQ LL ON 0200", text, StringComparison.Ordinal);
        Assert.IsType<Read<ReceivedMessage>.Usable>(MessageReader.Read(text, "screen"));
        Button(screen, "Share the text").Click();
        Assert.Equal(text, HandOver.Shared);
        screen.Find("input[type=checkbox]").Change(true);
        Assert.All(screen.FindAll("pre"), p => Assert.InRange(p.TextContent.Length, 1, 160));
    }

    [Fact]
    public async Task A_short_message_opens_a_casualty_once_it_was_looked_at()
    {
        await OpenWithTourniquetAsync();
        var sent = ShortMessage.Of(CareFacts.Of(Desk.Record!, Desk.Rules, Desk.Now)).Text;
        var screen = Render<TakeMessageScreen>(p => p.Add(s => s.Casualty, null));
        screen.Find("textarea").Input($"{sent}\n\nhello there");
        await Button(screen, "Read them").ClickAsync(new());
        Assert.Contains("Line 3, from character 1", screen.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Equal(sent, screen.Find("pre").TextContent);
        Button(screen, "Another casualty: keep them apart").Click();
        Assert.Contains("A casualty new to this phone: Tor", screen.Markup, StringComparison.Ordinal);
        Assert.Single(Session.Casualties);
        await Button(screen, "Take these entries in").ClickAsync(new());
        screen.WaitForAssertion(() => Assert.Contains("To Tor", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(2, Session.Casualties.Length);
    }

    [Fact]
    public async Task A_message_taken_into_a_casualty_adds_its_entries_and_no_message_adds_none()
    {
        var id = await OpenWithTourniquetAsync();
        var before = Session.Lines.Length;
        var screen = Render<TakeMessageScreen>(p => p.Add(s => s.Casualty, id));
        await Button(screen, "Read them").ClickAsync(new());
        Assert.Contains("There is no message yet.", screen.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        screen.Find("textarea").Input(ShortMessage.Of(CareFacts.Of(Desk.Record!, Desk.Rules, Desk.Now)).Text);
        await Button(screen, "Read them").ClickAsync(new());
        Assert.DoesNotContain(screen.FindAll("button"), b => b.TextContent == "Take these entries in"); // whose they are comes first
        Button(screen, "Same person: Tor").Click();
        await Button(screen, "Take these entries in").ClickAsync(new());
        screen.WaitForAssertion(() => Assert.Contains("To Tor", screen.Markup, StringComparison.Ordinal));
        Assert.True(Session.Lines.Length > before + 1);
        Assert.Contains(
            Desk.Record!.Readings[0].Of(Kind.Note),
            n => n.As<Payload.NoteWritten>().Text.StartsWith("Short message as it came", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task Signs_are_saved_as_a_table()
    {
        await OpenWithTourniquetAsync();
        await Logbook.WriteAsync(Session.Open!, new Payload.SignsTaken { HeartRate = 92 });
        var choices = Render<HandOverChoices>(p => p.Add(c => c.Open, Session.Open!));
        Button(choices, "Save the signs as a table (CSV)").Click();
        var (name, mediaType, text) = Assert.Single(Alerts.Saved);
        Assert.Equal(("text/csv", true), (mediaType, name.EndsWith("-signs.csv", StringComparison.Ordinal)));
        Assert.Contains(",Ane,92,", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Codes_turn_by_themselves_and_are_those_of_the_record()
    {
        var id = await OpenWithTourniquetAsync();
        var screen = Render<ShowCodesScreen>(p => p.Add(s => s.Casualty, id));
        Assert.True(Alerts.Awake);
        var sender = new FrameSender(Pack.Of(Desk.Record!));
        for (var n = 0; n < 4; n++)
        {
            var frame = n;
            screen.WaitForAssertion(() =>
                Assert.Equal(
                    (frame.ToString(System.Globalization.CultureInfo.InvariantCulture), QrPicture.Of(sender[frame].Text()).Path()),
                    (screen.Find("svg").GetAttribute("data-frame"), screen.Find("path").GetAttribute("d"))
                )
            );
            Time.Advance(TimeSpan.FromMilliseconds(200));
        }
    }

    [Fact]
    public async Task Codes_of_another_phone_are_merged_only_after_their_sum_was_shown()
    {
        var id = await OpenWithTourniquetAsync();
        var screen = Render<TakeCodesScreen>(p => p.Add(s => s.Casualty, id));
        Button(screen, "Use the camera").Click();
        Assert.True(Session.FormOpen);
        HandOver.See("https://example.invalid");
        screen.WaitForAssertion(() => Assert.Contains("That is no code of a record.", screen.Markup, StringComparison.Ordinal));
        Show(
            Record(
                """{"id":"m2rt-1","happened":"2031-05-04T01:00:00Z","recorded":"2031-05-04T01:00:00Z","by":"Tor","kind":"note","text":"by the stream"}""",
                OwnFirstLine
            )
        );
        screen.WaitForAssertion(() => Assert.Contains("1 new entry, 1 already here.", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(2, Session.Lines.Length);
        Assert.False(HandOver.Scanning);
        await Button(screen, "Take these entries in").ClickAsync(new());
        screen.WaitForAssertion(() => Assert.Contains("To Tor", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(3, Session.Lines.Length);
        Assert.False(Session.FormOpen);
    }

    [Fact]
    public async Task The_same_record_again_has_nothing_to_merge()
    {
        var id = await OpenWithTourniquetAsync();
        var screen = Render<TakeCodesScreen>(p => p.Add(s => s.Casualty, id));
        Button(screen, "Use the camera").Click();
        Show(Desk.Record!);
        screen.WaitForAssertion(() => Assert.Contains("Nothing is new.", screen.Markup, StringComparison.Ordinal));
        Assert.DoesNotContain(screen.FindAll("button"), b => b.TextContent == "Take these entries in");
    }

    [Fact]
    public async Task A_practice_record_is_not_merged_into_a_real_one()
    {
        var id = await OpenWithTourniquetAsync();
        var screen = Render<TakeCodesScreen>(p => p.Add(s => s.Casualty, id));
        Button(screen, "Use the camera").Click();
        Show(
            Record(
                """{"id":"m2rt-1","happened":"2031-05-04T01:00:00Z","recorded":"2031-05-04T01:00:00Z","by":"Tor","kind":"note","practice":true,"text":"drill"}"""
            )
        );
        screen.WaitForAssertion(() => Assert.Contains("That is practice, this casualty is real.", screen.Markup, StringComparison.Ordinal));
        Assert.DoesNotContain(screen.FindAll("button"), b => b.TextContent == "Take these entries in");
    }

    [Fact]
    public async Task A_record_new_to_the_phone_opens_a_casualty()
    {
        await Session.StartAsync();
        var screen = Render<TakeCodesScreen>(p => p.Add(s => s.Casualty, null));
        Button(screen, "Use the camera").Click();
        Show(
            Record(
                """{"id":"m2rt-1","happened":"2031-05-04T01:00:00Z","recorded":"2031-05-04T01:00:00Z","by":"Tor","kind":"casualty.opened","alias":"Runa"}"""
            )
        );
        screen.WaitForAssertion(() => Assert.Contains("A casualty new to this phone: Runa", screen.Markup, StringComparison.Ordinal));
        Assert.Empty(Session.Casualties);
        await Button(screen, "Take these entries in").ClickAsync(new());
        Assert.Equal("Runa", Assert.Single(Session.Casualties).Alias);
    }

    [Fact]
    public async Task A_camera_that_is_refused_is_told_of()
    {
        var id = await OpenWithTourniquetAsync();
        HandOver.Refusal = "Permission denied";
        var screen = Render<TakeCodesScreen>(p => p.Add(s => s.Casualty, id));
        Button(screen, "Use the camera").Click();
        screen.WaitForAssertion(() =>
            Assert.Contains("The camera can't be used: Permission denied", screen.Markup, StringComparison.Ordinal)
        );
        Assert.False(Session.FormOpen);
    }

    private string OwnFirstLine => Session.Lines[0].Text;

    private async Task<string> OpenWithTourniquetAsync()
    {
        var id = await OpenCasualtyAsync();
        await Logbook.WriteAsync(Session.Open!, new Payload.TourniquetTightened("t1", Limb.LeftLeg));
        return id;
    }

    private void Show(CareRecord record)
    {
        var sender = new FrameSender(Pack.Of(record));
        for (var n = 0; n < sender.Blocks; n++)
            HandOver.See(sender[n].Text());
    }

    private static CareRecord Record(params string[] lines) =>
        CareRecord.Of(((Read<RecordFile>.Usable)RecordReader.Read(Encoding.UTF8.GetBytes(string.Join('\n', lines)), "codes")).Value);
}
