import { createReadStream } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { backUp, restore } from './ledger/backup.ts';
import { exportCsv } from './ledger/export-csv.ts';
import type { Ledger } from './ledger/ledger.ts';
import { type LedgerPlace, openLedger } from './open-ledger.ts';
import { runningStation } from './running.ts';

type Trouble = (trouble: unknown) => void;

/** Writes all that was ever scanned to `file`: `copy` to restore from, `table` to read. Whole, or not at all. */
export async function copyLedger(place: LedgerPlace, as: 'copy' | 'table', file: string, tell: Trouble): Promise<void> {
  const station = place.database === undefined ? await runningStation(place.data) : undefined;
  if (station !== undefined)
    return writeWhole(file, fetched(`${station}/${as === 'copy' ? 'ledger.jsonl' : 'export.csv'}`));
  await withLedger(place, tell, ledger => writeWhole(file, as === 'copy' ? backUp(ledger) : exportCsv(ledger)));
}

/** Brings a copy's events into the ledger, which no station may hold meanwhile. Returns how many were new. */
export const restoreLedger = (place: LedgerPlace, file: string, tell: Trouble): Promise<number> =>
  withLedger(place, tell, ledger =>
    restore(ledger, () =>
      createInterface({ input: createReadStream(file, 'utf8'), crlfDelay: Number.POSITIVE_INFINITY }),
    ),
  );

async function withLedger<T>(place: LedgerPlace, tell: Trouble, use: (ledger: Ledger) => Promise<T>): Promise<T> {
  const ledger = await openLedger(place, tell);
  try {
    return await use(ledger);
  } finally {
    await ledger.close();
  }
}

async function* fetched(address: string): AsyncGenerator<string | Uint8Array> {
  const answer = await fetch(address);
  if (!answer.ok || answer.body === null) throw new Error(`the station answered ${answer.status}`);
  for await (const piece of answer.body) yield piece;
}

async function writeWhole(file: string, pieces: AsyncIterable<string | Uint8Array>): Promise<void> {
  const aside = `${file}.${process.pid}.part`;
  try {
    const out = await open(aside, 'wx');
    try {
      for await (const piece of pieces) await out.write(piece as string);
      await out.sync();
    } finally {
      await out.close();
    }
    await rename(aside, file);
  } catch (refused) {
    await rm(aside, { force: true });
    throw refused;
  }
}
