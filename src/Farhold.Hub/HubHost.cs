using Farhold.Hub.Sync;

namespace Farhold.Hub;

internal static class HubHost
{
    /// <summary>Design: a base with every phone of a party, several connections each.</summary>
    private const int MostConnections = 100;

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
            builder.Services.AddSync(sync);
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
            app.MapSync(TimeProvider.System, records);
        _ = app.Services.GetService<Storage.IRecordStore>(); // opened now, so that what is wrong with it is said at the start
        more?.Invoke(app);
        app.MapFieldApp(options);
        return app;
    }
}
