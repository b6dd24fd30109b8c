// The record of every casualty on this phone. Lines are only ever added.
// lines      [casualty, device, number] -> the exact JSON line
// asides     [casualty, sha-256]        -> { bytes, why }: unreadable or conflicting lines, kept as they came
// casualties id                         -> { id, alias, practice, opened }
// facts      "device"                   -> this phone's id

import { digest } from './digest.js';

const patienceMs = 8000;
const tail = [];                       // sorts after every string and number in a key
const rescuePrefix = 'farhold-rescue-';
const canaryKey = 'farhold-canary';
const news = new BroadcastChannel('farhold-log');
let opening = null;
let told = null;

function open() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open('farhold', 1);
    request.onupgradeneeded = () => {
      for (const name of ['lines', 'asides', 'casualties', 'facts']) request.result.createObjectStore(name);
    };
    request.onsuccess = () => {
      const db = request.result;
      db.onclose = () => { opening = null; };
      db.onversionchange = () => { db.close(); opening = null; };
      resolve(db);
    };
    request.onerror = () => { opening = null; reject(request.error); };
  });
  return opening;
}

async function reopen() {
  const old = opening;
  opening = null;
  try { (await old)?.close(); } catch { /* it never opened */ }
  return open();
}

// Resolves only on `complete`; the work's own result comes through `give`. In whichever tab, a readwrite transaction
// begins only once every other over the same stores has ended: what `work` reads still holds when it writes.
async function write(stores, work) {
  const db = await open();
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

async function read(work) {
  const attempt = async () => {
    const db = await open();
    return new Promise((resolve, reject) => {
      const tx = db.transaction(['lines', 'asides', 'casualties', 'facts'], 'readonly');
      tx.onabort = () => reject(tx.error ?? new Error('Reading was broken off.'));
      work(tx, resolve);
    });
  };
  try { return await attempt(); } catch { await reopen(); return attempt(); }
}

const ofDevice = (casualty, device) => IDBKeyRange.bound([casualty, device, 0], [casualty, device, Infinity]);
const ofCasualty = casualty => IDBKeyRange.bound([casualty], [casualty, tail]);
// Each line holds the SHA-256 of the one its device wrote before it (docs/decisions/chained-entries.md).
const lineOf = (device, number, before, body) => `{"id":"${device}-${number}",`
  + (before === undefined ? '' : `"previous":"${digest(new TextEncoder().encode(before))}",`) + body.slice(1);
const numberOf = line => Number(/^\{"id":"[^"]*-(\d+)"/.exec(line)[1]);
const bodyOf = line => '{' + line.replace(/^\{"id":"[^"]*",(?:"previous":"[^"]*",)?/, '');

function addNext(casualty, device, body, head, again) {
  return write(head ? ['lines', 'casualties'] : ['lines'], (tx, give) => {
    const lines = tx.objectStore('lines');
    const add = (last, before) => {
      const number = last + 1;
      const line = lineOf(device, number, before, body);
      lines.add(line, [casualty, device, number]);
      if (head) tx.objectStore('casualties').put(head, casualty);
      give({ ok: true, line, number });
      tx.commit?.();
    };
    if (again) {
      lines.getAll(ofDevice(casualty, device)).onsuccess = event => {
        const all = event.target.result;
        const found = all.findIndex(line => bodyOf(line) === body);
        if (found >= 0) give({ ok: true, line: all[found], number: numberOf(all[found]) });
        else lastLine(lines, casualty, device, add);
      };
    } else lastLine(lines, casualty, device, add);
  });
}

function lastLine(lines, casualty, device, then) {
  lines.openCursor(ofDevice(casualty, device), 'prev').onsuccess = event =>
    then(event.target.result?.key[2] ?? 0, event.target.result?.value);
}

async function addSurely(casualty, device, body, head, again) {
  try {
    return await addNext(casualty, device, body, head, again);
  } catch {
    await reopen();
    return addNext(casualty, device, body, head, true);
  }
}

// ---- what the app calls; every answer is JSON text ----

/** Adds one entry; `headJson` opens a new casualty in the same transaction. Never answers ok before `complete`. */
export async function append(casualty, device, body, headJson) {
  const head = headJson ? JSON.parse(headJson) : null;
  try {
    const answer = await addSurely(casualty, device, body, head, false);
    setCanary(casualty, device, answer.number);
    news.postMessage(casualty);
    return JSON.stringify(answer);
  } catch (error) {
    const key = rescuePrefix + crypto.randomUUID();
    return JSON.stringify({ ok: false, reason: describe(error), key, rescued: putRescue(key, { casualty, device, body, head }) });
  }
}

/** Tries every rescued entry again. Idempotent: a line already stored is only forgotten from the rescue. */
export async function replay() {
  const left = [];
  for (const key of Object.keys(localStorage).filter(k => k.startsWith(rescuePrefix))) {
    let kept = null;
    try {
      kept = JSON.parse(localStorage.getItem(key));
      const answer = await addSurely(kept.casualty, kept.device, kept.body, kept.head, true);
      localStorage.removeItem(key);
      setCanary(kept.casualty, kept.device, answer.number);
      news.postMessage(kept.casualty);
    } catch (error) {
      left.push({ key, casualty: kept?.casualty ?? '', body: kept?.body ?? localStorage.getItem(key), reason: describe(error), rescued: true });
    }
  }
  return JSON.stringify(left);
}

export async function list() {
  return JSON.stringify(await read((tx, resolve) => {
    const heads = new Map();
    tx.objectStore('casualties').getAll().onsuccess = event => {
      for (const head of event.target.result) heads.set(head.id, { ...head, entries: 0, devices: {} });
    };
    tx.objectStore('lines').getAllKeys().onsuccess = event => {
      for (const [id, device, number] of event.target.result) {
        if (!heads.has(id)) heads.set(id, { id, alias: id, practice: false, opened: '', entries: 0, devices: {} });
        const head = heads.get(id);
        head.entries++;
        head.devices[device] = number;
      }
      resolve([...heads.values()]);
    };
  }));
}

/** The lines as they are, each ended by a line feed (none holds one), then what is aside, as JSON: a long record is read fast. */
export async function lines(casualty) {
  return read((tx, resolve) => {
    let known;
    tx.objectStore('lines').getAll(ofCasualty(casualty)).onsuccess = event => { known = event.target.result; };
    tx.objectStore('asides').getAll(ofCasualty(casualty)).onsuccess = event => resolve(known.map(line => line + '\n').join('')
      + JSON.stringify(event.target.result.map(aside => ({ text: new TextDecoder().decode(aside.bytes), why: aside.why }))));
  });
}

/** Merges lines of a record file in one transaction: all of them, or none. */
export async function merge(casualty, headJson, linesJson) {
  const incoming = JSON.parse(linesJson).map(l => ({ ...l, bytes: Uint8Array.from(atob(l.base64), c => c.charCodeAt(0)) }));
  for (const line of incoming) line.hash = await sha256(line.bytes);
  const answer = await write(['lines', 'asides', 'casualties'], (tx, give) => {
    const count = { added: 0, same: 0, conflicting: 0, unreadable: 0 };
    give(count);
    if (headJson) tx.objectStore('casualties').put(JSON.parse(headJson), casualty);
    const known = tx.objectStore('lines');
    const asides = tx.objectStore('asides');
    const aside = (line, why) => {
      asides.put({ bytes: line.bytes, why }, [casualty, line.hash]);
      count[why]++;
    };
    for (const line of incoming) {
      if (!line.device) { aside(line, 'unreadable'); continue; }
      const key = [casualty, line.device, line.number];
      const text = new TextDecoder().decode(line.bytes);
      known.get(key).onsuccess = event => {
        if (event.target.result === undefined) { known.add(text, key); count.added++; }
        else if (event.target.result === text) count.same++;
        else aside(line, 'conflicting');
      };
    }
  });
  news.postMessage(casualty);
  return JSON.stringify(answer);
}

/** The record file: every line as it came, then what could not be read or conflicts, as it came. */
export async function recordFile(casualty) {
  return read((tx, resolve) => {
    const parts = [];
    tx.objectStore('lines').getAll(ofCasualty(casualty)).onsuccess = event => {
      for (const line of event.target.result) parts.push(line, '\n');
    };
    tx.objectStore('asides').getAll(ofCasualty(casualty)).onsuccess = event => {
      for (const aside of event.target.result) parts.push(aside.bytes, '\n');
      resolve(new Blob(parts, { type: 'application/jsonl' }));
    };
  });
}

export async function download(casualty, fileName) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(await recordFile(casualty));
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** This phone's id, made once. After an eviction it is a new one, since numbering starts again. */
export async function device() {
  const known = await read((tx, resolve) => {
    tx.objectStore('facts').get('device').onsuccess = event => resolve(event.target.result);
  });
  if (known) return known;
  const fresh = shortId(6);
  try {
    return await write(['facts'], (tx, give) => {
      const facts = tx.objectStore('facts');
      facts.get('device').onsuccess = event => {
        if (!event.target.result) facts.add(fresh, 'device');
        give(event.target.result ?? fresh);
      };
    });
  } catch {
    return fresh;                      // no room even for this; entries will say so themselves
  }
}

export function shortId(length) {
  const letters = 'abcdefghjkmnpqrstuvwxyz23456789';
  // 248 = 8 × 31: larger bytes are drawn again so that every letter is as likely.
  let id = '';
  while (id.length < length) {
    const [byte] = crypto.getRandomValues(new Uint8Array(1));
    if (byte < 248) id += letters[byte % 31];
  }
  return id;
}

/** Whether storage is protected, how much there is, and which records are shorter than they once were. */
export async function health(askToPersist) {
  const storage = navigator.storage;
  const persisted = askToPersist ? await storage?.persist?.() : await storage?.persisted?.();
  const { usage = 0, quota = 0 } = await storage?.estimate?.() ?? {};
  const heads = JSON.parse(await list());
  const shorter = [];
  for (const [casualty, devices] of Object.entries(canary())) {
    const head = heads.find(h => h.id === casualty);
    for (const [device, number] of Object.entries(devices))
      if ((head?.devices[device] ?? 0) < number) shorter.push({ casualty, expected: number, found: head?.devices[device] ?? 0 });
  }
  return JSON.stringify({ persisted: persisted === true, usage, quota, shorter });
}

export function forgetCanary() {
  localStorage.removeItem(canaryKey);
}

/** Calls back with the casualty's id when another tab, or this page before the app was up, has added to it. */
export function onNews(callback) {
  told = callback;
  news.onmessage = event => callback(event.data);
}

/** As `append`, for the page while the app is still starting; answers the object itself. */
export async function appendEarly(casualty, body) {
  const answer = JSON.parse(await append(casualty, await device(), body));
  if (answer.ok) told?.(casualty);
  return answer;
}

let leave = null;

/** Tells whether this tab is the first to show the casualty: "first" or "second"; again when that changes. */
export function watch(casualty, callback) {
  leave?.();
  const gone = new AbortController();
  const held = () => new Promise(release => { gone.signal.addEventListener('abort', release); });
  leave = () => gone.abort();
  if (!navigator.locks || !casualty) return;
  const name = 'farhold-view-' + casualty;
  navigator.locks.request(name, { ifAvailable: true }, lock => {
    if (gone.signal.aborted) return;
    if (lock) { callback('first'); return held(); }
    callback('second');
    navigator.locks.request(name, { signal: gone.signal }, () => { callback('first'); return held(); }).catch(() => { });
  });
}

function canary() {
  try { return JSON.parse(localStorage.getItem(canaryKey)) ?? {}; } catch { return {}; }
}

function setCanary(casualty, device, number) {
  const known = canary();
  known[casualty] = { ...known[casualty], [device]: Math.max(number, known[casualty]?.[device] ?? 0) };
  try { localStorage.setItem(canaryKey, JSON.stringify(known)); } catch { /* only a warning sign, not the record */ }
}

function putRescue(key, entry) {
  try { localStorage.setItem(key, JSON.stringify(entry)); return true; } catch { return false; }
}

async function sha256(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, b => b.toString(16).padStart(2, '0')).join('');
}

function describe(error) {
  return error?.name === 'QuotaExceededError' ? 'The phone\'s storage is full.' : String(error?.message ?? error);
}
