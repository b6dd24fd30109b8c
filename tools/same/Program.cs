// What a build of the command line says of a folder of records, verb by verb, into one file a record: two builds are then compared
// with diff -r. The build is loaded once and asked again and again, so that hundreds of records take a minute.
//   dotnet run --project tools/same -- PATH/farhold.dll RECORDS OUT
using System.Reflection;
using System.Runtime.Loader;
using System.Text;

if (args is not [var built, var records, var into])
{
    Console.Error.WriteLine("same PATH/farhold.dll RECORDS OUT");
    return 2;
}

var resolver = new AssemblyDependencyResolver(Path.GetFullPath(built));
AssemblyLoadContext.Default.Resolving += (context, name) =>
    resolver.ResolveAssemblyToPath(name) is { } path ? context.LoadFromAssemblyPath(path) : null;
AssemblyLoadContext.Default.ResolvingUnmanagedDll += (_, name) =>
    resolver.ResolveUnmanagedDllToPath(name) is { } path ? System.Runtime.InteropServices.NativeLibrary.Load(path) : 0;
var entry = AssemblyLoadContext.Default.LoadFromAssemblyPath(Path.GetFullPath(built)).EntryPoint!;
Environment.SetEnvironmentVariable("XDG_CONFIG_HOME", Path.Combine(Path.GetTempPath(), "farhold-nobody-trusted"));
var said = Console.Out;
Directory.CreateDirectory(into);
var folder = Path.GetFullPath(records);
var files = Directory.GetFiles(folder, "*.jsonl").Order(StringComparer.Ordinal).ToArray();
Environment.CurrentDirectory = folder;
foreach (var (n, file) in files.Index())
{
    var name = Path.GetFileName(file);
    var at = File.Exists(file + ".at") ? File.ReadAllText(file + ".at").Trim() : "2031-05-04T06:10:00Z";
    var all = new StringBuilder();
    foreach (var asked in Asked(name, at))
        all.AppendLine($"$ farhold {string.Join(' ', asked)}").AppendLine(Run(asked));
    File.WriteAllText(Path.Combine(into, Path.ChangeExtension(name, ".txt")), all.ToString());
    if (n % 25 == 24)
        said.WriteLine($"{n + 1} of {files.Length}");
}

return 0;

IEnumerable<string[]> Asked(string name, string at) =>
    [
        ["tell", name, "--at", at],
        ["tell", name, "--at", at, "--json"],
        ["replay", name],
        ["log", name],
        ["check", name],
        ["due", name, "--at", at],
        ["say", name, "--at", at],
        ["message", name, "--at", at],
        ["fhir", name, "--at", at],
        ["supplies", name, "--at", at, "--party", "3"],
        ["signs", name],
        ["dose", name, "paracetamol", "--at", at],
        ["draw", name, "--at", at],
    ];

string Run(string[] asked)
{
    var (output, errors) = (new StringWriter(), new StringWriter());
    Console.SetOut(output);
    Console.SetError(errors);
    object? code;
    try
    {
        code = entry.Invoke(null, [asked]);
        if (code is Task<int> task)
            code = task.GetAwaiter().GetResult();
    }
    catch (TargetInvocationException e)
    {
        code = e.InnerException!.GetType().Name;
    }

    return $"{output}{errors}= {code}";
}
