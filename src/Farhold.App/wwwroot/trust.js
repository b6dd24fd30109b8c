// Whether the build that an address offers is signed by a key this phone knows: ECDSA P-256 over the list of files, which holds
// the hash of every file, the service worker's too, and the keys to trust from then on. The keys of the first signed build are
// taken as they come. Used by the page and by the service worker; docs/decisions/replaced-host.md says what it is worth.
(() => {
  const names = ['service-worker-assets.js', 'service-worker-signatures.json', 'service-worker.js'];
  const bytesOf = text => Uint8Array.from(atob(text), c => c.charCodeAt(0));
  const parsed = list => {
    const text = new TextDecoder().decode(list);
    return JSON.parse(text.slice(text.indexOf('{'), text.lastIndexOf('}') + 1));
  };

  async function digest(bytes) {
    return 'sha256-' + btoa(String.fromCharCode(...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))));
  }

  async function holds({ key, signature }, list) {
    try {
      const known = await crypto.subtle.importKey('spki', bytesOf(key), { name: 'ECDSA', namedCurve: 'P-256' }, false, ['verify']);
      return await crypto.subtle.verify({ name: 'ECDSA', hash: 'SHA-256' }, known, bytesOf(signature), list);
    } catch { return false; }
  }

  /** 'unsigned' and 'first' only while no key is known; then 'known' or 'foreign'. */
  async function judge(list, signatures, known) {
    const keys = parsed(list).keys ?? [];
    const wanted = known.length ? known : keys;
    for (const one of signatures)
      if (wanted.includes(one.key) && await holds(one, list)) return known.length ? 'known' : 'first';
    return known.length ? 'foreign' : 'unsigned';
  }

  const pins = async () => await (await (await caches.open('farhold-serving')).match('keys'))?.json() ?? [];
  const pin = async keys => (await caches.open('farhold-serving')).put('keys', Response.json(keys));

  /** What is served now, past every copy. Throws without network. */
  async function offered() {
    const known = await pins();
    const [list, signatures, worker] = await Promise.all(names.map(name => fetch(name, { cache: 'no-store' })));
    try {
      if (!list.ok || !worker.ok) throw new Error('no build is offered');
      const bytes = await list.arrayBuffer();
      const said = signatures.ok ? await signatures.json() : [];
      const manifest = parsed(bytes);
      const verdict = await judge(bytes, said, known);
      // A signed list speaks for the worker too; one that does not is half deployed, or the worker is somebody else's.
      const fits = !manifest.worker || manifest.worker === await digest(await worker.arrayBuffer());
      return { verdict: known.length && !fits ? 'foreign' : verdict, manifest, list: bytes, signatures: said };
    } catch (error) {
      if (known.length) return { verdict: 'foreign' };
      throw error;
    }
  }

  globalThis.trust = { digest, judge, offered, pin, pins };
})();
