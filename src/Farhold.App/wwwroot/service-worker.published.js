// Serves one build, whole, from this phone. A newer build is fetched beside it, and served only once the carer
// has asked for it: which build is served is written in the cache `farhold-serving`, not decided by which worker runs.
self.importScripts('./service-worker-assets.js', './trust.js');

const pointers = 'farhold-serving';
const manifestName = 'farhold-manifest.json';
const listName = 'farhold-list.js', signaturesName = 'farhold-signatures.json';
const filesOf = version => 'farhold-files-' + version;
const own = self.assetsManifest.version;
const files = self.assetsManifest.assets.filter(a => !/^service-worker(-assets)?\.js$/.test(a.url));
const fromNetwork = ['hub/', 'service-worker']; // the hub's own services, and what it offers; never part of a build

self.addEventListener('install', event => event.waitUntil(install()));
self.addEventListener('activate', event => event.waitUntil(activate()));
self.addEventListener('message', event => { if (event.data === 'take-over') self.skipWaiting(); });
self.addEventListener('fetch', event => {
  if (event.request.method === 'GET' && event.request.url.startsWith(self.registration.scope) && !isOfHub(event.request.url))
    event.respondWith(serve(event));
});

// The hub's own addresses go past this worker: a stream that went through it would end with it.
const isOfHub = url => url.slice(self.registration.scope.length).startsWith('hub/');

const pointer = async name => (await (await caches.open(pointers)).match(name))?.text();
const point = async (name, version) => (await caches.open(pointers)).put(name, new Response(version));

// All files with the right hash, or none: the manifest is put last and marks the copy as whole. Nor any of a build that is not
// signed by a key this phone knows.
async function install() {
  const offered = await trust.offered();
  if (offered.verdict === 'foreign') throw new Error('This build is not signed by a key that this phone knows.');
  if (JSON.stringify(offered.manifest) !== JSON.stringify(self.assetsManifest)) throw new Error('The build changed while it was fetched.');
  const cache = await caches.open(filesOf(own));
  if (!await cache.match(manifestName)) {
    try {
      await cache.addAll(files.map(a => new Request(a.url, { integrity: a.hash, cache: 'no-cache' })));
      await cache.put(listName, new Response(offered.list));
      await cache.put(signaturesName, Response.json(offered.signatures));
      await cache.put(manifestName, Response.json({ version: own, assets: files }));
    } catch (error) {
      await caches.delete(filesOf(own));
      throw error;
    }
  }
  if (offered.verdict !== 'unsigned') await trust.pin(offered.manifest.keys);
  await point('latest', own);
  if (!await pointer('current')) await point('current', own);
}

async function activate() {
  const keep = [pointers, filesOf(own), filesOf(await pointer('current'))];
  for (const name of await caches.keys())
    if (name.startsWith('farhold-') && !keep.includes(name)) await caches.delete(name);
}

// The build that serves each page, by the page's client: looked up once a page, and the same one to its end.
const copies = new Map();

const copyFor = client => {
  if (!client) return current();
  if (!copies.has(client)) {
    const copy = current();
    copies.set(client, copy);
    // What was not found, or not told, is asked again.
    copy.then(found => found ?? Promise.reject()).catch(() => copies.delete(client));
    if (copies.size > 32) copies.delete(copies.keys().next().value);
  }
  return copies.get(client);
};

async function current() {
  const version = await pointer('current');
  return version && await caches.has(filesOf(version)) ? caches.open(filesOf(version)) : null;
}

async function serve({ request, clientId, resultingClientId }) {
  const path = decodeURI(request.url.slice(self.registration.scope.length).split(/[?#]/)[0]);
  if (fromNetwork.some(prefix => path.startsWith(prefix))) return fetch(request);
  const cache = await copyFor(request.mode === 'navigate' ? resultingClientId : clientId);
  // The copy is gone (evicted): the network is all there is, and it holds one build.
  if (!cache) return fetch(request);
  // A file that this build does not have is never taken from another one.
  return await cache.match(request.mode === 'navigate' ? 'index.html' : path) ?? new Response(null, { status: 404 });
}
