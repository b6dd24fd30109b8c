// SHA-256 (FIPS 180-4) without waiting: the browser's own is asynchronous, and a storage transaction does not outlive a wait.

const primes = [];
for (let n = 2; primes.length < 64; n++) if (primes.every(p => n % p)) primes.push(n);
const fraction = x => Math.floor((x - Math.floor(x)) * 2 ** 32);
const constants = primes.map(p => fraction(Math.cbrt(p)));
const start = primes.slice(0, 8).map(p => fraction(Math.sqrt(p)));
const turned = (x, n) => (x >>> n) | (x << (32 - n));

/** The digest of bytes as 64 hexadecimal digits. */
export function digest(bytes) {
  const blocks = ((bytes.length + 8) >>> 6) + 1;
  const padded = new Uint8Array(blocks * 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, (bytes.length << 3) >>> 0);

  const state = Uint32Array.from(start);
  const w = new Uint32Array(64);
  for (let block = 0; block < padded.length; block += 64) {
    for (let i = 0; i < 64; i++) {
      if (i < 16) { w[i] = view.getUint32(block + 4 * i); continue; }
      const [x, y] = [w[i - 15], w[i - 2]];
      w[i] = w[i - 16] + (turned(x, 7) ^ turned(x, 18) ^ (x >>> 3)) + w[i - 7] + (turned(y, 17) ^ turned(y, 19) ^ (y >>> 10));
    }
    let [a, b, c, d, e, f, g, h] = state;
    for (let i = 0; i < 64; i++) {
      const one = (h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + ((e & f) ^ (~e & g)) + constants[i] + w[i]) | 0;
      const two = ((turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
      [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) | 0, c, b, a, (one + two) | 0];
    }
    [a, b, c, d, e, f, g, h].forEach((value, i) => { state[i] += value; });
  }
  return Array.from(state, word => word.toString(16).padStart(8, '0')).join('');
}
