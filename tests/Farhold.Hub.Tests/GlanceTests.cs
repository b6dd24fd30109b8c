using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

public class GlanceTests(Browser browser) : PhoneTest(browser)
{
    internal const string Remember = "make => { localStorage.setItem('farhold-glance', JSON.stringify(eval(make)(Date.now()))); }";

    /// <summary>A picture made 20 minutes ago: tightened 62 to 80 minutes ago, limit in 4 h 40 min.</summary>
    internal const string Picture = """
        (now => ({
          v: 1,
          words: { asOf: 'Last known at', since: 'Since first tightened:', limit: 'Time limit at', passed: 'Time limit PASSED at', practice: 'PRACTICE' },
          casualties: [{
            id: 'c1', alias: '<b>Tor</b>', practice: false, at: now - 20 * 60e3,
            limbs: [{ limb: 'left-leg', limbText: 'Left leg', verdict: 'check-first', verdictText: 'Check first',
              tightenedEarliest: now - 80 * 60e3, tightenedLatest: now - 62 * 60e3, limit: now + 280 * 60e3 + 30e3 }],
            cautions: ['Get help first.'],
          }],
        }))
        """;

    [Fact]
    public async Task The_last_picture_is_there_without_the_runtime_and_its_clock_counts_on()
    {
        Expect("ERR_FAILED");
        Expect("dotnet");
        Expect("Failed to fetch");
        Expect("WebAssembly");
        await Page.Button("I have read this").WaitForAsync();
        await Page.KeepOfflineAsync();
        await Page.EvaluateAsync(Remember, Picture);
        await Page.EvaluateAsync("() => navigator.serviceWorker.getRegistration().then(r => r.unregister()).then(() => null)");
        await Page.RouteAsync("**/_framework/**", route => route.AbortAsync());
        await Page.ReloadAsync();

        await Assertions.Expect(Page.GetByText("<b>Tor</b>")).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("Since first tightened: 1 h 02 min – 1 h 20 min")).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("(4 h 40 min)")).ToBeVisibleAsync();
        await Page.EvaluateAsync("() => { const real = Date.now; Date.now = () => real() + 5 * 3600e3; }");
        await Assertions.Expect(Page.GetByText("Since first tightened: 6 h 02 min – 6 h 20 min")).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("Time limit PASSED at")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_spoilt_picture_never_stops_the_app()
    {
        await Page.Button("I have read this").WaitForAsync();
        await Page.EvaluateAsync("""() => localStorage.setItem('farhold-glance', '{"v":1,"casualties":[{"limbs":7}]}')""");
        await Page.ReloadAsync();
        await Page.Button("I have read this").WaitForAsync();
    }
}
