// The record of every casualty on this phone. Lines are only ever added; those of others can be taken back, a batch at a time.
// lines      [casualty, device, number] -> the exact JSON line
// asides     [casualty, sha-256]        -> { bytes, why }: lines unreadable, conflicting or claimed to be of this phone, kept as they came
// casualties id                         -> { id, alias, practice, opened }
// batches    [casualty, batch]          -> { id, at, source, opens, lines, asides, early }: what was taken in at once, and when
// facts      "device"                   -> this phone's id; "swept" -> how often something was taken away (database.js)

import { practice, prefix } from './area.js';
import { broughtBack, everything, read, reopen, wipe, write } from './database.js';
import { digest } from './digest.js';

export const hubBatch = 'hub';
const tail = [];                       // sorts after every string and number in a key
const rescuePrefix = prefix + 'rescue-';
const canaryKey = prefix + 'canary';
const tolerance = 120_000;             // as the clocks of two phones may differ (docs/decisions/which-clock.md)
const news = new BroadcastChannel(prefix + 'log');
let told = null;

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
      tx.commit();
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

/**
 * The lines as they are, each ended by a line feed (none holds one), then as JSON what is aside, and when lines came in that were
 * written later than that: a long record is read fast.
 */
export async function lines(casualty) {
  return read((tx, resolve) => {
    let known, asides;
    tx.objectStore('lines').getAll(ofCasualty(casualty)).onsuccess = event => { known = event.target.result; };
    tx.objectStore('asides').getAll(ofCasualty(casualty)).onsuccess = event => { asides = event.target.result; };
    tx.objectStore('batches').getAll(ofCasualty(casualty)).onsuccess = event => resolve(known.map(line => line + '\n').join('')
      + JSON.stringify({
        asides: asides.map(aside => ({ text: new TextDecoder().decode(aside.bytes), why: aside.why })),
        early: event.target.result.flatMap(batch => batch.early.map(early => early.id ? early : { id: early, at: batch.at })),
      }));
  });
}

/** Every line of a casualty as it came, those aside too: base64, one a line. */
export async function rawLines(casualty) {
  return read((tx, resolve) => {
    const encoder = new TextEncoder();
    const text = bytes => btoa(Array.from(bytes, b => String.fromCharCode(b)).join(''));
    let known;
    tx.objectStore('lines').getAll(ofCasualty(casualty)).onsuccess = event => { known = event.target.result; };
    tx.objectStore('asides').getAll(ofCasualty(casualty)).onsuccess = event =>
      resolve([...known.map(line => text(encoder.encode(line))), ...event.target.result.map(aside => text(aside.bytes))].join('\n'));
  });
}

/**
 * Merges lines of a record in one transaction: all of them, or none. What it adds is one batch; lines of this phone itself belong to
 * none, since they are its own word.
 */
export async function merge(casualty, headJson, linesJson, source) {
  const own = await device();
  const at = new Date(Date.now());
  const incoming = JSON.parse(linesJson).map(l => ({ ...l, bytes: Uint8Array.from(atob(l.base64), c => c.charCodeAt(0)) }));
  for (const line of incoming) line.hash = await sha256(line.bytes);
  const answer = await write(['lines', 'asides', 'casualties', 'batches'], (tx, give) => {
    // What a hub brings, bit by bit, is one batch that is not offered to be taken back: it would come again.
    const batch = { id: source === hubBatch ? hubBatch : at.toISOString() + '-' + shortId(4), at: at.toISOString(), source, opens: false, lines: [], asides: [], early: [] };
    const count = { added: 0, same: 0, conflicting: 0, unreadable: 0, claimed: 0, batch: batch.id };
    give(count);
    const heads = tx.objectStore('casualties');
    const known = tx.objectStore('lines');
    const asides = tx.objectStore('asides');
    const aside = (line, why) => {
      const key = [casualty, line.hash];
      asides.count(key).onsuccess = event => { if (event.target.result === 0) batch.asides.push(line.hash); };
      asides.put({ bytes: line.bytes, why }, key);
      count[why]++;
    };
    heads.count(casualty).onsuccess = event => {
      batch.opens = event.target.result === 0;
      if (headJson) heads.put(JSON.parse(headJson), casualty);
    };
    lastLine(known, casualty, own, last => {
      // What this phone wrote of the casualty, as far as it knows: a line beyond that says it is of this phone and is not.
      const wrote = Math.max(last, canary()[casualty]?.[own] ?? 0);
      for (const line of incoming) {
        if (!line.device) { aside(line, 'unreadable'); continue; }
        if (line.device === own && wrote > 0 && line.number > wrote) { aside(line, 'claimed'); continue; }
        const key = [casualty, line.device, line.number];
        const text = new TextDecoder().decode(line.bytes);
        known.get(key).onsuccess = event => {
          if (event.target.result === undefined) {
            known.add(text, key);
            count.added++;
            if (line.device === own) return;
            batch.lines.push([line.device, line.number]);
            if (!practice && recordedAt(text) > at.getTime() + tolerance) batch.early.push({ id: `${line.device}-${line.number}`, at: batch.at });
          } else if (event.target.result === text) count.same++;
          else aside(line, 'conflicting');
        };
      }
      // Requests of one transaction are answered in order: by then every line has its answer.
      const batches = tx.objectStore('batches');
      heads.count(casualty).onsuccess = () => batches.get([casualty, batch.id]).onsuccess = event => {
        const before = event.target.result;
        for (const part of ['lines', 'asides', 'early']) batch[part] = [...before?.[part] ?? [], ...batch[part]];
        if (batch.lines.length + batch.asides.length > 0 || batch.opens) batches.put(batch, [casualty, batch.id]);
        else count.batch = '';
      };
    });
  });
  news.postMessage(casualty);
  return JSON.stringify(answer);
}

/** What was taken in, a batch at a time, the newest first. */
export async function batches(casualty) {
  return JSON.stringify(await read((tx, resolve) => {
    tx.objectStore('batches').getAll(ofCasualty(casualty)).onsuccess = event => resolve(event.target.result.reverse()
      .filter(batch => batch.id !== hubBatch)
      .map(({ id, at, source, lines, asides }) => ({ id, at, source, count: lines.length + asides.length })));
  }));
}

/** Takes back all that one batch added, in one transaction; a casualty that it opened and that holds nothing else goes with it. */
export async function takeBack(casualty, id) {
  await write(['lines', 'asides', 'casualties', 'batches'], tx => {
    const batches = tx.objectStore('batches');
    const lines = tx.objectStore('lines');
    batches.get([casualty, id]).onsuccess = event => {
      const batch = event.target.result;
      if (!batch) return;
      for (const [device, number] of batch.lines) lines.delete([casualty, device, number]);
      for (const hash of batch.asides) tx.objectStore('asides').delete([casualty, hash]);
      batches.delete([casualty, id]);
      if (batch.opens) lines.count(ofCasualty(casualty)).onsuccess = left => {
        if (left.target.result === 0) tx.objectStore('casualties').delete(casualty);
      };
    };
  });
  news.postMessage(casualty);
}

/** Erases a casualty and all that this phone keeps of it. */
export async function erase(casualty) {
  await write(['lines', 'asides', 'casualties', 'batches'], tx => {
    for (const name of ['lines', 'asides', 'batches']) tx.objectStore(name).delete(ofCasualty(casualty));
    tx.objectStore('casualties').delete(casualty);
  });
  for (const key of Object.keys(localStorage))
    if (key.startsWith(rescuePrefix) ? rescuedOf(key) === casualty : key.endsWith('-' + casualty)) localStorage.removeItem(key);
  const { [casualty]: gone, ...rest } = canary();
  localStorage.setItem(canaryKey, JSON.stringify(rest));
  news.postMessage(casualty);
}

/** Erases every casualty and setting; this phone has another id afterwards. */
export async function eraseAll() {
  await write(everything, tx => { for (const name of everything) tx.objectStore(name).clear(); });
  for (const key of Object.keys(localStorage)) if (key.startsWith(prefix)) localStorage.removeItem(key);
  if (!practice) for (const other of ['farhold-practice', 'farhold-keys']) await wipe(other);
  news.postMessage('');
}

function rescuedOf(key) {
  try { return JSON.parse(localStorage.getItem(key)).casualty; } catch { return null; }
}

function recordedAt(text) {
  try { return Date.parse(JSON.parse(text).recorded); } catch { return NaN; }
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

/** 128 random bits in base32 (RFC 4648, small letters, unpadded): who a casualty is, on whatever phone. */
export function identity() {
  const letters = 'abcdefghijklmnopqrstuvwxyz234567';
  let [bits, held, id] = [0, 0, ''];
  for (const byte of crypto.getRandomValues(new Uint8Array(16))) {
    [bits, held] = [(bits << 8) | byte, held + 8];
    for (; held >= 5; held -= 5) id += letters[(bits >>> (held - 5)) & 31];
    bits &= 31;
  }
  return id + letters[(bits << (5 - held)) & 31];
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
  return JSON.stringify({ persisted: persisted === true, usage, quota, shorter, broughtBack: broughtBack() });
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
  const name = prefix + 'view-' + casualty;
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
