// Opens the record that a link stands for. The secret is behind the # of the address: it is posted, never part of a request's address.
const [id, secret] = location.hash.slice(1).split('.');
const by = name => document.getElementById(name);
let code = '';

const post = what => fetch(`/hub/shares/${encodeURIComponent(id)}/${what}`, {
  method: 'POST',
  headers: { 'Content-Type': 'application/json' },
  body: JSON.stringify({ secret, code, zone: Intl.DateTimeFormat().resolvedOptions().timeZone ?? 'UTC' }),
});

async function open() {
  let answer;
  try { answer = await post('open'); } catch { return say('The hub can’t be reached.'); }
  if (answer.ok) {
    const { html } = await answer.json();
    by('page').innerHTML = html; // made by the hub, with every text of the record encoded
    by('acts').hidden = false;
    return;
  }
  const problem = await answer.json().catch(() => ({}));
  if (problem.code === 'code') {
    say(code ? 'These digits are not the ones.' : 'This link asks for four digits.');
    by('ask').hidden = false;
    by('code').focus();
  } else say(answer.status === 429 ? 'Asked too often; wait a minute.' : problem.title ?? 'This link shows nothing.');
}

const say = text => { const place = by('said'); if (place) place.textContent = text; };

async function save(what, name) {
  const answer = await post(what);
  if (!answer.ok) return;
  const link = document.createElement('a');
  link.href = URL.createObjectURL(await answer.blob());
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

by('ask').addEventListener('submit', event => { event.preventDefault(); code = by('code').value.trim(); open(); });
by('print').addEventListener('click', () => print());
by('card').addEventListener('click', () => save('card', 'card.pdf'));
by('fhir').addEventListener('click', () => save('fhir', 'record.fhir.json'));
by('again').addEventListener('click', open);
if (id && secret) open(); else say('This link is not whole.');
