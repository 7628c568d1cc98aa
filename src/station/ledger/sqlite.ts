import { Kysely, SqliteDialect } from 'kysely';
import Database from 'libsql';
import { ledgerIn } from './database.ts';
import type { Ledger } from './ledger.ts';
import type { Tables } from './schema.ts';

/** Somebody else has the file: a station that is running. Ask it instead. */
export class LedgerIsHeld extends Error {
  readonly code = 'LEDGER_HELD';
  readonly file: string;
  constructor(file: string) {
    super(`${file} is in use by a station that is running`);
    this.file = file;
  }
}

/**
 * A ledger in one file (or ':memory:'). Its program owns it: a second one is refused at once, and a program that was
 * killed leaves nothing that a person has to clear away. An append is on the disk when it returns.
 */
export async function openSqlite(file: string, shop: string): Promise<Ledger> {
  const database = new Database(file);
  try {
    // In this order: with the lock taken first, no second connection can ever meet the write-ahead log.
    for (const pragma of ['locking_mode = EXCLUSIVE', 'journal_mode = WAL', 'synchronous = FULL'])
      database.pragma(pragma);
    const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
    const ledger = await ledgerIn(db, 'sqlite', shop);
    return { ...ledger, close: async () => release(database).then(ledger.close) };
  } catch (refused) {
    database.close();
    throw isHeld(refused) ? new LedgerIsHeld(file) : refused;
  }
}

/**
 * Lets go of the file now. Closing alone leaves that to the collector of statements that are still remembered. It also
 * folds the log into the file, so that a ledger at rest is one file.
 */
async function release(database: Database.Database): Promise<void> {
  for (const pragma of ['journal_mode = DELETE', 'locking_mode = NORMAL', 'user_version']) database.pragma(pragma);
}

const isHeld = (refused: unknown): boolean =>
  refused instanceof Error && 'code' in refused && String(refused.code).startsWith('SQLITE_BUSY');
