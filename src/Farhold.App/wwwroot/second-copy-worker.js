// Keeps the second copy: one file, a JSON line for each value that was stored (second-copy.js). Only a worker may write at once and
// to the disk. The first line says how often something was taken away; the rest is { s: store, k: key, v: value }, the last one counts.

const fileName = 'farhold-second-copy.jsonl';

self.onmessage = async event => {
  const { id, act, lines } = event.data;
  try {
    self.postMessage({ id, value: await alone(() => acts[act](lines)) });
  } catch (error) {
    self.postMessage({ id, error: String(error?.message ?? error) });
  }
};

// One tab at a time: the file can be open only once.
const alone = work => navigator.locks ? navigator.locks.request(fileName, work) : work();

const acts = {
  state: () => withFile(async file => {
    const { swept, held } = parse(textOf(file));
    const counts = {};
    for (const { s } of held.values()) counts[s] = (counts[s] ?? 0) + 1;
    return { swept, counts };
  }),
  read: () => withFile(file => [...parse(textOf(file)).held.values()]),
  // A write that a kill cut short must cost its own line only: each begins on a new one.
  append: lines => withFile(file => put(file, '\n' + lines.join('\n') + '\n', file.getSize())),
  rewrite: lines => withFile(file => { file.truncate(0); put(file, lines.join('\n') + '\n', 0); }),
};

async function withFile(work) {
  const folder = await navigator.storage.getDirectory();
  const handle = await folder.getFileHandle(fileName, { create: true });
  const file = await handle.createSyncAccessHandle();
  try { return await work(file); } finally { file.close(); }
}

function put(file, text, at) {
  const bytes = new TextEncoder().encode(text);
  if (file.write(bytes, { at }) !== bytes.length) throw new Error('There is no room for the second copy.');
  file.flush();
}

function textOf(file) {
  const bytes = new Uint8Array(file.getSize());
  file.read(bytes, { at: 0 });
  return new TextDecoder().decode(bytes);
}

function parse(text) {
  let swept = null;
  const held = new Map();
  for (const line of text.split('\n')) {
    if (!line) continue;
    let said;
    try { said = JSON.parse(line); } catch { continue; }   // cut short
    if (said.swept !== undefined) swept = said.swept;
    else held.set(JSON.stringify([said.s, said.k]), said);
  }
  return { swept, held };
}
