using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>
/// Texts that try to run, to ask other hosts or to turn the writing, taken through every place. Whatever runs calls <c>__pwn</c>;
/// whatever is asked elsewhere is caught; whatever stands in the page is looked through for made elements, controls and turning marks.
/// </summary>
public sealed partial class InjectionTests(Browser browser) : PhoneTest(browser)
{
    private const string Trap = """
        globalThis.__pwned = [];
        globalThis.__pwn = what => { __pwned.push(String(what)); console.error('RAN: ' + what); };
        for (const name of ['alert', 'confirm', 'prompt', 'open', 'print']) globalThis[name] = () => { __pwned.push(name); };
        """;

    private const string LookThrough = """
        () => {
          const turning = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/;
          const where = element => {
            const path = [];
            for (let at = element; at && at !== document.body && path.length < 4; at = at.parentElement)
              path.unshift(at.localName + (at.classList[0] ? '.' + at.classList[0] : ''));
            return path.join(' > ');
          };
          const found = [...__pwned];
          const walk = document.createTreeWalker(document, NodeFilter.SHOW_TEXT);
          for (let node; node = walk.nextNode();)
            if (turning.test(node.data)) found.push('text in ' + where(node.parentElement) + ': ' + JSON.stringify(node.data.slice(0, 60)));
          for (const element of document.querySelectorAll('*'))
            for (const { name, value } of element.attributes)
              if (turning.test(value)) found.push(name + ' of ' + where(element) + ': ' + JSON.stringify(value.slice(0, 60)));
          const made = '[onerror], [onload], [onmouseover], iframe, object, embed, [style*="evil"], base[href^="http"], '
            + '[href^="javascript:" i], [href*="evil.example"], [src*="evil.example"], img[src="x"], script:not([src]):not([type=importmap])';
          for (const element of document.querySelectorAll(made)) found.push('made ' + element.outerHTML.slice(0, 100));
          return found;
        }
        """;

    private readonly ConcurrentQueue<string> found = new();

    /// <summary>Without the offline copy, so that every request of the page is seen and none is the service worker's.</summary>
    protected override BrowserNewContextOptions Kind => new(Harness.Kinds.Phone) { ServiceWorkers = ServiceWorkerPolicy.Block };

    public override async ValueTask InitializeAsync()
    {
        await base.InitializeAsync();
        await Phone.AddInitScriptAsync(Trap);
        Phone.Request += (_, request) =>
        {
            string[] own = [Server.Address + "/", "blob:", "data:"];
            if (!own.Any(o => request.Url.StartsWith(o, StringComparison.Ordinal)))
                found.Enqueue("asked for " + request.Url);
        };
        Phone.Page += (_, page) => page.Dialog += (_, dialog) => found.Enqueue("dialog " + dialog.Message);
        await Page.ReloadAsync();
    }

    [Fact]
    public async Task No_text_of_a_record_runs_reaches_out_or_turns_the_writing_anywhere()
    {
        var record = new HostileRecord();
        await Page.ReadCautionsAsync("Ane <img src=x onerror=__pwn(4)>\"'\u202E");
        await Page.OpenCasualtyAsync("Somebody <img src=x onerror=__pwn(7)>\u202E");
        await Page.Link("All casualties").TapAsync();
        await Page.GetByLabel("record file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "<img src=x onerror=__pwn('name')>\u202E.jsonl",
                    MimeType = "application/jsonl",
                    Buffer = record.Bytes,
                }
            );
        await Page.Button("Another casualty: keep them apart").WaitForAsync();
        await LookAsync("two people side by side");
        await Page.Button("Another casualty: keep them apart").TapAsync();
        await LookAsync("what is taken in");
        await Page.Button("Take these entries in").TapAsync();
        await Page.Button("Take this back out").WaitForAsync();
        await LookAsync("casualties");
        await Page.GetByRole(AriaRole.Link, new() { NameRegex = Hostile() }).First.TapAsync();
        await Page.Heading("Now").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        foreach (var place in Places(record))
            await VisitAsync(place);

        // What the phone keeps for the next start, shown without the app.
        Expect("ERR_FAILED");
        Expect("Failed to");
        Expect("Blazor");
        await Page.RouteAsync("**/_framework/**", route => route.AbortAsync());
        await Page.ReloadAsync();
        await Page.Locator(".glance").First.WaitForAsync();
        await LookAsync("plain page");
        Assert.True(found.IsEmpty, string.Join('\n', found.Distinct()));
    }

    private async Task VisitAsync(string address)
    {
        await Page.EvaluateAsync("address => Blazor.navigateTo(address)", address);
        await Page.WaitForFunctionAsync("address => location.pathname === address && document.querySelector('#app h1')", address);
        await Page.EvaluateAsync("() => document.querySelectorAll('details').forEach(d => d.open = true)");
        await LookAsync(address);
    }

    private async Task LookAsync(string place)
    {
        // Twice through the event loop, so that what is drawn in pieces is drawn.
        await Page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(null))))");
        foreach (var one in await Page.EvaluateAsync<string[]>(LookThrough))
            found.Enqueue($"{place}: {one}");
        await Page.EvaluateAsync("() => { __pwned.length = 0; }");
    }

    /// <summary>Every address of the app, as its components name them, with all that may stand in their places.</summary>
    private IEnumerable<string> Places(HostileRecord record)
    {
        var here = new Uri(Page.Url).AbsolutePath.Split('/')[2];
        return Directory
            .EnumerateFiles(Path.Combine(Published.Root, "src", "Farhold.App"), "*.razor", SearchOption.AllDirectories)
            .SelectMany(f => Address().Matches(File.ReadAllText(f)).Select(m => m.Groups["address"].Value))
            .Distinct()
            .SelectMany(a => Filled(a.Replace("{Casualty}", here, StringComparison.Ordinal), record))
            .Order(StringComparer.Ordinal);
    }

    private static IEnumerable<string> Filled(string address, HostileRecord record)
    {
        if (Placeholder().Match(address) is not { Success: true } open)
            return [address];
        var values = open.Value switch
        {
            "{EntryName}" => record.Ids,
            "{KindName}" => record.Kinds,
            "{Kind}" => ["practice"],
            "{On}" or "{LimbName}" => ["left-leg", "left-arm"],
            "{View}" => ["back"],
            "{Step}" => ["airway"],
            "{Part}" => ["systolic", "skin"],
            "{Field}" => ["ageYears"],
            "{Id}" => ["held-at-once"],
            var other => throw new InvalidOperationException($"What stands for {other}? Say it here."),
        };
        return values.SelectMany(v => Filled(address.Replace(open.Value, v, StringComparison.Ordinal), record));
    }

    [GeneratedRegex("""^@page "(?<address>/[^"]*)"$""", RegexOptions.Multiline)]
    private static partial Regex Address();

    [GeneratedRegex(@"\{[A-Za-z]+\}")]
    private static partial Regex Placeholder();

    [GeneratedRegex("__pwn")]
    private static partial Regex Hostile();
}
