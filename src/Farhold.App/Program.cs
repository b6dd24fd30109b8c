using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;

if (!OperatingSystem.IsBrowser())
    throw new PlatformNotSupportedException("The field app runs in a browser; Farhold.Hub serves it.");

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<Root>("#app");

// The phone's own things are up before the first screen, so that it never shows an empty state that is not true.
var phone = await BrowserPhone.StartAsync(builder.HostEnvironment.BaseAddress);
var preferences = new Preferences(phone);

#if DEBUG
var clock = new Farhold.App.Dev.DemoClock(phone);
builder.Services.AddSingleton(clock);
builder.Services.AddSingleton<TimeProvider>(clock);
#else
builder.Services.AddSingleton(TimeProvider.System);
#endif
builder.Services.AddSingleton<IPhone>(phone);
builder.Services.AddSingleton(preferences);
builder.Services.AddSingleton<ILogStore>(await BrowserLogStore.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IOfflineCopy>(await BrowserOfflineCopy.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IAlerts>(await BrowserAlerts.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IHandOverPhone>(await BrowserHandOver.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IXmlFiles>(await BrowserXml.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IPrinter, BrowserPrinter>();
builder.Services.AddSingleton(await BrowserSignatures.StartAsync(builder.HostEnvironment.BaseAddress));
builder.Services.AddSingleton<IBattery, BrowserBattery>();
builder.Services.AddSingleton<IPositions>(await BrowserPositions.StartAsync(builder.HostEnvironment.BaseAddress));
var texts = Texts.In("en");
builder.Services.AddFarhold(texts, new PhoneClock(phone.TimeZone, texts));

var host = builder.Build();
await phone.QuietAsync();
await host.Services.GetRequiredService<Language>().StartAsync();
host.Services.GetRequiredService<GlanceFeed>().Start();
host.Services.GetRequiredService<FirstTapsFeed>().Start();
_ = host.Services.GetRequiredService<Reminder>();
_ = host.Services.GetRequiredService<BatteryMonitor>();
await host.Services.GetRequiredService<LocalProtocolKeeper>().StartAsync();
var session = host.Services.GetRequiredService<Session>();
await session.StartAsync();
var address = host.Services.GetRequiredService<NavigationManager>();
if ((Places.CasualtyOf(address.ToBaseRelativePath(address.Uri)) ?? session.Interrupted) is { } casualty)
    await session.PrepareAsync(casualty);
await host.RunAsync();
