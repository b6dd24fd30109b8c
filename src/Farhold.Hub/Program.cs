using Farhold.Hub;
using Farhold.Hub.Access;
using Farhold.Hub.Storage;
using Farhold.Hub.Verbs;

if (args.Contains("--help"))
{
    Console.WriteLine(HubOptions.Help + "\n" + Verb.Help);
    return 0;
}
if (args is ["--version"])
{
    Console.WriteLine(Product.Named);
    return 0;
}
if (args is ["--static-host", var published, var target])
{
    StaticHost.Write(published, target);
    return 0;
}
if (await Verb.RunAsync(args, Console.Out, Console.Error) is { } ended)
    return ended;
if (args is ["invite", .. var invited])
    return await InviteVerb.RunAsync(invited, Console.Out, Console.Error, TimeProvider.System);
if (HubOptions.From(args, Environment.GetEnvironmentVariable) is not { } options)
    return 2;

if (await HubRules.ToldAsync(ShippedRules.Book, options) is not { } rules)
    return 2;

WebApplication app;
try
{
    app = HubHost.Build(options, rules);
}
catch (StoreUnusableException e)
{
    Console.Error.WriteLine(e.Message);
    return 2;
}

try
{
    await app.StartAsync();
}
catch (IOException e)
{
    Console.Error.WriteLine($"The hub can't listen at {options.Listen}: {e.Message}");
    return 2;
}

Console.WriteLine($"Farhold is at {string.Join(" and ", app.Urls)}. End with Ctrl+C.");
if (options.Sync is { } sync)
{
    Console.WriteLine($"Records are kept in {sync.Place}. Whoever is enrolled may ask for them.");
    if (options.Demo is { } demo)
    {
        var services = app.Services;
        var now = NodaTime.Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
        var (access, audit) = (services.GetRequiredService<AccessStore>(), services.GetRequiredService<AuditTrail>());
        if (await DemoRecords.PutAsync(demo, services.GetRequiredService<IRecordStore>(), access, now) is > 0 and var put)
            Console.WriteLine($"{put} invented casualties were put into it.");
        if ((await access.DevicesAsync(null)).All(d => d.Revoked is not null))
            Console.WriteLine(await InviteVerb.MakeAsync(access, audit, HubRole.Coordinator, DemoRecords.Team, "", 1, TimeProvider.System));
    }
}

await app.WaitForShutdownAsync();
return 0;
