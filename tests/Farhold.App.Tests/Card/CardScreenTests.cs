using Farhold.Exchange.Card;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Card;

public class CardScreenTests : CareTest
{
    private readonly Printer printer = new();

    public CardScreenTests() => Services.AddSingleton<IPrinter>(printer);

    [Fact]
    public async Task The_page_holds_every_part_of_the_card_and_each_limb_line()
    {
        await ReadyAsync(Well);
        await LogAsync(30, new Payload.DrugGiven("paracetamol <1>", 1, "g", "mouth"));
        await LogAsync(20, new Payload.FluidGiven(Fluid.OralWater, 300, "mouth"));
        await LogAsync(0, new Payload.EntryWithdrawn(State.Of(Kind.FluidGiven)[0].Id, "entered twice"));
        var sheet = CardSheet.Of(Desk.Record!, Desk.Rules, Desk.Now, Clock.Zone, Desk.Rhythm);
        var frame = Show<CardScreen>();
        var text = Text(frame.Find("article.casualty-card"));
        Assert.All(
            [sheet.Title, sheet.AsOf, sheet.Print, CardSheet.Caution, .. sheet.Parts.SelectMany(p => p.Texts)],
            t =>
                Assert.Contains(
                    string.Join(' ', t.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
                    text,
                    StringComparison.Ordinal
                )
        );
        Assert.Contains("WITHDRAWN: Given 300 mL oral water", text, StringComparison.Ordinal);
        Assert.Contains("In all paracetamol <1> 1 g (once)", text, StringComparison.Ordinal);
        Assert.Single(frame.FindAll("article.casualty-card svg.limb-line"));
    }

    [Fact]
    public async Task It_says_what_must_not_be_done_now_and_why()
    {
        await TightAsync(minutesAgo: 300);
        await OpenedAsync(minutesAgo: 301);
        await LogAsync(1, Well with { Mental = Mental.Unresponsive });
        Assert.NotEmpty(Desk.Picture!.Withheld);
        var said = Show<CardScreen>()
            .FindAll(".card-said.card-strong")
            .Select(Text)
            .Where(t => t.StartsWith("NOT NOW", StringComparison.Ordinal))
            .ToArray();
        Assert.Equal(Desk.Picture!.Withheld.Length, said.Length);
        Assert.Contains(
            said,
            t =>
                t.StartsWith("NOT NOW Nothing by mouth: not fully alert", StringComparison.Ordinal)
                && t.Contains("unresponsive", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task It_goes_by_the_same_day_and_night_as_Sustain()
    {
        Phone.Set("night", "13-1");
        await ReadyAsync(Well);
        await LogAsync(1, new Payload.TaskDone("warmth"));
        Desk.JudgeAgain();
        var waits = Desk.Picture!.Due.Where(d => d.Waits).ToArray();
        Assert.NotEmpty(waits);
        var card = Text(Show<CardScreen>().Find("article.casualty-card"));
        Assert.All(
            waits,
            d =>
                Assert.Contains($"{new CardTimes(Clock.Zone).Of(d.At)} {d.Text} (with the change of watch)", card, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_practice_card_says_so_first()
    {
        await OpenCasualtyAsync(practice: true);
        await LogAsync(5, new Payload.NoteWritten("cold"));
        var shown = Render<CardPage>(p => p.Add(c => c.Sheet, CardSheet.Of(Desk.Record!, Desk.Rules, Desk.Now, Clock.Zone, Desk.Rhythm)));
        Assert.Equal(CardSheet.PracticeNotice, Text(shown.Find("article.casualty-card > :first-child")));
    }

    [Fact]
    public async Task The_button_opens_the_dialogue_for_printing()
    {
        await TightAsync();
        Tap(Show<CardScreen>(), "Print the card");
        Assert.Equal(1, printer.Printed);
    }

    [Fact]
    public async Task It_stays_as_of_its_time_until_it_is_made_anew()
    {
        await TightAsync();
        var frame = Show<CardScreen>();
        var before = Text(frame.Find("article.casualty-card"));
        Time.Advance(TimeSpan.FromMinutes(10));
        await LogAsync(0, new Payload.NoteWritten("ten minutes on"));
        Assert.Equal(before, Text(frame.Find("article.casualty-card")));
        Tap(frame, "Update the card");
        Assert.Contains("ten minutes on", Text(frame.Find("article.casualty-card")), StringComparison.Ordinal);
    }

    private sealed class Printer : IPrinter
    {
        public int Printed { get; private set; }

        public void Print() => Printed++;
    }
}
