// Small things the phone does for the app.

export const get = key => localStorage.getItem('farhold-' + key) ?? '';

export function set(key, value) {
  try { localStorage.setItem('farhold-' + key, value); return true; } catch { return false; }
}

export const language = () => navigator.language ?? 'en';

export async function copy(text) {
  try { await navigator.clipboard.writeText(text); return true; } catch { return false; }
}

export function look(name) {
  document.documentElement.dataset.look = name;
}

export function room() {
  const place = document.getElementById('content');
  if (!place) return 0;
  const edges = getComputedStyle(place);
  return place.clientWidth - parseFloat(edges.paddingLeft) - parseFloat(edges.paddingRight);
}

export const timeZone = () => Intl.DateTimeFormat().resolvedOptions().timeZone ?? '';

// The level, negative while charging; not a number where the browser does not tell.
export async function battery() {
  try {
    const told = await navigator.getBattery();
    return told.charging ? -Math.max(told.level, Number.MIN_VALUE) : told.level;
  } catch { return NaN; }
}
