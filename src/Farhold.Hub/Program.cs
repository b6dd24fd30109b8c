using Farhold.Hub;

if (args.Contains("--help"))
{
    Console.WriteLine(HubOptions.Help);
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
if (HubOptions.From(args, Environment.GetEnvironmentVariable) is not { } options)
    return 2;

if (await HubRules.ToldAsync(ShippedRules.Book, options) is not { } rules)
    return 2;

var app = HubHost.Build(options, rules);
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
await app.WaitForShutdownAsync();
return 0;
