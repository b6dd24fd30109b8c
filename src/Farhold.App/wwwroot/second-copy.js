// A second copy of all that is stored, in a file of its own (docs/decisions/second-copy.md): a browser that finds its database spoilt
// throws all of it away. Best effort: where the browser has no such file, or no room, the database stands alone.

import { practice } from './area.js';

const patienceMs = 2000;
const emptyPatienceMs = 20_000;         // where the database is empty, what may be all there is is waited for
const asked = new Map();
let next = 0;
let worker = practice ? null : start(); // practice can be lost

function start() {
  try {
    const fresh = new Worker(new URL('second-copy-worker.js', import.meta.url));
    fresh.onmessage = event => {
      asked.get(event.data.id)?.(event.data);
      asked.delete(event.data.id);
    };
    fresh.onerror = () => give(null);
    return fresh;
  } catch { return null; }
}

// The worker is not to be had: whoever waits goes on without.
function give(up) {
  worker = up;
  for (const answer of asked.values()) answer({ error: 'no worker' });
  asked.clear();
}

function ask(act, { lines, ms = patienceMs } = {}) {
  if (!worker) return Promise.resolve(null);
  return new Promise(resolve => {
    const id = next++;
    const late = setTimeout(() => { asked.delete(id); resolve(null); }, ms);
    asked.set(id, ({ value, error }) => { clearTimeout(late); resolve(error === undefined ? value ?? true : null); });
    worker.postMessage({ id, act, lines });
  });
}

/** How often something was taken away (null: no copy yet) and how many values of each store it holds; null where there can be none. */
export const state = empty => ask('state', { ms: empty ? emptyPatienceMs : patienceMs });

/** All values, as [{ s: store, k: key, v: value }]; null where it can't be read. */
export const values = async () => (await ask('read', { ms: emptyPatienceMs }))?.map(said => ({ ...said, v: thawed(said.v) }));

/** Adds values that were stored. Answers once they are on the disk, or after two seconds. */
export const add = puts => ask('append', { lines: puts.map(written) });

/** Begins again with what is stored now: what was taken away is gone from the file. */
export const rewrite = (swept, puts) => ask('rewrite', { lines: [JSON.stringify({ swept }), ...puts.map(written)], ms: emptyPatienceMs });

const written = ({ s, k, v }) => JSON.stringify({ s, k, v: frozen(v) });

// Bytes as base64; nothing else of what is stored is more than JSON holds.
const frozen = v => v?.bytes instanceof Uint8Array ? { ...v, bytes: btoa(Array.from(v.bytes, b => String.fromCharCode(b)).join('')) } : v;
const thawed = v => typeof v?.bytes === 'string' ? { ...v, bytes: Uint8Array.from(atob(v.bytes), c => c.charCodeAt(0)) } : v;
