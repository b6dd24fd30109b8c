using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using Microsoft.AspNetCore.Components.WebAssembly.Services;

namespace Farhold.App.Browser;

[SupportedOSPlatform("browser")]
internal sealed partial class BrowserPractice : IPractice
{
    private const string Module = "rehearsal";

    /// <summary>Named in the project as what is loaded when it is first used.</summary>
    private static readonly string[] Model = ["Farhold.Physiology.wasm", "Farhold.Rehearsal.wasm"];

    private LazyAssemblyLoader? loader;
    private Task? loading;

    public bool IsRehearsing { get; } = Script.Rehearses();

    public string Run => Script.Run();

    public string Past => Script.Past();

    public static async Task<BrowserPractice> StartAsync(string baseAddress)
    {
        await JSHost.ImportAsync(Module, baseAddress + "rehearsal.js");
        return new();
    }

    /// <summary>By which the model is loaded; there is none before the app's services are built.</summary>
    public void LoadBy(LazyAssemblyLoader through) => loader = through;

    public bool KeepRun(string run) => Script.KeepRun(run);

    public bool KeepPast(string past) => Script.KeepPast(past);

    public Task<bool> BeginAsync(string run) => Script.BeginAsync(run);

    public bool GoOn() => Script.GoOn();

    public Task EndAsync(string address) => Script.EndAsync(address);

    public async Task LoadModelAsync()
    {
        loading ??= loader!.LoadAssembliesAsync(Model);
        try
        {
            await loading;
        }
        catch
        {
            loading = null; // asked for again another time
            throw;
        }
    }

    private static partial class Script
    {
        [JSImport("rehearses", Module)]
        public static partial bool Rehearses();

        [JSImport("run", Module)]
        public static partial string Run();

        [JSImport("past", Module)]
        public static partial string Past();

        [JSImport("keepRun", Module)]
        public static partial bool KeepRun(string run);

        [JSImport("keepPast", Module)]
        public static partial bool KeepPast(string past);

        [JSImport("begin", Module)]
        public static partial Task<bool> BeginAsync(string run);

        [JSImport("goOn", Module)]
        public static partial bool GoOn();

        [JSImport("end", Module)]
        public static partial Task EndAsync(string address);
    }
}
