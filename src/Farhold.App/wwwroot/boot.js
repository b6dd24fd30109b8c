// Starts the app. Its assemblies are one file (tools/pack), and that and the runtime are taken straight from the copy on
// this phone, which is faster than asking the service worker. Their names hold their hashes, so another build's copy can't
// be mistaken for them. A page that names no such file was not published, and fetches its assemblies one by one.
(() => {
  const copy = (async () => {
    const version = await (await (await caches.open('farhold-serving')).match('current'))?.text();
    return version ? caches.open('farhold-files-' + version) : null;
  })().catch(() => null);

  const fromCopy = async (uri, integrity) =>
    await (await copy)?.match(uri).catch(() => null) ?? fetch(uri, { integrity, credentials: 'same-origin' });

  async function open({ content, dataset }) {
    const bytes = new Uint8Array(await (await fromCopy(content, dataset.integrity)).arrayBuffer());
    const start = bytes.indexOf(10) + 1;
    const index = JSON.parse(new TextDecoder().decode(bytes.subarray(0, start)));
    return uri => {
      const [at, length] = index[uri.split('/').at(-1)];
      return new Response(bytes.subarray(start + at, start + at + length), { headers: { 'Content-Type': 'application/wasm' } });
    };
  }

  const named = document.querySelector('meta[name=assemblies][content]');
  let pack = named && open(named);

  // Without the runtime the page says itself that the app has not started.
  globalThis.Blazor?.start({
    loadBootResource: (type, name, uri, integrity) =>
      type === 'assembly' && pack ? pack.then(take => take(uri))
        : type === 'assembly' || type === 'dotnetwasm' ? fromCopy(uri, integrity) : undefined,
  }).then(() => { pack = null; });
})();
