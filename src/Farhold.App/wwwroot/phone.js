// Small things the phone does for the app.

import { prefix, stored } from './area.js';

export { quiet } from './breath.js';
export { replaced } from './taps.js';

export const get = key => stored(key) ?? '';

export function set(key, value) {
  try { localStorage.setItem(prefix + key, value); return true; } catch { return false; }
}

// A page that is closed or loaded anew is hidden first; one that is put aside may never be seen again.
export function onHidden(callback) {
  addEventListener('visibilitychange', () => { if (document.hidden) callback(); });
  addEventListener('pagehide', () => callback());
}

export const languages = () => (navigator.languages?.length ? navigator.languages : [navigator.language ?? 'en']).join(' ');

export function speaks(language, direction) {
  document.documentElement.lang = language;
  document.documentElement.dir = direction;
}

// The mark of the keys as Texts.KeysMark has it, then a line for each text; nothing where the file can't be had.
// The page began to fetch it before the app was there (first.js).
export async function texts(language) {
  const told = await globalThis.farholdTexts(language);
  if (!told) return '';
  let mark = 2166136261;
  for (const key of Object.keys(told))
    for (const c of key + '\n') mark = Math.imul(mark ^ c.charCodeAt(0), 16777619);
  const lines = Object.values(told).map(text => text.replace(/\{(\d):[^}]*\}/g, '{$1}'));
  return [(mark >>> 0).toString(16).padStart(8, '0'), ...lines].join('\n');
}

const saidByCore = ['de', 'es']; // as JoinTexts of the project joins them

// The same for what the core says: one JSON file for all its parts, nothing where it can't be had.
export async function coreTexts(language) {
  if (!saidByCore.includes(language)) return '';
  try {
    const answer = await fetch(new URL('core.' + language + '.json', document.baseURI));
    return answer.ok ? (await answer.text()).replace(/\{(\d):[^}"]*\}/g, '{$1}') : '';
  } catch { return ''; }
}

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
  const up = () => place?.scrollIntoView({ block: 'start', behavior: 'instant' });
  up();
  requestAnimationFrame(up); // what else was drawn in the same breath may have moved it
  (place?.querySelector('.step-text') ?? place?.querySelector('h1, h2'))?.focus({ preventScroll: true });
}

export async function copy(text) {
  try { await navigator.clipboard.writeText(text); return true; } catch { return false; }
}

export function look(name) {
  document.documentElement.dataset.look = name;
}

// As the style sheet has it for two panes.
const twoPanes = matchMedia('(min-width: 68rem) and (min-height: 30.01rem)');

export const isWide = () => twoPanes.matches;

// As the style sheet has it for a foot that stays in sight, below a column of its own.
const tall = matchMedia('(min-width: 17.01rem) and (max-width: 47.99rem) and (min-height: 36rem)');

export const docksKeys = () => tall.matches;

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
