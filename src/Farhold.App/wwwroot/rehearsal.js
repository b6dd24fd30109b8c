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

export function keepRun(text) {
  try { localStorage.setItem(runKey, text); return true; } catch { return false; }
}

function clearKeys() {
  for (const key of Object.keys(localStorage)) if (key.startsWith(practised)) localStorage.removeItem(key);
}

async function clear() {
  clearKeys();
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
  addEventListener('pagehide', clearKeys); // the page goes on until it is left, and writes what it wrote before
  await clear();
  sessionStorage.removeItem(marker);
  location.assign(new URL(address, document.baseURI));
}
