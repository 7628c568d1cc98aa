import { offerCamera } from './camera.js';
import { make, showCard, spoken } from './card.js';
import { followHost, showLink } from './link.js';
import { openOutbox } from './outbox.js';
import { openSender } from './sender.js';
import { sign } from './signs.js';
import { play } from './sound.js';
import { readTag } from './tag-reader.js';
import { listenForCodes, tidy } from './wedge.js';

/** @typedef {import('../../src/station/floor/scan.ts').Scan} Scan */
/** @typedef {import('../../src/station/web/card.ts').Card} Card */
/** @typedef {import('../../src/codes/poster.ts').Poster} Poster */

const RECENT_MAX = 8;

/** @template {HTMLElement} T @param {string} id @returns {T} */
const byId = id => /** @type {T} */ (document.getElementById(id));

const page = byId('scan');
const station = page.dataset['station'] ?? '';
/** @type {{ [key: string]: string }} */
const words = JSON.parse(page.dataset['words'] ?? '{}');
/** @type {{ [barcode: string]: Poster }} */
const posters = JSON.parse(page.dataset['posters'] ?? '{}');
const input = /** @type {HTMLInputElement} */ (byId('code'));
const jobChoice = /** @type {HTMLSelectElement} */ (byId('job'));
const operationChoice = /** @type {HTMLSelectElement} */ (byId('operation'));
const soundChoice = /** @type {HTMLInputElement} */ (byId('sound'));
const spoilButton = byId('spoil');
const undoButton = /** @type {HTMLButtonElement} */ (byId('undo'));
const answerPlace = byId('answer');

const tab = remembered(sessionStorage, 'tab');
const device = remembered(localStorage, 'device').slice(0, 4).toUpperCase();
const outbox = await openOutbox(tab);
/** Keys of what this page had kept, the newest last: what Undo takes back. @type {string[]} */
const kept = JSON.parse(sessionStorage.getItem('kept') ?? '[]');

const sender = openSender(outbox, {
  answered: async (entry, card) => {
    if (card.question !== undefined) await outbox.ask(entry.scan, card);
    if (card.kept) remember([...kept, entry.scan.key]);
    if (entry.scan.act === 'undo') remember(kept.filter(key => key !== entry.scan.code));
    await tell(entry.scan, card);
  },
  refused: entry => void tell(entry.scan, plainCard('stop', words['card.refused'] ?? '', entry.scan.code, '')),
  link: (state, waiting) => {
    showLink(state, words);
    byId('queue').hidden = waiting.length === 0;
    byId('queue').textContent = (words['link.queue'] ?? '').replace('{count}', String(waiting.length));
    const last = waiting.at(-1);
    if (last !== undefined && state !== 'ok' && !toldKept.has(last.scan.key)) {
      toldKept.add(last.scan.key);
      void tell(
        last.scan,
        plainCard('note', words['card.queued'] ?? '', last.scan.code, words['card.queuedLine'] ?? ''),
      );
    }
  },
});
/** Scans of which somebody was told that they wait here. @type {Set<string>} */
const toldKept = new Set();

listenForCodes(input, code => void take(code));
offerCamera(words, code => void take(code));
byId('keyboard').addEventListener('click', () => {
  input.inputMode = 'text';
  input.focus();
});
undoButton.addEventListener('click', () => void undo(kept.at(-1)));
spoilButton.addEventListener('click', () => setSpoiling(spoilButton.getAttribute('aria-pressed') !== 'true'));
byId('photo').addEventListener('change', event => void takePicture(/** @type {HTMLInputElement} */ (event.target)));
for (const choice of [jobChoice, operationChoice]) rememberChoice(choice);
soundChoice.checked = localStorage.getItem('sound') !== 'off';
soundChoice.addEventListener('change', () => localStorage.setItem('sound', soundChoice.checked ? 'on' : 'off'));
localStorage.setItem('station', station);
followHost('', words, () => void sender.send());
undoButton.disabled = kept.length === 0;
await showQuestions();
await sender.send();
page.dataset['ready'] = 'yes';

/** @param {string} text */
async function take(text) {
  const code = tidy(text);
  const poster = posters[code];
  if (poster !== undefined) return obey(poster);
  const act = spoilButton.getAttribute('aria-pressed') === 'true' ? 'spoiled' : 'done';
  setSpoiling(false);
  await submit({ act, code: code.slice(0, 80), agreed: [], reason: '' });
}

/** @param {Poster} poster */
async function obey(poster) {
  if (poster.kind === 'station') return location.assign(`/station/${encodeURIComponent(poster.station)}`);
  if (poster.action === 'undo') return undo(kept.at(-1));
  if (poster.action === 'spoiled') return setSpoiling(true);
  const asked = (await outbox.asked()).at(-1);
  if (asked === undefined) return;
  if (poster.action === 'no') await settle(asked);
  else await agree(asked, asked.card.question?.reasons[0] ?? '');
}

/** @param {Pick<Scan, 'act' | 'code' | 'agreed' | 'reason'> & { job?: string | null }} what */
async function submit(what) {
  await outbox.put({
    key: newKey(),
    station,
    operation: operationChoice.value || null,
    job: jobChoice.value || null,
    device,
    at: new Date().toISOString(),
    ...what,
  });
  await sender.send();
}

/** @param {string | undefined} key */
async function undo(key) {
  if (key !== undefined) await submit({ act: 'undo', code: key, agreed: [], reason: '' });
}

/** @param {import('./outbox.js').Asked} asked @param {string} reason */
async function agree(asked, reason) {
  await settle(asked);
  const about = asked.card.question?.about;
  if (about === undefined) return;
  const { act, code, agreed } = asked.scan;
  await submit({ act, code, agreed: [...agreed, about], reason: reason || asked.scan.reason, job: asked.scan.job });
}

/** @param {import('./outbox.js').Asked} asked */
async function settle(asked) {
  await outbox.settle(asked);
  await showQuestions();
  if (answerPlace.dataset['question'] === asked.scan.key) quiet();
}

/** @param {Scan} scan @param {Card} card */
async function tell(scan, card) {
  answerPlace.dataset['question'] = card.question === undefined ? '' : scan.key;
  const asked = (await outbox.asked()).find(each => each.scan.key === scan.key);
  showCard(answerPlace, card, words, {
    yes: reason => void (asked && agree(asked, reason)),
    no: () => void (asked && settle(asked)),
    job: job => void switchJob(job, scan),
    undo: () => void undo(scan.key),
  });
  freshen();
  byId('spoken').textContent = spoken(card);
  if (soundChoice.checked) play(card.tone);
  if (scan.act !== 'undo' || card.tone !== 'stop') addRecent(card);
  await showQuestions();
  if (!document.activeElement?.matches('input, #camera *')) input.focus();
}

/** The same card twice must still be seen to be a new one. */
function freshen() {
  delete answerPlace.dataset['fresh'];
  requestAnimationFrame(() => {
    answerPlace.dataset['fresh'] = 'yes';
  });
}

/** @param {string} job @param {Scan} scan */
async function switchJob(job, scan) {
  jobChoice.value = job;
  jobChoice.dispatchEvent(new Event('change'));
  await submit({ act: scan.act, code: scan.code, agreed: [], reason: '' });
}

/** Questions that are still open, without the one that is shown large. */
async function showQuestions() {
  const open = (await outbox.asked()).filter(each => each.scan.key !== answerPlace.dataset['question']);
  byId('questions').hidden = open.length === 0;
  const items = open.map(asked => {
    const place = make('section', 'card');
    showCard(place, asked.card, words, {
      yes: reason => void agree(asked, reason),
      no: () => void settle(asked),
      job: () => undefined,
    });
    return make('li', '', place);
  });
  byId('questions')
    .querySelector('ul')
    ?.replaceChildren(...items);
}

/** @param {Card} card */
function addRecent(card) {
  const item = make('li', '', sign(card.tone), make('strong', '', card.headline), make('span', '', card.title));
  const list = byId('recent').querySelector('ol');
  list?.prepend(item);
  while (list !== null && list.children.length > RECENT_MAX) list.lastElementChild?.remove();
  byId('recent').hidden = false;
}

function quiet() {
  answerPlace.dataset['tone'] = 'idle';
  answerPlace.dataset['question'] = '';
  answerPlace.replaceChildren(make('h2', '', words['scan.waiting'] ?? ''));
  answerPlace.setAttribute('aria-label', words['scan.waiting'] ?? '');
  input.focus();
}

/** @param {boolean} on */
function setSpoiling(on) {
  spoilButton.setAttribute('aria-pressed', String(on));
  spoilButton.textContent = (on ? words['scan.spoilOn'] : words['scan.spoil']) ?? '';
  if (on) byId('spoken').textContent = words['scan.spoilOn'] ?? '';
}

/** @param {HTMLInputElement} field */
async function takePicture(field) {
  const [picture] = field.files ?? [];
  if (picture === undefined) return;
  byId('spoken').textContent = words['scan.reading'] ?? '';
  const code = await readTag(picture).catch(() => undefined);
  field.value = '';
  if (code === undefined) {
    showCard(answerPlace, plainCard('stop', words['scan.noSymbol'] ?? '', '', ''), words, NOTHING);
    byId('spoken').textContent = words['scan.noSymbol'] ?? '';
    if (soundChoice.checked) play('stop');
  } else await take(code);
}

const NOTHING = { yes: () => undefined, no: () => undefined, job: () => undefined };

/** @param {string[]} keys */
function remember(keys) {
  kept.splice(0, kept.length, ...keys.slice(-50));
  sessionStorage.setItem('kept', JSON.stringify(kept));
  undoButton.disabled = kept.length === 0;
}

/** @param {HTMLSelectElement} choice */
function rememberChoice(choice) {
  const name = `${station} ${choice.id}`;
  const before = sessionStorage.getItem(name) ?? '';
  if ([...choice.options].some(option => option.value === before)) choice.value = before;
  choice.addEventListener('change', () => sessionStorage.setItem(name, choice.value));
}

/** @param {Storage} storage @param {string} name */
function remembered(storage, name) {
  const value = storage.getItem(name) ?? newKey();
  storage.setItem(name, value);
  return value;
}

/** Not randomUUID: a page from a shop's own network is no secure context. */
function newKey() {
  return [...crypto.getRandomValues(new Uint8Array(16))].map(byte => byte.toString(16).padStart(2, '0')).join('');
}

/** @param {Card['tone']} tone @param {string} title @param {string} headline @param {string} line @returns {Card} */
function plainCard(tone, title, headline, line) {
  return {
    tone,
    title,
    headline,
    size: '',
    facts: [],
    settings: [],
    next: '',
    lines: line === '' ? [] : [line],
    reminders: [],
    question: undefined,
    jobs: [],
    links: [],
    kept: false,
  };
}
