using Microsoft.Extensions.DependencyInjection.Extensions;

namespace Farhold.App;

/// <summary>What the app is made of, whatever phone it runs on: program and tests add it alike.</summary>
public static class FarholdServices
{
    /// <summary>
    /// The phone's own things have to be added beside it: <c>IPhone</c>, <c>ILogStore</c>, <c>IOfflineCopy</c>, <c>IAlerts</c>,
    /// <c>IHandOverPhone</c>, <c>IXmlFiles</c>, <c>IPrinter</c>, <c>IBattery</c>, <c>IPositions</c>, <c>IPractice</c>, <c>IHubLine</c>,
    /// <c>SignatureCheck</c> and a <c>TimeProvider</c>.
    /// </summary>
    public static IServiceCollection AddFarhold(this IServiceCollection services, Texts texts, PhoneClock clock)
    {
        services.AddSingleton(texts);
        services.AddSingleton(clock);
        services.TryAddSingleton(_ => ShippedRules.Book);
        services.TryAddSingleton<Preferences>();
        services.AddSingleton<Background>();
        services.AddSingleton<Language>();
        services.AddSingleton<Glance>();
        services.AddSingleton<Session>();
        services.AddSingleton<Toasts>();
        services.AddSingleton<Ticker>();
        services.AddSingleton<NightHours>();
        services.AddSingleton<ShiftParty>();
        services.AddSingleton<RulesInForce>();
        services.AddSingleton<KeptElsewhere>();
        services.AddSingleton<Judging>();
        services.AddSingleton<CareDesk>();
        services.AddSingleton<Logbook>();
        services.AddSingleton<LookTaken>();
        services.AddSingleton<WayDesk>();
        services.AddSingleton<WayNotes>();
        services.AddSingleton<GlanceFeed>();
        services.AddSingleton<FirstTapsFeed>();
        services.AddSingleton<AlertSignals>();
        services.AddSingleton<AttemptLog>();
        services.AddSingleton<Reminder>();
        services.AddSingleton<TrustedIssuers>();
        services.AddSingleton<LocalProtocolKeeper>();
        services.AddSingleton<KeptAround>();
        services.AddSingleton<KeptTrip>();
        services.AddSingleton<BatteryMonitor>();
        services.AddSingleton<PastRehearsals>();
        services.AddSingleton<Refresher>();
        services.AddSingleton<OwnScenarios>();
        services.AddSingleton<RehearsalDesk>();
        services.AddSingleton<HubDesk>();
        services.AddSingleton<BoardDesk>();
        return services;
    }
}
