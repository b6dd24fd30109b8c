// Small things the phone does for the app.

export { quiet } from './breath.js';
export { replaced } from './taps.js';

export const get = key => localStorage.getItem('farhold-' + key) ?? '';

export function set(key, value) {
  try { localStorage.setItem('farhold-' + key, value); return true; } catch { return false; }
}

// A page that is closed or loaded anew is hidden first; one that is put aside may never be seen again.
export function onHidden(callback) {
  addEventListener('visibilitychange', () => { if (document.hidden) callback(); });
  addEventListener('pagehide', () => callback());
}

export const language = () => navigator.language ?? 'en';

// What was pressed last, and what of it opened the sheet that is shown.
let pressed, opener;
addEventListener('click', e => pressed = e.target.closest?.('button, a, summary, input'), true);
const named = control => (control.getAttribute('aria-label') ?? control.textContent).trim();

export function markOpener() {
  opener = pressed && { control: pressed, name: named(pressed) };
}

// A button that meanwhile does something else is not the one that was pressed.
export function backToOpener() {
  const { control, name } = opener ?? {};
  opener = undefined;
  if (control?.isConnected && named(control) === name) control.focus();
  if (!control || document.activeElement !== control) document.querySelector('h1')?.focus({ preventScroll: true });
}

// At once: nothing slides under a finger, so no motion has to be reduced either.
export function bringUp(id) {
  const place = document.getElementById(id);
  place?.scrollIntoView({ block: 'start', behavior: 'instant' });
  (place?.querySelector('.step-text') ?? place?.querySelector('h1, h2'))?.focus({ preventScroll: true });
}

export async function copy(text) {
  try { await navigator.clipboard.writeText(text); return true; } catch { return false; }
}

export function look(name) {
  document.documentElement.dataset.look = name;
}

export function room() {
  const place = document.getElementById('content');
  if (!place) return 0;
  const edges = getComputedStyle(place);
  return place.clientWidth - parseFloat(edges.paddingLeft) - parseFloat(edges.paddingRight);
}

export const timeZone = () => Intl.DateTimeFormat().resolvedOptions().timeZone ?? '';

// The zone's offsets from five years back to two ahead, as Phone/PhoneZone.cs reads them. Two changes within four weeks
// that take each other back are not seen.
export function offsets() {
  const east = second => Math.round(-60 * new Date(second * 1000).getTimezoneOffset());
  const step = 28 * 86_400, year = 366 * 86_400, now = Math.floor(Date.now() / 1000);
  const told = [east(now - 5 * year)];
  for (let from = now - 5 * year; from < now + 2 * year; from += step) {
    let low = from, high = from + step;
    const before = east(low), after = east(high);
    if (before === after) continue;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (east(middle) === before) low = middle; else high = middle;
    }
    told.push(high + ':' + after);
  }
  return told.join(' ');
}

// The level, negative while charging; not a number where the browser does not tell.
export async function battery() {
  try {
    const told = await navigator.getBattery();
    return told.charging ? -Math.max(told.level, Number.MIN_VALUE) : told.level;
  } catch { return NaN; }
}
