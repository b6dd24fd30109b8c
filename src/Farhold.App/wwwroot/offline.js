// The offline copy: which build is served, whether a newer one is ready, whether the copy is whole, and whether what the address
// offers now is of those who made it.
import './trust.js';

const pointers = 'farhold-serving';
const filesOf = version => 'farhold-files-' + version;
const manifestName = 'farhold-manifest.json';
const listName = 'farhold-list.js', signaturesName = 'farhold-signatures.json';
let registration = null;
let refused = !('serviceWorker' in navigator);
let foreign = false;
let said = () => { };

const pointer = async name => (await (await caches.open(pointers)).match(name))?.text();

export async function start(callback) {
  said = callback;
  // Held while this tab lives: switching counts the tabs by it.
  navigator.locks?.request('farhold-tab', { mode: 'shared' }, () => new Promise(() => { }));
  if (refused) return;
  // Not waited for: a browser that refuses or never answers must not keep the app from starting.
  const refuse = async () => { refused = !await navigator.serviceWorker.getRegistration().catch(() => null); callback('refused'); };
  navigator.serviceWorker.register('service-worker.js', { updateViaCache: 'none' }).then(made => {
    if (!made) return refuse(); // blocked without being refused
    registration = made;
    follow(callback);
  }, refuse);
}

function follow(callback) {
  const watch = worker => worker?.addEventListener('statechange', () => callback(worker.state));
  watch(registration.installing);
  // The browser looks for another worker on its own, and takes whatever it finds.
  registration.addEventListener('updatefound', () => { watch(registration.installing); doubt().catch(() => { }); });
}

/** Looks for a newer build; offline this finds nothing and says nothing. A build of others is not asked for. */
export async function look() {
  try {
    await doubt();
    if (!foreign) await registration?.update();
  } catch { /* no network, or a half-finished deployment */ }
}

// One question after the other: an answer that was long under way must not stand over a later one.
let asked = Promise.resolve();
const doubt = () => asked = asked.catch(() => { }).then(judgeOffered);

async function judgeOffered() {
  if (!self.caches || !(await trust.pins()).length) return;
  const before = foreign;
  foreign = (await trust.offered()).verdict === 'foreign';
  if (foreign !== before) said('offered');
}

export async function state() {
  if (!self.caches || refused) return JSON.stringify({ able: false, serving: '', ready: '', installing: false, tabs: 1, foreign });
  const serving = await pointer('current') ?? '';
  const latest = await pointer('latest') ?? '';
  const locks = await navigator.locks?.query();
  return JSON.stringify({
    able: true,
    serving,
    ready: latest && serving && latest !== serving ? latest : '',
    installing: Boolean(registration?.installing),
    tabs: locks?.held.filter(l => l.name === 'farhold-tab').length ?? 1,
    foreign,
  });
}

/** Serves the newer build from the next page on. The caller has made sure that nothing is open. */
export async function change() {
  const latest = await pointer('latest');
  await doubt().catch(() => { });
  if (!latest || foreign) return;
  await (await caches.open(pointers)).put('current', new Response(latest));
  const waiting = registration?.waiting;
  if (waiting) {
    const taken = new Promise(done => navigator.serviceWorker.addEventListener('controllerchange', done, { once: true }));
    waiting.postMessage('take-over');
    await taken;
  }
  location.replace(document.baseURI);
}

/** Hashes every file of the copy again and compares it with the build's list; `bad` names what differs or is missing. `signed` says by
 *  which of the known keys the list is signed, short enough to compare by eye; it is empty where no key is known. */
export async function verify() {
  const serving = await pointer('current');
  const cache = serving && await caches.open(filesOf(serving));
  const manifest = cache && await (await cache.match(manifestName))?.json();
  if (!manifest) return JSON.stringify({ files: 0, bad: [], signed: '' });
  const bad = [];
  for (const { url, hash } of manifest.assets) {
    const file = await cache.match(url);
    if (!file || await trust.digest(await file.arrayBuffer()) !== hash) bad.push(url);
  }
  const keys = await trust.pins();
  if (keys.length && !await signed(cache, manifest, keys)) bad.push('service-worker-signatures.json');
  return JSON.stringify({ files: manifest.assets.length, bad, signed: keys.length ? await print(keys) : '' });
}

async function signed(cache, manifest, keys) {
  try {
    const list = await (await cache.match(listName)).arrayBuffer();
    const text = new TextDecoder().decode(list);
    return manifest.assets.every(a => text.includes(a.hash))
      && await trust.judge(list, await (await cache.match(signaturesName)).json(), keys) === 'known';
  } catch { return false; }
}

/** The first 80 bits of the keys' digest, in groups of four. */
async function print(keys) {
  const bytes = new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(keys.join(' '))));
  return Array.from(bytes.subarray(0, 10), b => b.toString(16).padStart(2, '0')).join('').match(/.{4}/g).join(' ');
}
