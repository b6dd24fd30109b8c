// The phone's own receiver, W3C Geolocation. Nothing is asked of a server by this page.

const [waiting, found, refused, unavailable, none] = [0, 1, 2, 3, 4]; // as FixState
let last = [waiting], watching = null;

// The best of what has come lately stays: a receiver goes astray by hundreds of metres for a moment.
const freshMs = 20_000;

function take({ coords, timestamp }) {
  const better = last[0] !== found || coords.accuracy <= last[3] || timestamp - last[5] > freshMs;
  if (better) last = [found, coords.latitude, coords.longitude, coords.accuracy, coords.altitude ?? NaN, timestamp];
}

// What was found stays found when the sky is lost: it has its time.
function fail(error) {
  if (last[0] !== found) last = [error.code === error.PERMISSION_DENIED ? refused : unavailable];
}

export function start() {
  stop();
  if (!navigator.geolocation) { last = [none]; return; }
  last = [waiting];
  watching = navigator.geolocation.watchPosition(take, fail, { enableHighAccuracy: true, maximumAge: 5000, timeout: 60_000 });
}

export function stop() {
  if (watching !== null) navigator.geolocation.clearWatch(watching);
  watching = null;
}

export const latest = () => last;
