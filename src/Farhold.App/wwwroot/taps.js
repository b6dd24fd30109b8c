// A tap that was meant for what has just gone does nothing to what stands there instead: no tap counts until the new
// picture is painted, and for a moment after. It counts by when the finger touched, however late the phone gets to it.

export const blindMs = 400; // design: the second of two hasty taps comes after 100 to 300 ms

export function tapGuard() {
  let unpainted = 0, until = -Infinity;
  return {
    replaced() { unpainted++; },
    painted(at) { unpainted--; until = Math.max(until, at + blindMs); },
    waits: () => unpainted > 0,
    counts: at => unpainted === 0 && at >= until,
  };
}

const guard = tapGuard();
let lost = false; // the press that is under way began too early

// A frame's callback runs before it is painted, what it puts off runs after.
export function replaced() {
  guard.replaced();
  document.documentElement.dataset.blind = '';
  requestAnimationFrame(() => setTimeout(() => {
    guard.painted(performance.now());
    setTimeout(sees, blindMs);
  }));
}

// A browser may call back a moment before its time is up: then it is asked again. A picture that still waits calls by itself.
function sees() {
  if (guard.counts(performance.now())) delete document.documentElement.dataset.blind;
  else if (!guard.waits()) setTimeout(sees, 10);
}

function swallow(e) {
  e.stopImmediatePropagation();
  e.preventDefault();
}

addEventListener('pointerdown', e => {
  lost = !guard.counts(e.timeStamp);
  if (lost) e.stopImmediatePropagation();
}, { capture: true, passive: true });

// Keys and screen readers press what they name, not what lies at a place; their clicks have a count of 0.
addEventListener('click', e => {
  if (e.isTrusted && e.detail > 0 && (lost || !guard.counts(e.timeStamp))) swallow(e);
}, { capture: true });
