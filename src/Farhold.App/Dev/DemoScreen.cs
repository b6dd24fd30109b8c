using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using NodaTime;

namespace Farhold.App.Dev;

/// <summary>For whoever works on the app: takes the demo record in and opens it, in the middle of its first attempt.</summary>
/// <remarks>What the record says later than that is left out: an entry from the future is a doubt of its own.</remarks>
[Route("/demo")]
public sealed class DemoScreen : ComponentBase
{
    /// <summary>The attempt has begun a minute ago and has not bled yet.</summary>
    private static readonly Instant Begins = Instant.FromUtc(2031, 5, 4, 3, 25);

    private const string Record = "skarvedal.jsonl";

    [Inject]
    public DemoClock Clock { get; set; } = null!;

    [Inject]
    public Session Session { get; set; } = null!;

    [Inject]
    public ILogStore Store { get; set; } = null!;

    [Inject]
    public IPhone Phone { get; set; } = null!;

    [Inject]
    public Preferences Preferences { get; set; } = null!;

    [Inject]
    public IJSRuntime Js { get; set; } = null!;

    [Inject]
    public NavigationManager Navigation { get; set; } = null!;

    protected override async Task OnInitializedAsync()
    {
        Clock.Set(Begins);
        Preferences.CautionsRead = true;
        if (Preferences.Carer.Length == 0)
            Preferences.Carer = "Ane";
        var plan = await MergePlan.OfAsync(IncomingFile.Split(SoFar()), Record, null, Session, Store, Phone);
        if (plan.Into is null)
            plan = plan.WithNew(Session, Store);
        if (!plan.AddsNothing)
            await MergeOnItsDayAsync(plan);
        Navigation.NavigateTo(Places.Now.Of(plan.Into!.Id), replace: true);
    }

    /// <summary>Under the demo's clock in the browser too.</summary>
    /// <remarks>The store notes by it when entries came in: years before they were written, they would all be doubted.</remarks>
    private async Task MergeOnItsDayAsync(MergePlan plan)
    {
        await Js.InvokeVoidAsync("eval", $"globalThis.trueNow = Date.now; Date.now = () => {Begins.ToUnixTimeMilliseconds()}");
        await Session.MergeAsync(plan.Into!, plan.Coming.File.Lines, Record);
        await Js.InvokeVoidAsync("eval", "Date.now = globalThis.trueNow");
    }

    private static byte[] SoFar()
    {
        using var demo = typeof(DemoScreen).Assembly.GetManifestResourceStream(Record)!;
        var bytes = new byte[demo.Length];
        demo.ReadExactly(bytes);
        var file = ((Read<RecordFile>.Usable)RecordReader.Read(bytes, Record)).Value;
        return [.. file.Entries.Where(e => e.Recorded <= Begins).SelectMany(e => (byte[])[.. e.Json.Utf8.Span, (byte)'\n'])];
    }
}
