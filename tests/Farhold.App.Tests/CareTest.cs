using AngleSharp.Dom;
using Microsoft.AspNetCore.Components;

namespace Farhold.App.Tests;

/// <summary>A casualty in care, with entries made at a number of minutes before now.</summary>
public abstract class CareTest : ScreenTest
{
    protected string Casualty { get; private set; } = "";

    protected State State => Desk.Record!.Readings[0];

    protected async Task StartAsync() => Casualty = await OpenCasualtyAsync();

    protected Task LogAsync(int minutesAgo, Payload payload) =>
        Logbook.WriteAsync(Session.Open!, payload, Happened.At(Now - Duration.FromMinutes(minutesAgo)));

    /// <summary>As if the casualty had been taken in care so long ago.</summary>
    protected Task OpenedAsync(int minutesAgo) =>
        LogAsync(
            0,
            new Payload.EntryAmended(
                State.Of(Kind.CasualtyOpened).Single().Id,
                JsonText.Of($$"""{"happened":"{{WrittenInstant.Write(Now - Duration.FromMinutes(minutesAgo))}}"}""")
            )
        );

    /// <summary>Help told to come in so many minutes, and at no other time.</summary>
    protected Task HelpInAsync(int minutes)
    {
        var help = Now + Duration.FromMinutes(minutes);
        return LogAsync(1, new Payload.HelpExpected(help, help, help, Care: HelpCare.Surgery));
    }

    /// <summary>A bleeding left leg, tourniquet t1 for wound w1, first tightened that long ago.</summary>
    protected async Task TightAsync(int minutesAgo = 40, WoundNature nature = WoundNature.Bleeding)
    {
        await StartAsync();
        await LogAsync(minutesAgo + 1, new Payload.WoundFound("w1", Limb.LeftLeg, null, nature));
        await LogAsync(minutesAgo, new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"));
    }

    /// <summary>Everything known and met, two looks a quarter of an hour apart, but for <paramref name="signs"/> at the second.</summary>
    protected async Task ReadyAsync(Payload.SignsTaken signs, Instant? helpAt = null, int minutesOn = 40)
    {
        await TightAsync(minutesOn);
        await LogAsync(14, Well);
        await RestAsync(signs, helpAt);
    }

    /// <summary>The same without the first look.</summary>
    protected async Task RestAsync(Payload.SignsTaken signs, Instant? helpAt = null)
    {
        await LogAsync(1, signs);
        await LogAsync(1, NothingElse);
        await LogAsync(1, new Payload.BleedingChecked("w1", Bleeding.None));
        await LogAsync(1, new Payload.WatchStated(true, Watcher.Other));
        await LogAsync(1, new Payload.SuppliesStated("haemostatic-gauze", 2));
        await LogAsync(1, new Payload.SuppliesStated(Supplies.PressureDressing, 1));
        var help = helpAt ?? Now + Duration.FromHours(9);
        await LogAsync(1, new Payload.HelpExpected(help, help, help, Care: HelpCare.Surgery));
    }

    /// <summary>The rest of the casualty, looked over.</summary>
    protected static Payload.CasualtyLookedOver NothingElse { get; } = new(false, false, false, false, false);

    protected static Payload.SignsTaken Well { get; } =
        new()
        {
            HeartRate = 88,
            RespiratoryRate = 16,
            Mental = Mental.Alert,
            Dizzy = false,
            Pale = false,
            Cool = false,
            Clammy = false,
            RadialPulse = RadialPulse.Strong,
            CapillaryRefillS = 2,
            NoPressureCuff = true,
        };

    /// <summary>A place in its frame, as on the phone.</summary>
    protected IRenderedComponent<Frame> Show<T>(params (string Name, object Value)[] parameters)
        where T : CasualtyScreen
    {
        DisposeComponentsAsync().GetAwaiter().GetResult();
#pragma warning disable MA0115 // which component it is, only the test says
        RenderFragment body = b =>
        {
            b.OpenComponent<T>(0);
            b.AddAttribute(1, nameof(CasualtyScreen.Casualty), Casualty);
            foreach (var (name, value) in parameters)
                b.AddAttribute(2, name, value);
            b.CloseComponent();
        };
#pragma warning restore MA0115
        return Render<Frame>(p => p.Add(f => f.Body, body));
    }

    /// <summary>Taps the button of this name; within the group of this label, if one is given.</summary>
    protected static void Tap(IRenderedComponent<Frame> frame, string name, string? group = null)
    {
        var within = group is null
            ? frame.FindAll("button")
            : frame.FindAll("[role=group], [role=dialog]").Where(g => Label(g) == group).SelectMany(g => g.QuerySelectorAll("button"));
        within.First(b => (b.GetAttribute("aria-label") ?? Text(b)) == name).Click();
    }

    protected static void Choose(IRenderedComponent<Frame> frame, string legend, string option) =>
        frame
            .FindAll("fieldset")
            .Single(f => f.QuerySelector("legend") is { } l && Text(l) == legend && f.QuerySelector(":scope > .choices") is not null)
            .QuerySelectorAll("label")
            .Single(l => (l.QuerySelector("input")!.GetAttribute("aria-label") ?? Text(l)) == option)
            .QuerySelector("input")!
            .Change(true);

    protected static void Write(IRenderedComponent<Frame> frame, string label, string text) =>
        frame.FindAll("label.field").Single(l => Text(l) == label).QuerySelector("input, textarea")!.Input(text);

    /// <summary>An option of a choice, by the choice's legend.</summary>
    protected static void Pick(IRenderedComponent<Frame> frame, string legend, string option) =>
        frame
            .FindAll("fieldset")
            .Single(f => f.QuerySelector("legend")?.TextContent == legend)
            .QuerySelectorAll("label")
            .Single(l => l.TextContent.Trim() == option)
            .QuerySelector("input")!
            .Change(true);

    protected static string Text(INode node) =>
        string.Join(' ', node.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    protected T Last<T>()
        where T : Payload => State.All.Where(d => d.What is T).OrderBy(d => d.Id).Last().As<T>();

    private static string? Label(IElement element) =>
        element.GetAttribute("aria-label")
        ?? (element.GetAttribute("aria-labelledby") is { } id ? Text(element.QuerySelector("#" + id)!) : null);
}
