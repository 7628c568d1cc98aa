/**
 * What was scanned and is not yet answered, on the device's own disk: first kept here, then sent, and only dropped once
 * the host has answered. Entries are numbered as they come, so that they go out in that order.
 */

/** @typedef {import('../../src/station/floor/scan.ts').Scan} Scan */
/** @typedef {import('../../src/station/web/card.ts').Card} Card */
/** @typedef {{ id?: number, tab: string, since: number, scan: Scan }} Entry */
/** @typedef {{ id?: number, tab: string, scan: Scan, card: Card }} Asked */

/** Entries of a page that was closed are sent by another one after so long. */
const ORPHAN_MS = 20_000;

/** @param {string} tab */
export async function openOutbox(tab) {
  const db = await openDatabase();

  /**
   * @template T
   * @param {'entries' | 'asked'} name
   * @param {'readonly' | 'readwrite'} mode
   * @param {(store: IDBObjectStore) => IDBRequest} act
   * @returns {Promise<T>}
   */
  const run = (name, mode, act) =>
    new Promise((done, failed) => {
      const transaction = db.transaction(name, mode, { durability: 'strict' });
      const request = act(transaction.objectStore(name));
      transaction.oncomplete = () => done(/** @type {T} */ (request.result));
      transaction.onerror = () => failed(transaction.error);
      transaction.onabort = () => failed(transaction.error);
    });

  return {
    /** @param {Scan} scan */
    put: scan => run('entries', 'readwrite', store => store.add({ tab, since: Date.now(), scan })),
    /** Ours, and those that nobody else seems to send. @returns {Promise<Entry[]>} */
    waiting: async () => {
      const all = /** @type {Entry[]} */ (await run('entries', 'readonly', store => store.getAll()));
      return all.filter(entry => entry.tab === tab || Date.now() - entry.since > ORPHAN_MS);
    },
    /** @param {Entry} entry */
    drop: entry => run('entries', 'readwrite', store => store.delete(entry.id ?? 0)),
    /** @param {Scan} scan @param {Card} card */
    ask: (scan, card) => run('asked', 'readwrite', store => store.add({ tab, scan, card })),
    /** @returns {Promise<Asked[]>} */
    asked: async () => {
      const all = /** @type {Asked[]} */ (await run('asked', 'readonly', store => store.getAll()));
      return all.filter(each => each.tab === tab);
    },
    /** @param {Asked} asked */
    settle: asked => run('asked', 'readwrite', store => store.delete(asked.id ?? 0)),
  };
}

/** @returns {Promise<IDBDatabase>} */
function openDatabase() {
  return new Promise((done, failed) => {
    const request = indexedDB.open('station', 1);
    request.onupgradeneeded = () => {
      for (const name of ['entries', 'asked'])
        request.result.createObjectStore(name, { keyPath: 'id', autoIncrement: true });
    };
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });
}
