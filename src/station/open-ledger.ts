import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Ledger } from './ledger/ledger.ts';
import { openPostgres } from './ledger/postgres.ts';
import { openSqlite } from './ledger/sqlite.ts';

/** Where a shop's ledger is: a file in its data folder, or a database server. */
export type LedgerPlace = {
  readonly data: string;
  /** `postgres://…`; undefined for the file. */
  readonly database: string | undefined;
  /** Which shop's events these are, where several share a server. */
  readonly shop: string;
};

/** Throws `LedgerIsHeld` where another program has the file. */
export async function openLedger(place: LedgerPlace, tell: (trouble: unknown) => void): Promise<Ledger> {
  if (place.database !== undefined) return openPostgres(place.database, place.shop, tell);
  await mkdir(place.data, { recursive: true });
  return openSqlite(join(place.data, 'ledger.db'), place.shop);
}
