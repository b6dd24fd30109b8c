namespace Farhold.Hub;

internal static class HubHost
{
    public static WebApplication Build(HubOptions options)
    {
        // A slim builder reads no settings from the folder it happens to be started in.
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        builder.WebHost.UseUrls(options.Listen.Split(';', StringSplitOptions.RemoveEmptyEntries));
        var app = builder.Build();
        app.UseSecurityHeaders(options);
        app.MapDocuments(TimeProvider.System);
        app.MapFieldApp(options);
        return app;
    }
}
