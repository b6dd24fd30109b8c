// What passes between this phone and the hub that serves it: requests signed by a key that can't be taken out of the browser
// (docs/decisions/keys-and-grants.md). Nothing here reads a record; what is sent is told by the app.

import { practice, prefix } from './area.js';

const keysName = 'farhold-keys', keyName = 'hub', offsetKey = prefix + 'hub-offset';
const patienceMs = 90_000;             // longer than two thousand entries take at 40 kbit/s
const packFrom = 400;                  // bytes from which packing is worth it
const encoder = new TextEncoder();

const base64 = bytes => {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
};
const fromBase64 = text => Uint8Array.from(atob(text), c => c.charCodeAt(0));
const hex = bytes => Array.from(bytes, b => b.toString(16).padStart(2, '0')).join('');
const digest = async bytes => new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));

// ---- the key ----

const asked = request => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

async function keys() {
  const opening = indexedDB.open(keysName, 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore('keys');
  const db = await asked(opening);
  db.onversionchange = () => db.close();
  return db;
}

async function inKeys(mode, work) {
  const db = await keys();
  try { return await asked(work(db.transaction('keys', mode, { durability: 'strict' }).objectStore('keys'))); } finally { db.close(); }
}

let known = null;

async function pair() {
  known ??= inKeys('readonly', store => store.get(keyName));
  try { return await known; } catch { known = null; return undefined; }
}

const told = async key => {
  const raw = new Uint8Array(await crypto.subtle.exportKey('raw', key.publicKey));
  return JSON.stringify({ key: base64(raw), thumb: hex(await digest(raw)) });
};

/** The public key and its thumb; empty where there is none, or none that can be used here. */
export async function key() {
  const held = practice ? undefined : await pair();
  return held ? told(held) : '';
}

/** Makes a key where there is none; empty where this browser can't keep one. */
export async function makeKey() {
  try {
    if (!await pair()) {
      const fresh = await crypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, false, ['sign', 'verify']);
      await inKeys('readwrite', store => store.put(fresh, keyName));
      known = null;
    }
    return await key();
  } catch { return ''; }
}

/** Forgets the key for good: this phone is nobody to the hub any more. */
export async function forgetKey() {
  known = null;
  localStorage.removeItem(offsetKey);
  await new Promise(done => {
    const request = indexedDB.deleteDatabase(keysName);
    request.onsuccess = request.onerror = request.onblocked = () => done();
  });
}

// ---- requests ----

const offset = () => Number(localStorage.getItem(offsetKey) ?? 0);

// RFC 9421 with ecdsa-p256-sha256. What stands for the body is a header: its digest, or on a sync that of its first line.
async function signed(method, path, cover, headers) {
  const held = await pair();
  const { thumb } = JSON.parse(await told(held));
  const names = ['@method', '@authority', '@path', ...cover.map(([name]) => name)];
  const created = Math.floor((Date.now() + offset()) / 1000);
  const nonce = hex(crypto.getRandomValues(new Uint8Array(12)));
  const parameters = `(${names.map(n => `"${n}"`).join(' ')});created=${created};keyid="${thumb}";nonce="${nonce}";alg="ecdsa-p256-sha256"`;
  const base = [
    `"@method": ${method}`, `"@authority": ${location.host.toLowerCase()}`, `"@path": ${path}`,
    ...cover.map(([name, value]) => `"${name}": ${value}`), `"@signature-params": ${parameters}`,
  ].join('\n');
  const signature = new Uint8Array(await crypto.subtle.sign({ name: 'ECDSA', hash: 'SHA-256' }, held.privateKey, encoder.encode(base)));
  for (const [name, value] of cover) headers.set(name, value);
  headers.set('Signature-Input', 'sig=' + parameters);
  headers.set('Signature', `sig=:${base64(signature)}:`);
}

async function coverOf(type, bytes) {
  if (!bytes) return [];
  const digested = async part => `sha-256=:${base64(await digest(part))}:`;
  if (type !== 'application/jsonl') return [['content-digest', await digested(bytes)]];
  const end = bytes.indexOf(10);
  return [['farhold-head', await digested(end < 0 ? bytes : bytes.subarray(0, end))]];
}

async function packed(bytes) {
  const stream = new Blob([bytes]).stream().pipeThrough(new CompressionStream('gzip'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

async function send(method, path, type, bytes) {
  const headers = new Headers();
  await signed(method, path, await coverOf(type, bytes), headers);
  if (bytes) headers.set('Content-Type', type);
  let body = bytes ?? undefined;
  if (type === 'application/jsonl' && bytes.length > packFrom && globalThis.CompressionStream) {
    body = await packed(bytes);
    headers.set('Content-Encoding', 'gzip');
  }
  return fetch(path, { method, headers, body, cache: 'no-store', signal: AbortSignal.timeout(patienceMs), redirect: 'error' });
}

const unreached = JSON.stringify({ status: 0, wait: 0, code: '', said: '', body: '' });

/**
 * Asks the hub; `bodyBase64` is empty for none. Answers JSON: the status (0: not reached), how many seconds to wait where it says so, the
 * code of a refusal, and the body in base64.
 */
export async function ask(method, path, type, bodyBase64) {
  const bytes = type ? fromBase64(bodyBase64) : null;
  try {
    let answer = await send(method, path, type, bytes);
    let problem = await problemOf(answer);
    if (problem?.code === 'clock' && problem.now) {
      // The phone's clock stays as it is; only signatures go by the hub's.
      localStorage.setItem(offsetKey, String(Math.round(Date.parse(problem.now) - Date.now())));
      answer = await send(method, path, type, bytes);
      problem = await problemOf(answer);
    }
    if (!isFromHub(answer)) return unreached;
    return JSON.stringify({
      status: answer.status,
      wait: Number(answer.headers.get('Retry-After') ?? 0),
      code: problem?.code ?? '',
      said: problem?.title ?? '',
      body: problem ? base64(encoder.encode(JSON.stringify(problem))) : base64(new Uint8Array(await answer.arrayBuffer())),
    });
  } catch {
    return unreached;
  }
}

// What else stands at this address, such as the page of a network that wants a password first, is not the hub.
const isFromHub = answer => answer.status === 204 || /^application\/(problem\+)?json|^text\/plain/.test(answer.headers.get('Content-Type') ?? '')
  || answer.headers.get('Content-Type') === 'application/jsonl';

const problemOf = async answer => answer.ok || !answer.headers.get('Content-Type')?.includes('problem+json') ? null
  : answer.json().catch(() => null);

// ---- the board ----

let listening = null;

/** Reads the hub's stream: calls back with name and data of each event, and with "ended" where it ends; ends the one before. */
export function listen(path, callback) {
  listening?.abort();
  const gone = listening = new AbortController();
  read(path, callback, gone.signal).catch(() => { }).then(() => { if (!gone.signal.aborted) callback('ended', ''); });
}

export function stopListening() {
  listening?.abort();
  listening = null;
}

async function read(path, callback, signal) {
  const headers = new Headers({ Accept: 'text/event-stream' });
  await signed('GET', path, [], headers);
  const answer = await fetch(path, { headers, cache: 'no-store', signal });
  if (!answer.ok) return;
  const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
  let text = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    text += value;
    for (let end; (end = text.indexOf('\n\n')) >= 0; text = text.slice(end + 2)) {
      const lines = text.slice(0, end).split('\n');
      const field = name => lines.filter(l => l.startsWith(name + ': ')).map(l => l.slice(name.length + 2)).join('\n');
      callback(field('event'), field('data'));
    }
  }
}

// ---- when to try again ----

/** Calls back when the phone may have come back to a network, or to somebody who looks at it. */
export function onWake(callback) {
  addEventListener('online', () => callback());
  addEventListener('pageshow', () => callback());
  addEventListener('visibilitychange', () => { if (!document.hidden) callback(); });
}

/** Whether the browser thinks that there is a network at all. */
export const isOnline = () => navigator.onLine;

/** The code of an invitation in the address, which it is then taken out of. */
export function invitation() {
  const code = /^#([a-z0-9-]{8,20})$/i.exec(location.hash)?.[1] ?? '';
  if (code) history.replaceState(history.state, '', location.pathname);
  return code;
}

