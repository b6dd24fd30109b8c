using AngleSharp.Dom;
using Farhold.App.Tests.Doubles;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace Farhold.App.Tests;

/// <summary>Components with a phone, a store and a clock of their own. It is an invented morning, 14:00 in Auckland.</summary>
public abstract class ScreenTest : BunitContext
{
    protected ScreenTest()
    {
        Clock = new(DateTimeZoneProviders.Tzdb["Pacific/Auckland"], Texts);
        Services.AddSingleton<TimeProvider>(Time);
        Services.AddSingleton<IPhone>(Phone);
        Services.AddSingleton<ILogStore>(Store);
        Services.AddSingleton<IOfflineCopy>(Copy);
        Services.AddFarhold(Texts, Clock);
        Services.AddSingleton<IAlerts>(Alerts);
        Services.AddSingleton<IPositions>(Positions);
        Services.AddSingleton<IHandOverPhone>(HandOver);
        Services.AddSingleton<IXmlFiles>(Xml);
        Services.AddSingleton<SignatureCheck>(Signing.FrameworkSignatures.CheckAsync);
        Services.AddSingleton<IBattery>(Battery);
        Services.AddSingleton<IPractice>(Practice);
        HubLine = new(Store);
        Services.AddSingleton<IHubLine>(HubLine);
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    internal FakePhone Phone { get; } = new();

    internal FrameworkXml Xml { get; } = new();

    internal MemoryLogStore Store { get; } = new();

    internal FakeOfflineCopy Copy { get; } = new();

    internal FakeAlerts Alerts { get; } = new();

    internal FakePositions Positions { get; } = new();

    internal FakeBattery Battery { get; } = new();

    internal FakeHandOver HandOver { get; } = new();

    internal FakePractice Practice { get; } = new();

    internal FakeHubLine HubLine { get; }

    protected FakeTimeProvider Time { get; } = new(new DateTimeOffset(2031, 5, 4, 2, 0, 0, TimeSpan.Zero));

    protected Texts Texts { get; } = Texts.In("en");

    protected PhoneClock Clock { get; }

    protected Instant Now => Instant.FromDateTimeOffset(Time.GetUtcNow());

    protected Session Session => Services.GetRequiredService<Session>();

    protected Toasts Toasts => Services.GetRequiredService<Toasts>();

    protected Logbook Logbook => Services.GetRequiredService<Logbook>();

    protected CareDesk Desk => Services.GetRequiredService<CareDesk>();

    protected Preferences Preferences => Services.GetRequiredService<Preferences>();

    protected async Task<string> OpenCasualtyAsync(string alias = "Tor", bool practice = false)
    {
        Preferences.Carer = "Ane";
        _ = Desk;
        await Session.StartAsync();
        var id = await Session.NewCasualtyAsync(alias, practice);
        Assert.NotNull(id);
        await Session.OpenAsync(id);
        return id;
    }

    /// <summary>The button a person would call by this name.</summary>
    protected static IElement Button(IRenderedComponent<Microsoft.AspNetCore.Components.IComponent> shown, string name) =>
        shown.FindAll("button").Single(b => (b.GetAttribute("aria-label") ?? b.TextContent.Trim()) == name);
}
