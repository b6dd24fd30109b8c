// Whether a signature stands over a message: ECDSA on P-256 with SHA-256 by the browser. All three are base64; the key is x before y.

const bytesOf = text => Uint8Array.from(atob(text), c => c.charCodeAt(0));

/** False for anything that can't be checked. */
export async function holds(key, message, signature) {
  try {
    const point = Uint8Array.of(4, ...bytesOf(key));
    const known = await crypto.subtle.importKey('raw', point, { name: 'ECDSA', namedCurve: 'P-256' }, false, ['verify']);
    return await crypto.subtle.verify({ name: 'ECDSA', hash: 'SHA-256' }, known, bytesOf(signature), bytesOf(message));
  } catch {
    return false;
  }
}
