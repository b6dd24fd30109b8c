// Opens, reads and writes the database of the phone; store.js says what is in it. What is written goes to a second copy too, and comes
// back from there when the browser has lost the database (docs/decisions/second-copy.md).

import { practice } from './area.js';
import * as copy from './second-copy.js';

export const everything = ['lines', 'asides', 'casualties', 'batches', 'facts'];

const patienceMs = 8000;
const sweptKey = 'swept';              // among the facts: how often something was taken away
let opening = null;
let restored = 0;

/** How many entries came back from the second copy since this page was loaded. */
export const broughtBack = () => restored;

function open() {
  opening ??= connect().then(async db => {
    try { await mend(db); } catch { /* the database stands alone */ }
    return db;
  });
  opening.catch(() => { opening = null; });
  return opening;
}

function connect() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(practice ? 'farhold-practice' : 'farhold', 2);
    request.onupgradeneeded = () => {
      for (const name of everything)
        if (!request.result.objectStoreNames.contains(name)) request.result.createObjectStore(name);
    };
    request.onsuccess = () => {
      const db = request.result;
      db.onclose = () => { opening = null; };
      db.onversionchange = () => { db.close(); opening = null; };
      resolve(db);
    };
    request.onerror = () => reject(request.error);
  });
}

export async function reopen() {
  const old = opening;
  opening = null;
  try { (await old)?.close(); } catch { /* it never opened */ }
  return open();
}

/** Deletes a database as a whole; another tab that has it open gives it up (onversionchange). */
export const wipe = name => new Promise(resolve => {
  if (name === (practice ? 'farhold-practice' : 'farhold')) opening?.then(db => db.close(), () => { });
  const request = indexedDB.deleteDatabase(name);
  request.onsuccess = request.onerror = request.onblocked = () => resolve();
});

// Resolves only on `complete`; the work's own result comes through `give`. In whichever tab, a readwrite transaction
// begins only once every other over the same stores has ended: what `work` reads still holds when it writes.
export async function write(stores, work) {
  const db = await open();
  const puts = [];
  let sweeps = false;
  const result = await transact(db, [...new Set([...stores, 'facts'])], (tx, give) => work(noting(tx, puts, () => {
    if (!sweeps) counted(tx);
    sweeps = true;
  }), give));
  if (sweeps) await rewrite(db);
  else if (puts.length > 0) await copy.add(puts);
  return result;
}

function transact(db, stores, work) {
  return new Promise((resolve, reject) => {
    const tx = db.transaction(stores, 'readwrite', { durability: 'strict' });
    let result;
    const late = setTimeout(() => {
      try { tx.abort(); } catch { /* already committing; the retry looks for the line first */ }
      reject(new Error('The phone\'s storage does not answer.'));
    }, patienceMs);
    tx.oncomplete = () => { clearTimeout(late); resolve(result); };
    tx.onabort = () => { clearTimeout(late); reject(tx.error ?? new Error('The phone took the entry back.')); };
    work(tx, value => { result = value; });
  });
}

export async function read(work) {
  const attempt = async () => reading(await open(), work);
  try { return await attempt(); } catch { await reopen(); return attempt(); }
}

function reading(db, work) {
  return new Promise((resolve, reject) => {
    const tx = db.transaction(everything, 'readonly');
    tx.onabort = () => reject(tx.error ?? new Error('Reading was broken off.'));
    work(tx, resolve);
  });
}

// ---- the second copy ----

// The transaction, noting what is put, and that something is taken away.
function noting(tx, puts, sweeping) {
  const note = (store, how) => (v, k) => { puts.push({ s: store.name, k, v }); return store[how](v, k); };
  const sweep = (store, how) => key => { sweeping(); return store[how](key); };
  return {
    commit: () => tx.commit?.(),
    objectStore: name => {
      const store = tx.objectStore(name);
      return {
        get: key => store.get(key), getAll: key => store.getAll(key), count: key => store.count(key),
        openCursor: (range, way) => store.openCursor(range, way),
        add: note(store, 'add'), put: note(store, 'put'), delete: sweep(store, 'delete'), clear: sweep(store, 'clear'),
      };
    },
  };
}

function counted(tx) {
  const facts = tx.objectStore('facts');
  facts.get(sweptKey).onsuccess = event => facts.put((event.target.result ?? 0) + 1, sweptKey);
}

// Requests of one transaction are answered in order: with the last one all are.
function all(db) {
  return reading(db, (tx, resolve) => {
    const puts = [];
    let swept = 0;
    for (const s of everything) {
      const store = tx.objectStore(s);
      let keys;
      store.getAllKeys().onsuccess = event => { keys = event.target.result; };
      store.getAll().onsuccess = event => {
        event.target.result.forEach((v, i) => {
          if (s === 'facts' && keys[i] === sweptKey) swept = v;
          else puts.push({ s, k: keys[i], v });
        });
        if (s === everything.at(-1)) resolve({ swept, puts });
      };
    }
  });
}

async function rewrite(db) {
  const { swept, puts } = await all(db);
  await copy.rewrite(swept, puts);
}

function held(db) {
  return reading(db, (tx, resolve) => {
    const counts = {};
    let swept = 0;
    for (const s of everything)
      tx.objectStore(s).count().onsuccess = event => { counts[s] = event.target.result; };
    const facts = tx.objectStore('facts');
    facts.count(sweptKey).onsuccess = event => { counts.facts -= event.target.result; };
    facts.get(sweptKey).onsuccess = event => { swept = event.target.result ?? 0; resolve({ swept, counts }); };
  });
}

// What the copy holds and the database does not is put back, unless the database has taken something away since: then the copy is old.
async function mend(db) {
  const here = await held(db);
  const there = await copy.state(everything.every(s => here.counts[s] === 0));
  if (!there) return;
  const more = (a, b) => everything.some(s => (a.counts[s] ?? 0) > (b.counts[s] ?? 0));
  const old = here.swept > (there.swept ?? 0);
  if (!old && more(there, here)) {
    const puts = await copy.values();
    if (!puts) return;
    await transact(db, everything, tx => {
      for (const { s, k, v } of puts)
        tx.objectStore(s).count(k).onsuccess = event => {
          if (event.target.result > 0) return;
          tx.objectStore(s).put(v, k);
          if (s === 'lines') restored++;
        };
      if (there.swept) tx.objectStore('facts').put(there.swept, sweptKey);
    });
    if (more(here, there)) await rewrite(db);
  } else if (old || there.swept === null || more(here, there)) await rewrite(db);
}
