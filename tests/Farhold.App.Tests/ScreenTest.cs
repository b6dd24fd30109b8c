using AngleSharp.Dom;
using Farhold.App.Care;
using Farhold.App.First;
using Farhold.App.HandOver;
using Farhold.App.Offline;
using Farhold.App.Phone;
using Farhold.App.Power;
using Farhold.App.Reminders;
using Farhold.App.Settings;
using Farhold.App.Shell;
using Farhold.App.Store;
using Farhold.App.Tests.Doubles;
using Farhold.App.WayOut;
using Farhold.App.Words;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace Farhold.App.Tests;

/// <summary>Components with a phone, a store and a clock of their own. It is an invented morning, 14:00 in Auckland.</summary>
public abstract class ScreenTest : BunitContext
{
    protected ScreenTest()
    {
        Services.AddSingleton<TimeProvider>(Time);
        Services.AddSingleton<IPhone>(Phone);
        Services.AddSingleton<ILogStore>(Store);
        Services.AddSingleton<IOfflineCopy>(Copy);
        Services.AddFarhold(Texts, Clock);
        Services.AddSingleton<IAlerts>(Alerts);
        Services.AddSingleton<IHandOverPhone>(HandOver);
        Services.AddSingleton<IXmlFiles>(Xml);
        Services.AddSingleton<SignatureCheck>(Signing.FrameworkSignatures.CheckAsync);
        Services.AddSingleton<IBattery>(Battery);
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    internal FakePhone Phone { get; } = new();

    internal FrameworkXml Xml { get; } = new();

    internal MemoryLogStore Store { get; } = new();

    internal FakeOfflineCopy Copy { get; } = new();

    internal FakeAlerts Alerts { get; } = new();

    internal FakeBattery Battery { get; } = new();

    internal FakeHandOver HandOver { get; } = new();

    protected FakeTimeProvider Time { get; } = new(new DateTimeOffset(2031, 5, 4, 2, 0, 0, TimeSpan.Zero));

    protected Texts Texts { get; } = Texts.In("en");

    protected PhoneClock Clock { get; } = new(DateTimeZoneProviders.Tzdb["Pacific/Auckland"]);

    protected Instant Now => Instant.FromDateTimeOffset(Time.GetUtcNow());

    protected Session Session => Services.GetRequiredService<Session>();

    protected Toasts Toasts => Services.GetRequiredService<Toasts>();

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
