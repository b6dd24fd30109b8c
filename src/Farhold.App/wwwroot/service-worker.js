// While developing, everything comes from the network. The published worker is service-worker.published.js.
self.addEventListener('fetch', () => { });
