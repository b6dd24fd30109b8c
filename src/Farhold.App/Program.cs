using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Microsoft.AspNetCore.Components.WebAssembly.Services;

if (!OperatingSystem.IsBrowser())
    throw new PlatformNotSupportedException("The field app runs in a browser; Farhold.Hub serves it.");

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<Root>("#app");

// The phone's own things are up before the first screen, so that it never shows an empty state that is not true.
var phone = await BrowserPhone.StartAsync(builder.HostEnvironment.BaseAddress);
var preferences = new Preferences(phone);
var practice = await BrowserPractice.StartAsync(builder.HostEnvironment.BaseAddress);

#if DEBUG
var demo = new Farhold.App.Dev.DemoClock(phone);
builder.Services.AddSingleton(demo);
builder.Services.AddSingleton(practice.IsRehearsing ? new RehearsalClock(TimeProvider.System) : (TimeProvider)demo);
#else
builder.Services.AddSingleton(practice.IsRehearsing ? new RehearsalClock(TimeProvider.System) : TimeProvider.System);
#endif
builder.Services.AddSingleton<IPhone>(phone);
builder.Services.AddSingleton(preferences);
builder.Services.AddSingleton<IPractice>(practice);
builder.Services.AddSingleton<ILogStore>(await BrowserLogStore.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IOfflineCopy>(await BrowserOfflineCopy.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IAlerts>(await BrowserAlerts.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IHandOverPhone>(await BrowserHandOver.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IXmlFiles>(await BrowserXml.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IPrinter, BrowserPrinter>();
builder.Services.AddSingleton(await BrowserSignatures.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IBattery, BrowserBattery>();
var hubLine = await BrowserHubLine.StartAsync(builder.HostEnvironment.BaseAddress);
builder.Services.AddSingleton<IHubLine>(hubLine);
builder.Services.AddSingleton<IPositions>(await BrowserPositions.StartAsync(builder.HostEnvironment.BaseAddress));
var texts = Texts.In("en");
builder.Services.AddFarhold(texts, new PhoneClock(RehearsalZone.Of(practice) ?? phone.TimeZone, texts));

var host = builder.Build();
practice.LoadBy(host.Services.GetRequiredService<LazyAssemblyLoader>());
hubLine.LoadBy(host.Services.GetRequiredService<LazyAssemblyLoader>());
await phone.QuietAsync();
await host.Services.GetRequiredService<Language>().StartAsync();
if (!practice.IsRehearsing)
{
    host.Services.GetRequiredService<GlanceFeed>().Start();
    host.Services.GetRequiredService<FirstTapsFeed>().Start();
}

_ = host.Services.GetRequiredService<Reminder>();
_ = host.Services.GetRequiredService<BatteryMonitor>();
await host.Services.GetRequiredService<LocalProtocolKeeper>().StartAsync();
var session = host.Services.GetRequiredService<Session>();
await session.StartAsync();
await host.Services.GetRequiredService<RehearsalDesk>().StartAsync(phone.QuietAsync);
if (!practice.IsRehearsing)
    await host.Services.GetRequiredService<HubDesk>().StartAsync();
var address = host.Services.GetRequiredService<NavigationManager>();
if ((Places.CasualtyOf(address.ToBaseRelativePath(address.Uri)) ?? session.Interrupted) is { } casualty)
    await session.PrepareAsync(casualty);
await host.RunAsync();
