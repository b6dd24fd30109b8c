// What the phone shows before the app is up: the last picture of each casualty, its clocks counting on; and, where
// the app can't start at all, a way to the records. The picture's shape is described in First/GlancePicture.cs.
// All in the language that was chosen in the app, else in the browser's: its file is fetched here, and handed on to the app.
(() => {
  const stored = key => { try { return localStorage.getItem('farhold-' + key); } catch { return null; } };
  const practice = (() => { try { return sessionStorage.getItem('farhold-rehearsing') !== null; } catch { return false; } })();
  document.documentElement.dataset.look = stored('look') || 'night';
  if (practice) document.documentElement.dataset.practice = '';

  const fetched = ['de', 'es']; // beside English, which is in the page and in the app (Services/Language.cs)
  const language = stored('language')
    || (navigator.languages ?? []).map(l => l.split('-')[0].toLowerCase()).find(l => l === 'en' || fetched.includes(l)) || 'en';
  const files = {};
  globalThis.farholdTexts = name => files[name] ??= (async () => {
    try {
      const answer = await fetch(new URL('texts.' + name + '.json', document.baseURI));
      if (answer.ok) return await answer.json();
    } catch { }
    delete files[name]; // asked again another time
  })();
  const words = language === 'en' ? Promise.resolve() : globalThis.farholdTexts(language);
  words.then(told => {
    if (!told) return;
    document.documentElement.lang = language;
    document.documentElement.dir = told.Direction;
    for (const place of document.querySelectorAll('[data-text]'))
      if (!place.dataset.up) place.textContent = told[place.dataset.text];
  });

  const element = (name, text, kind) => {
    const made = document.createElement(name);
    if (text !== undefined) made.textContent = text;
    if (kind) made.className = kind;
    return made;
  };
  const two = n => String(n).padStart(2, '0');
  const clock = ms => { const d = new Date(ms); return two(d.getHours()) + ':' + two(d.getMinutes()); };
  const span = ms => { const m = Math.max(0, Math.floor(ms / 60000)); return Math.floor(m / 60) + ' h ' + two(m % 60) + ' min'; };

  function limb(picture, words) {
    const item = element('li', undefined, 'glance-limb');
    item.append(element('h3', picture.limbText), element('p', picture.verdictText, 'glance-verdict'));
    const since = element('p', undefined, 'glance-clock');
    const limit = element('p');
    item.append(since, limit);
    const tick = () => {
      const now = Date.now();
      const low = span(now - picture.tightenedLatest), high = span(now - picture.tightenedEarliest);
      since.textContent = words.since + ' ' + (low === high ? low : low + ' – ' + high);
      if (!picture.limit) return;
      limit.textContent = now < picture.limit
        ? words.limit + ' ' + clock(picture.limit) + ' (' + span(picture.limit - now) + ')'
        : words.passed + ' ' + clock(picture.limit);
    };
    tick();
    return { item, tick };
  }

  function show(place, picture) {
    const ticks = [];
    const open = stored('open');
    // An address that names a casualty is about no other.
    const named = location.pathname.match(/\/casualty\/([^/]+)/)?.[1];
    for (const casualty of picture.casualties.filter(c => !named || c.id === named).sort((a, b) => (b.id === open) - (a.id === open))) {
      const part = element('section', undefined, casualty.practice ? 'glance practice' : 'glance');
      part.append(element('h2', casualty.practice ? picture.words.practice + ' ' + casualty.alias : casualty.alias),
        element('p', picture.words.asOf + ' ' + clock(casualty.at), 'glance-age'));
      const limbs = element('ul');
      for (const one of casualty.limbs) {
        const { item, tick } = limb(one, picture.words);
        limbs.append(item);
        ticks.push(tick);
      }
      part.append(limbs, ...casualty.cautions.map(c => element('p', c, 'glance-caution')));
      place.append(part);
    }
    const timer = setInterval(() => place.isConnected ? ticks.forEach(t => t()) : clearInterval(timer), 1000);
  }

  const place = document.getElementById('glance');
  try {
    const picture = JSON.parse(stored('glance'));
    if (!practice && picture?.v === 1 && picture.casualties.length) show(place, picture);
  } catch { place.textContent = ''; }

  // The app needs WebAssembly with SIMD; hardened browser modes switch it off. (i32.const 0, i8x16.splat, drop)
  const simd = new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 10, 9, 1, 7, 0, 65, 0, 253, 15, 26, 11]);
  const stuck = async (key, english) => {
    const told = await words;
    const help = document.getElementById('stuck');
    if (!help || document.getElementById('starting-state').dataset.up) return;
    help.hidden = false;
    document.getElementById('stuck-why').textContent = told?.[key] ?? english;
  };
  if (typeof WebAssembly !== 'object' || !WebAssembly.validate(simd)) stuck('StuckMode', 'This browser, in its present mode, can\'t run the app.');
  else setTimeout(() => stuck('StuckSlow', 'The app is taking unusually long to start.'), 30_000);

  document.getElementById('rescue-records').addEventListener('click', async () => {
    const store = await import(new URL('store.js', document.baseURI));
    for (const head of JSON.parse(await store.list()))
      await store.download(head.id, (head.practice ? 'PRACTICE-' : '') + head.id + '.jsonl');
  });
})();
