// Which tab rehearses, and what is kept of a rehearsal: its run in the practice area, and a line of each in the real one.

import { practice, practised } from './area.js';
import { wipe } from './database.js';

const marker = 'farhold-rehearsing';
const runKey = practised + 'run';
const pastKey = 'farhold-rehearsals';

export const rehearses = () => practice;

export const past = () => localStorage.getItem(pastKey) ?? '';

export function keepPast(text) {
  try { localStorage.setItem(pastKey, text); return true; } catch { return false; }
}

/** The run that was begun in whichever tab, and not ended. */
export const run = () => localStorage.getItem(runKey) ?? '';

// A page goes on until it is left, and keeps its run once more as it goes out of sight.
let ended = false;

export function keepRun(text) {
  if (ended) return true;
  try { localStorage.setItem(runKey, text); return true; } catch { return false; }
}

async function clear() {
  for (const key of Object.keys(localStorage)) if (key.startsWith(practised)) localStorage.removeItem(key);
  await wipe('farhold-practice');
}

/** From here on this tab rehearses; nothing of an earlier rehearsal is left. */
export async function begin(text) {
  await clear();
  if (!keepRun(text)) return false;
  return goOn();
}

export function goOn() {
  try { sessionStorage.setItem(marker, 'yes'); } catch { return false; }
  location.assign(document.baseURI);
  return true;
}

/** The tab is real again. */
export async function end(address) {
  ended = true;
  await clear();
  sessionStorage.removeItem(marker);
  location.assign(new URL(address, document.baseURI));
}
