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

    /// <summary>
    /// As the page lies, nothing scrolled: what can be pressed and is smaller than a thumb (56 px) or nearer than 8 px to its neighbour,
    /// words that are cut off or lie over other words, and whatever reaches past the side of the screen.
    /// </summary>
    /// <remarks>
    /// A link within a sentence, and what lies in a frame that scrolls by itself, are let be. The regions of the figure meet as those of a
    /// body do: FieldLookTests asks each where it is hit.
    /// </remarks>
    public static Task<string[]> LayoutFaultsAsync(this IPage page) => page.EvaluateAsync<string[]>(Layout);

    private const string Layout = """
        () => {
          const faults = new Set();
          const name = e => `<${e.tagName.toLowerCase()}${e.classList.length ? '.' + [...e.classList].join('.') : ''}> `
            + (e.getAttribute('aria-label') ?? e.textContent).trim().replace(/\s+/g, ' ').slice(0, 40);
          const seen = e => e.checkVisibility({ visibilityProperty: true, opacityProperty: false }) && !e.closest('.unseen, [hidden], .turn');
          const framed = e => e.closest('[role=region][tabindex="0"]');
          const size = r => `${Math.round(r.width)} x ${Math.round(r.height)}`;

          for (const e of document.querySelectorAll('#app *'))
            if (seen(e) && !framed(e) && !e.closest('svg')) {
              const r = e.getBoundingClientRect();
              if (r.width && (r.right > innerWidth + 1 || r.left < -1)) faults.add(`past the side: ${name(e)} ${Math.round(r.left)} to ${Math.round(r.right)}`);
            }

          // What is pressed: a choice is its label's whole face.
          const things = [...document.querySelectorAll('#app :is(button, a[href], summary, textarea, input, [role=button], .zone)')].filter(e => seen(e)
            && !(e.matches('a') && getComputedStyle(e).display === 'inline') && !e.matches('input[type=file]')).map(e => [e, (e.closest('label') ?? e).getBoundingClientRect()])
            .filter(([, r]) => r.width > 0 && r.height > 0);
          for (const [e, r] of things)
            if (r.width < 55.5 || r.height < 55.5) faults.add(`small: ${name(e)} ${size(r)}`);
          const layer = e => e.closest('.head, .foot, .sheet-body, main, .status-panel, .strips') ?? e.parentElement;
          for (let i = 0; i < things.length; i++)
            for (let j = i + 1; j < things.length; j++) {
              const [a, r] = things[i], [b, o] = things[j];
              if (a.contains(b) || b.contains(a) || layer(a) !== layer(b) || (a.matches('.zone') && b.matches('.zone'))) continue;
              const dx = Math.max(r.left, o.left) - Math.min(r.right, o.right), dy = Math.max(r.top, o.top) - Math.min(r.bottom, o.bottom);
              if (dx < -1 && dy < -1) faults.add(`over one another: ${name(a)} and ${name(b)}`);
              else if (Math.max(dx, dy) < 7.5 && Math.min(dx, dy) < -1) faults.add(`${Math.round(Math.max(dx, dy))} px apart: ${name(a)} and ${name(b)}`);
            }

          // Words: each line of each text where it is drawn.
          const lines = [];
          const walk = document.createTreeWalker(document.getElementById('app'), NodeFilter.SHOW_TEXT);
          while (walk.nextNode()) {
            const text = walk.currentNode, e = text.parentElement;
            if (!text.data.trim() || !e || !seen(e) || framed(e) || e.closest('option, style, script, title, desc')) continue;
            const range = document.createRange();
            range.selectNodeContents(text);
            for (const r of range.getClientRects())
              if (r.width > 1 && r.height > 1) lines.push([e, r, layer(e)]);
            for (let box = e; box && box.id !== 'app'; box = box.parentElement) {
              const s = getComputedStyle(box);
              if (s.overflowX === 'visible' && s.overflowY === 'visible') continue;
              if (/auto|scroll/.test(s.overflowX + s.overflowY) || s.webkitLineClamp !== 'none') break; // it scrolls, or is cut on purpose
              if (box.matches('svg')) break; // a figure's height of line reaches past its digits
              const b = box.getBoundingClientRect();
              for (const r of range.getClientRects())
                if (r.right > b.right + 1 || r.left < b.left - 1 || r.bottom > b.bottom + 3 || r.top < b.top - 3) faults.add(`cut: ${name(e)}`);
            }
          }
          for (let i = 0; i < lines.length; i++)
            for (let j = i + 1; j < lines.length; j++) {
              const [a, r, of] = lines[i], [b, o, at] = lines[j];
              if (a === b || of !== at || a.closest('svg') !== b.closest('svg')) continue;
              const x = Math.min(r.right, o.right) - Math.max(r.left, o.left), y = Math.min(r.bottom, o.bottom) - Math.max(r.top, o.top);
              if (x > 2 && y > Math.min(r.height, o.height) * 0.4) faults.add(`words over words: ${name(a)} and ${name(b)}`);
            }
          return [...faults];
        }
        """;
}
