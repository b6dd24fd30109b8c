// Between two pieces of a start touches come through, and who is logging on the plain page is waited for.

const channel = new MessageChannel();  // comes round sooner than a timer
let busy = () => false;
channel.port1.start();

/** Says who has to be waited for. */
export function waitWhile(test) { busy = test; }

export async function quiet() {
  // Whoever waits at the same time goes on as well.
  await new Promise(done => { channel.port1.addEventListener('message', done, { once: true }); channel.port2.postMessage(null); });
  while (busy()) await new Promise(done => setTimeout(done, 50));
}
