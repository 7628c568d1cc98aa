/** @typedef {import('./outbox.js').Entry} Entry */
/** @typedef {import('../../src/station/web/card.ts').Card} Card */

const FIRST_WAIT_MS = 400;
const LONGEST_WAIT_MS = 5000;

/**
 * Sends what waits, the oldest first, one after the other, until the host has answered each. Sent again after a
 * failure, with the same key: the host keeps it once.
 * @param {{ waiting: () => Promise<Entry[]>, drop: (entry: Entry) => Promise<unknown> }} outbox
 * @param {{
 *   answered: (entry: Entry, card: Card) => Promise<void>,
 *   refused: (entry: Entry) => void,
 *   link: (state: 'ok' | 'lost' | 'unpaired', waiting: Entry[]) => void,
 * }} tell
 */
export function openSender(outbox, tell) {
  let busy = false;
  let again = false;
  let wait = FIRST_WAIT_MS;
  let timer = 0;

  const send = async () => {
    again = true;
    if (busy) return;
    busy = true;
    clearTimeout(timer);
    while (again) {
      again = false;
      await sendAll();
    }
    busy = false;
  };

  const sendAll = async () => {
    for (;;) {
      const waiting = await outbox.waiting();
      const [entry] = waiting;
      if (entry === undefined) return tell.link('ok', []);
      const state = await sendOne(entry);
      if (state === 'ok') {
        wait = FIRST_WAIT_MS;
        continue;
      }
      tell.link(state, await outbox.waiting());
      timer = window.setTimeout(send, wait);
      wait = Math.min(LONGEST_WAIT_MS, wait * 2);
      return;
    }
  };

  /** @param {Entry} entry @returns {Promise<'ok' | 'lost' | 'unpaired'>} */
  const sendOne = async entry => {
    const response = await post(entry);
    if (response === undefined || response.status === 429 || response.status >= 500) return 'lost';
    if (response.status === 401) return 'unpaired';
    if (response.ok) {
      const card = await response.json().catch(() => undefined);
      if (card === undefined) return 'lost';
      await tell.answered(entry, card);
    } else tell.refused(entry);
    await outbox.drop(entry);
    return 'ok';
  };

  window.addEventListener('online', send);
  return { send };
}

/** @param {Entry} entry */
const post = entry =>
  fetch('/scans', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(entry.scan),
    signal: AbortSignal.timeout(8000),
  }).catch(() => undefined);
