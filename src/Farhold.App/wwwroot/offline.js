// The offline copy: which build is served, whether a newer one is ready, and whether the copy is whole.

const pointers = 'farhold-serving';
const filesOf = version => 'farhold-files-' + version;
const manifestName = 'farhold-manifest.json';
let registration = null;
let refused = !('serviceWorker' in navigator);

const pointer = async name => (await (await caches.open(pointers)).match(name))?.text();

export async function start(callback) {
  // Held while this tab lives: switching counts the tabs by it.
  navigator.locks?.request('farhold-tab', { mode: 'shared' }, () => new Promise(() => { }));
  if (refused) return;
  // Not waited for: a browser that refuses or never answers must not keep the app from starting.
  navigator.serviceWorker.register('service-worker.js', { updateViaCache: 'none' }).then(
    made => { registration = made; follow(callback); },
    async () => { refused = !await navigator.serviceWorker.getRegistration().catch(() => null); callback('refused'); });
}

function follow(callback) {
  const watch = worker => worker?.addEventListener('statechange', () => callback(worker.state));
  watch(registration.installing);
  registration.addEventListener('updatefound', () => watch(registration.installing));
}

/** Looks for a newer build; offline this finds nothing and says nothing. */
export async function look() {
  try { await registration?.update(); } catch { /* no network, or a half-finished deployment */ }
}

export async function state() {
  if (!self.caches || refused) return JSON.stringify({ able: false, serving: '', ready: '', installing: false, tabs: 1 });
  const serving = await pointer('current') ?? '';
  const latest = await pointer('latest') ?? '';
  const locks = await navigator.locks?.query();
  return JSON.stringify({
    able: true,
    serving,
    ready: latest && serving && latest !== serving ? latest : '',
    installing: Boolean(registration?.installing),
    tabs: locks?.held.filter(l => l.name === 'farhold-tab').length ?? 1,
  });
}

/** Serves the newer build from the next page on. The caller has made sure that nothing is open. */
export async function change() {
  const latest = await pointer('latest');
  if (!latest) return;
  await (await caches.open(pointers)).put('current', new Response(latest));
  const waiting = registration?.waiting;
  if (waiting) {
    const taken = new Promise(done => navigator.serviceWorker.addEventListener('controllerchange', done, { once: true }));
    waiting.postMessage('take-over');
    await taken;
  }
  location.replace(document.baseURI);
}

/** Hashes every file of the copy again and compares it with the build's list; `bad` names what differs or is missing. */
export async function verify() {
  const serving = await pointer('current');
  const cache = serving && await caches.open(filesOf(serving));
  const manifest = cache && await (await cache.match(manifestName))?.json();
  if (!manifest) return JSON.stringify({ files: 0, bad: [] });
  const bad = [];
  for (const { url, hash } of manifest.assets) {
    const file = await cache.match(url);
    if (!file || await digest(file) !== hash) bad.push(url);
  }
  return JSON.stringify({ files: manifest.assets.length, bad });
}

async function digest(response) {
  const bytes = new Uint8Array(await crypto.subtle.digest('SHA-256', await response.arrayBuffer()));
  return 'sha256-' + btoa(String.fromCharCode(...bytes));
}
