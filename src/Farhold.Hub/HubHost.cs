using System.Data.Common;
using Farhold.Hub.Access;
using Farhold.Hub.Board;
using Farhold.Hub.Fhir;
using Farhold.Hub.Shares;
using Farhold.Hub.Storage;
using Farhold.Hub.Sync;

namespace Farhold.Hub;

internal static class HubHost
{
    /// <summary>Design: a region's phones and desks, several connections each.</summary>
    private const int MostConnections = 2_000;

    /// <param name="rules">What cards are made by.</param>
    /// <param name="more">Further routes, for tests.</param>
    /// <exception cref="Storage.StoreUnusableException">Records can't be kept where the options say.</exception>
    public static WebApplication Build(HubOptions options, HubRules rules, Action<WebApplication>? more = null)
    {
        // A slim builder reads no settings from the folder it happens to be started in. The environment is fixed, so that no
        // variable brings pages that show code and traces.
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { EnvironmentName = Environments.Production });
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        builder.Services.AddRequestTimeouts();
        builder.Services.AddSingleton<DocumentDesk>();
        if (options.Sync is { } sync)
            AddRecords(builder.Services, sync, rules);
        builder.WebHost.UseUrls(options.Listen.Split(';', StringSplitOptions.RemoveEmptyEntries));
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = Documents.MostSentBytes;
            kestrel.Limits.MaxConcurrentConnections = MostConnections;
        });
        var app = builder.Build();
        app.UseSecurityHeaders(options);
        app.UseRequestGuard(new AllowedHosts(options));
        app.UseRequestTimeouts();
        app.MapDocuments(TimeProvider.System, rules);
        if (options.Sync is { } records)
            MapRecords(app, records);
        more?.Invoke(app);
        app.MapFieldApp(options);
        return app;
    }

    private static void AddRecords(IServiceCollection services, SyncOptions options, HubRules rules)
    {
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton(rules);
        services.AddSingleton(options);
        services.AddSingleton(_ => RecordStores.Open(options));
        services.AddSingleton(s => s.GetRequiredService<IRecordStore>().Rows);
        services.AddSingleton<AccessStore>();
        services.AddSingleton<Vouched>();
        services.AddSingleton<AuditTrail>();
        services.AddSingleton<Nonces>();
        services.AddSingleton<Gate>();
        services.AddSingleton<ShareStore>();
        services.AddSingleton<Opener>();
        services.AddSingleton<FhirRecords>();
        services.AddSingleton<Erasures>();
        services.AddSync(options);
        services.AddSingleton<WatchBoard>();
        services.AddHostedService(s => s.GetRequiredService<WatchBoard>());
    }

    private static void MapRecords(WebApplication app, SyncOptions options)
    {
        _ = app.Services.GetRequiredService<IRecordStore>(); // opened now, so that what is wrong with it is said at the start
        var gate = app.Services.GetRequiredService<Gate>();
        app.Use(gate.PassAsync);
        app.UseRateLimiter();
        var hub = app.MapGroup(Gate.Prefix);
        hub.MapSync(TimeProvider.System, options);
        hub.MapEnrolment(TimeProvider.System);
        hub.MapDevices(TimeProvider.System);
        hub.MapWatch(TimeProvider.System);
        hub.MapShares(TimeProvider.System);
        hub.MapFhir(TimeProvider.System);
        hub.MapErasure(TimeProvider.System);
        hub.MapHealth(options);
    }
}
