using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>What axe-core finds wrong with a page.</summary>
/// <remarks>
/// The package's own call reads axe into the page and into a second, empty window for every look, which cost more than the look. Here the
/// page that is looked at keeps axe, and only the faults leave it.
/// </remarks>
internal static class Axe
{
    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    /// <param name="rules">Only these rules; without, all that axe runs by itself.</param>
    public static async Task<string[]> AxeFaultsAsync(this IPage page, params string[] rules)
    {
        Assert.Single(page.Frames); // axe is read into the main frame only
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window"))
            await page.EvaluateAsync($"() => {{ {Script} }}");
        return await page.EvaluateAsync<string[]>(
            """
            async rules => {
              const only = rules.length > 0 ? { runOnly: { type: 'rule', values: rules } } : {};
              const found = await axe.run(document, { ...only, resultTypes: ['violations'] });
              if (found.passes.length + found.violations.length === 0) throw new Error('axe looked at nothing');
              return found.violations.flatMap(v => v.nodes.map(n =>
                [v.id, n.html, ...[...n.any, ...n.all, ...n.none].map(check => check.message)].join(' ')));
            }
            """,
            rules
        );
    }

    /// <param name="screen">What the page shows, named where it has a fault.</param>
    public static async Task NoAxeFaultAsync(this IPage page, string screen, params string[] rules)
    {
        var faults = await page.AxeFaultsAsync(rules);
        Assert.True(faults.Length == 0, $"{screen}: {string.Join("; ", faults)}");
    }

    /// <summary>Sees the screen that is shown in another look, which is another set of colours, and goes back to its own.</summary>
    public static async Task InLookAsync(this IPage page, string look, Func<Task> see)
    {
        var own = await page.EvaluateAsync<string>(Dress, look);
        await see();
        await page.EvaluateAsync(Dress, own);
    }

    private const string Dress = """
        async look => {
          const { dataset } = document.documentElement;
          const own = dataset.look;
          dataset.look = look;
          await Promise.all(document.getAnimations().filter(a => a instanceof CSSTransition).map(a => a.finished.catch(() => { })));
          return own;
        }
        """;
}
