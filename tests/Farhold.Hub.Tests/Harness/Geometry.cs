using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>What lies over what, asked of the browser.</summary>
internal static class Geometry
{
    /// <summary>What can be pressed or has to be read.</summary>
    private const string Things =
        "button, a.button, a.strip-link, summary, label.choice, textarea, progress, [role=timer], .count-down, h1, h2, legend, "
        + ".step-text, .reached, .notice, .toast, .stop-line";

    /// <summary>
    /// Every control and instruction that is covered, wherever it is scrolled to, and every alarm not wholly on the screen.
    /// </summary>
    public static Task<string[]> FaultsAsync(this IPage page) =>
        page.EvaluateAsync<string[]>(
            $$"""
            () => {
              const faults = [];
              const name = e => `<${e.tagName.toLowerCase()}> ` + (e.getAttribute('aria-label') ?? e.textContent).trim().replace(/\s+/g, ' ').slice(0, 50);
              const onScreen = (x, y) => x >= 0 && y >= 0 && x < innerWidth && y < innerHeight;
              const view = document.querySelector('.view');
              const before = view.scrollTop;
              for (const e of document.querySelectorAll('.stop-line, .bleeding-again')) {
                const r = e.getBoundingClientRect();
                if (r.left < -0.5 || r.top < -0.5 || r.right > innerWidth + 0.5 || r.bottom > innerHeight + 0.5)
                  faults.push(`not wholly on the screen: ${name(e)} ${JSON.stringify(r)}`);
                for (const other of document.querySelectorAll('#app *')) {
                  const s = getComputedStyle(other), o = other.getBoundingClientRect();
                  if ((s.position === 'fixed' || s.position === 'sticky') && other.checkVisibility() && !e.contains(other) && !other.contains(e)
                      && o.left < r.right - 0.5 && o.right > r.left + 0.5 && o.top < r.bottom - 0.5 && o.bottom > r.top + 0.5)
                    faults.push(`${name(other)} lies over ${name(e)}`);
                }
              }
              if (document.documentElement.scrollHeight > innerHeight + 1) faults.push('the page scrolls beside what scrolls in it: '
                + [...document.querySelectorAll('#app *')].filter(e => !e.closest('.view *') && e.getBoundingClientRect().bottom + scrollY > innerHeight + 1)
                  .map(e => `${name(e)} to ${e.getBoundingClientRect().bottom + scrollY}`).join(', '));
              const inset = 4; // within rounded corners
              for (const e of document.querySelectorAll('{{Things}}')) {
                if (!e.checkVisibility({ visibilityProperty: true }) || e.closest('.unseen')) continue;
                for (const [block, dx, dy] of [['center', 0.5, 0.5], ['start', 0, 0], ['start', 1, 0], ['end', 0, 1], ['end', 1, 1]]) {
                  e.scrollIntoView({ block, inline: 'nearest', behavior: 'instant' });
                  const r = e.getBoundingClientRect();
                  if (r.width < 2 * inset || r.height < 2 * inset) continue;
                  const x = r.left + inset + dx * (r.width - 2 * inset), y = r.top + inset + dy * (r.height - 2 * inset);
                  const hit = onScreen(x, y) ? document.elementFromPoint(x, y) : null;
                  if (!hit || !e.contains(hit)) faults.push(`${name(e)} at ${dx}, ${dy} is covered by ${hit ? name(hit) : 'the edge of the screen'}`);
                }
              }
              view.scrollTop = before;
              return [...new Set(faults)];
            }
            """
        );

    /// <summary>Of these, what is not wholly in sight as things stand now, nothing scrolled.</summary>
    public static Task<string[]> OutOfSightAsync(this IPage page, string selector) =>
        page.EvaluateAsync<string[]>(
            """
            selector => {
              const v = document.querySelector('.view').getBoundingClientRect();
              return [...document.querySelectorAll(selector)].filter(e => e.checkVisibility()).filter(e => {
                const r = e.getBoundingClientRect();
                return r.top < v.top - 0.5 || r.bottom > v.bottom + 0.5 || r.left < v.left - 0.5 || r.right > v.right + 0.5;
              }).map(e => e.textContent.trim().replace(/\s+/g, ' ') + ' ' + JSON.stringify(e.getBoundingClientRect()) + ' in ' + JSON.stringify(v));
            }
            """,
            selector
        );
}
