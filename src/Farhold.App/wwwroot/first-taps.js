// What can be logged before the app is up, and the way from this page to the app: it gives way as soon as the app shows
// a place, but never under a finger. What can be said is described in First/FirstTaps.cs.
import { practice } from './area.js';
import { waitWhile } from './breath.js';
import { appendEarly } from './store.js';

const touchedMs = 800;                 // a tap in this time belongs to this page
const hastyMs = 500;
const idleMs = 10_000;                 // an open choice that nobody touches any more
const blankMs = 15_000;                // a started app that still shows no heading

const page = document.getElementById('starting');
const app = document.getElementById('app');
const state = document.getElementById('starting-state');
let words = { up: 'The app is up.', goOn: 'Go on in the app' };
let touched = -Infinity, chosen = -Infinity, writing = 0, unsaved = false, begun = 0;

const element = (name, text, kind) => {
  const made = document.createElement(name);
  if (text !== undefined) made.textContent = text;
  if (kind) made.className = kind;
  return made;
};
const button = (text, pressed) => {
  const made = element('button', text);
  made.type = 'button';
  made.addEventListener('click', pressed);
  return made;
};

// ---- logging ----

async function log(casualty, entry) {
  const now = new Date();
  entry.happened = entry.recorded = now.toISOString();
  writing++;
  try { return { now, ...await appendEarly(casualty, JSON.stringify(entry)) }; }
  catch (error) { return { now, ok: false, reason: String(error?.message ?? error) }; }
  finally { writing--; }
}

const at = now => now.toTimeString().slice(0, 5);

function choose(taps, option, said) {
  // The page moves under the finger once the choice closes: two hasty taps are one entry.
  if (performance.now() - chosen < hastyMs) return;
  chosen = performance.now();
  for (const one of document.querySelectorAll('#first-taps details[open]')) one.open = false;
  // A new name is given away once.
  if (option.takes)
    for (const other of document.querySelectorAll('#first-taps [data-takes]'))
      if (other.dataset.takes === option.takes) other.remove();
  const line = element('div', undefined, 'notice');
  line.append(element('p', words.saving + ' ' + option.said));
  said.prepend(line);
  log(taps.casualty, { ...option.entry }).then(answer => {
    line.textContent = '';
    if (!answer.ok) {
      unsaved = true;
      line.classList.add('danger');
      line.append(element('p', `${words.notSaved} ${option.said}. ${answer.reason}`), element('p', answer.rescued ? words.kept : words.lost));
      return;
    }
    if (option.advice) line.append(element('p', option.advice, 'large'));
    line.append(element('p', `${words.saved} ${at(answer.now)}: ${option.said}`), element('p', words.stale));
    const id = JSON.parse(answer.line).id;
    const undo = button(words.undo, () => {
      undo.disabled = true;
      log(taps.casualty, { ...taps.withdrawal, target: id }).then(taken => {
        if (!taken.ok) { undo.disabled = false; return; }
        line.textContent = '';
        line.append(element('p', `${words.undone} ${option.said}`));
      });
    });
    line.append(undo);
  });
}

function show(taps) {
  const place = document.getElementById('first-taps');
  const said = element('div');
  said.setAttribute('role', 'status');
  place.append(element('h2', words.title), element('p', words.hint, 'quiet'), said);
  for (const quick of taps.quicks) {
    const choice = element('details');
    choice.append(element('summary', quick.title));
    for (const group of quick.groups) {
      const options = element('div', undefined, 'quick');
      options.append(...group.options.map(option => {
        const made = button(option.text, () => choose(taps, option, said));
        if (option.takes) made.dataset.takes = option.takes;
        return made;
      }));
      const part = element('div');
      part.setAttribute('role', 'group');
      if (group.label) {
        part.setAttribute('aria-label', group.label);
        part.append(element('h3', group.label));
      }
      part.append(options);
      choice.append(part);
    }
    place.append(choice);
  }
}

// ---- giving way ----

const up = () => app.querySelector('h1') || (begun && performance.now() - begun > blankMs);

function touching() {
  const still = performance.now() - touched;
  return still < touchedMs || (still < idleMs && document.querySelector('#first-taps details[open]'));
}

const logging = () => writing > 0 || touching();

function giveWay() {
  watch.disconnect();
  clearInterval(timer);
  page.remove();
  app.inert = false;
  if (document.activeElement === document.body) app.querySelector('h1')?.focus({ preventScroll: true });
}

function look() {
  if (app.firstElementChild) begun ||= performance.now();
  if (!up()) return;
  if (!logging() && !unsaved) return giveWay();
  if (state.dataset.up) return;
  state.dataset.up = 'yes';
  state.textContent = words.up + ' ';
  state.append(button(words.goOn, giveWay));
}

// Where this script does not run, the app's first content hides the page (app.css).
page.classList.add('over');
app.inert = true;
waitWhile(() => page.isConnected && logging());
for (const kind of ['pointerdown', 'keydown']) page.addEventListener(kind, () => { touched = performance.now(); });
const watch = new MutationObserver(look);
watch.observe(app, { childList: true, subtree: true });
const timer = setInterval(look, 250);

try {
  const taps = JSON.parse(localStorage.getItem('farhold-first-taps'));
  // An address may name another casualty than the one that was open last: for that one nothing is kept ready.
  const named = location.pathname.match(/\/casualty\/([^/]+)/)?.[1] ?? taps?.casualty;
  if (!practice && taps?.v === 1 && taps.casualty === localStorage.getItem('farhold-open') && taps.casualty === named && document.querySelector('.glance')) {
    words = taps.words;
    show(taps);
  }
} catch { document.getElementById('first-taps').textContent = ''; }
