// Sharing a text with another app, and reading codes with the camera. All of it may be refused.

const everyMs = 80;                    // between two looks at the camera
const widest = 800;                    // pixels looked at along the longer side: enough for a code of 65 modules

export const canShare = () => 'share' in navigator;

export async function share(text) {
  try { await navigator.share({ text }); return true; } catch { return false; }
}

let scan = null;

/** Calls back with every text the camera sees. Answers '' once it runs, else why it does not. */
export async function startScan(video, seen) {
  stopScan();
  const mine = { stopped: false, stream: null };
  scan = mine;
  try {
    mine.stream = await navigator.mediaDevices.getUserMedia({
      audio: false, video: { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 720 } },
    });
    const element = document.getElementById(video);
    if (mine.stopped || !element) { halt(mine); return ''; }
    element.srcObject = mine.stream;
    await element.play();
    look(mine, element, await reader(), seen);
    return '';
  } catch (error) {
    halt(mine);
    return String(error?.message || error?.name || 'The browser gives no access to a camera.');
  }
}

export function stopScan() {
  if (scan) halt(scan);
  scan = null;
}

function halt(one) {
  one.stopped = true;
  one.stream?.getTracks().forEach(track => track.stop());
}

async function look(mine, element, read, seen) {
  let last = '';
  while (!mine.stopped && element.isConnected) {
    try {
      for (const text of element.videoWidth ? await read(element) : []) {
        if (text !== last && !mine.stopped) seen(text);
        last = text;
      }
    } catch { /* one picture that could not be looked at; the next comes */ }
    await new Promise(next => setTimeout(next, everyMs));
  }
  halt(mine);
}

async function hasOwnReader() {
  try { return (await globalThis.BarcodeDetector?.getSupportedFormats())?.includes('qr_code') === true; } catch { return false; }
}

let library = null;
const load = () => library ??= import('./lib/jsqr/jsQR.js').catch(error => { library = null; throw error; });

// On the very first visit no copy serves this page yet: what is not loaded by now would be missing once the network is gone.
(globalThis.requestIdleCallback ?? setTimeout)(async () => { if (!await hasOwnReader()) load().catch(() => { }); });

/** The phone's own reader where it has one; else a library. */
async function reader() {
  if (await hasOwnReader()) {
    const own = new BarcodeDetector({ formats: ['qr_code'] });
    return async element => (await own.detect(element)).map(code => code.rawValue);
  }
  await load();
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  return async element => {
    const scale = Math.min(1, widest / Math.max(element.videoWidth, element.videoHeight));
    canvas.width = Math.round(element.videoWidth * scale);
    canvas.height = Math.round(element.videoHeight * scale);
    pen.drawImage(element, 0, 0, canvas.width, canvas.height);
    const picture = pen.getImageData(0, 0, canvas.width, canvas.height);
    const code = globalThis.jsQR(picture.data, picture.width, picture.height, { inversionAttempts: 'dontInvert' });
    return code ? [code.data] : [];
  };
}
