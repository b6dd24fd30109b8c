// A tab that rehearses keeps all that it writes apart from what is real (docs/decisions/rehearsing-apart.md).

export const practice = (() => { try { return sessionStorage.getItem('farhold-rehearsing') !== null; } catch { return false; } })();

const real = 'farhold-';
export const practised = 'farhold-practice-';
export const prefix = practice ? practised : real;

/** What a practice tab has set itself, else what is set on the phone; but never which real casualty was open, or its picture. */
const never = ['open', 'glance', 'first-taps'];

export function stored(key) {
  const own = localStorage.getItem(prefix + key);
  return own ?? (practice && !never.includes(key) ? localStorage.getItem(real + key) : null);
}
