// Sound, vibration, a screen that stays on. Every one of them may be refused; then the screen itself has to do.

let audio = null;
let wanted = false;
let lock = null;

// Browsers let a page sound only after a tap, and may take that back while the page is hidden: any tap asks again.
function unlock() {
  try {
    audio ??= new AudioContext();
    if (audio.state !== 'running') audio.resume().catch(() => {});
  } catch { /* no sound on this phone */ }
  if (wanted && !lock) ask();
}
for (const kind of ['pointerdown', 'keydown']) document.addEventListener(kind, unlock, { capture: true, passive: true });

export const unlocked = () => audio?.state === 'running';

// [pitch in Hz, start in s, length in s] for beat, reached, due, alarm.
const tones = [
  [[660, 0, 0.12]],
  [[660, 0, 0.2], [880, 0.3, 0.4]],
  [[740, 0, 0.2], [740, 0.35, 0.2], [740, 0.7, 0.2]],
  [[990, 0, 0.3], [740, 0.35, 0.3], [990, 0.7, 0.3], [740, 1.05, 0.3], [990, 1.4, 0.5]],
];

export function sound(signal) {
  if (!unlocked()) return;
  for (const [pitch, start, length] of tones[signal]) {
    const from = audio.currentTime + start;
    const tone = audio.createOscillator();
    const level = audio.createGain();
    tone.type = 'square';
    tone.frequency.value = pitch;
    level.gain.setValueAtTime(0, from);
    level.gain.linearRampToValueAtTime(0.4, from + 0.01);
    level.gain.setValueAtTime(0.4, from + length - 0.02);
    level.gain.linearRampToValueAtTime(0, from + length);
    tone.connect(level).connect(audio.destination);
    tone.start(from);
    tone.stop(from + length);
  }
}

const patterns = [[80], [200, 100, 400], [200, 150, 200, 150, 200], [500, 100, 500, 100, 900]];

export const canVibrate = () => 'vibrate' in navigator;

export function vibrate(signal) {
  if (navigator.userActivation?.hasBeenActive === false) return; // a browser refuses it before the first tap, and complains
  try { navigator.vibrate?.(patterns[signal]); } catch { /* or so it does where it can't say */ }
}

// Only a voice that is on the phone: there may be no network, and words about a casualty go to no server.
const voiceOf = language => globalThis.speechSynthesis?.getVoices()
  .find(v => v.localService && v.lang.toLowerCase().split(/[-_]/)[0] === language);

export const hasVoice = language => voiceOf(language) !== undefined;

export function say(words, language) {
  const voice = voiceOf(language);
  if (!voice) return;
  const said = new SpeechSynthesisUtterance(words);
  said.voice = voice;
  said.lang = voice.lang;
  speechSynthesis.cancel();
  speechSynthesis.speak(said);
}

export const hush = () => globalThis.speechSynthesis?.cancel();

export const awake = () => lock !== null;

async function ask() {
  if (!wanted || lock || document.visibilityState !== 'visible' || !navigator.wakeLock) return;
  try {
    const got = await navigator.wakeLock.request('screen');
    if (!wanted) { got.release(); return; }
    lock = got;
    got.addEventListener('release', () => { if (lock === got) lock = null; });
  } catch { /* refused: low battery or power saving; the next tap asks again */ }
}

export function keepAwake(on) {
  wanted = on;
  if (on) ask();
  else { lock?.release(); lock = null; }
}

document.addEventListener('visibilitychange', ask);

export function save(fileName, mediaType, text) {
  const address = URL.createObjectURL(new Blob([text], { type: mediaType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60000);
}
