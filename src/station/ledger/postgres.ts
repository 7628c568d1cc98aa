import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import { ledgerIn } from './database.ts';
import type { Ledger } from './ledger.ts';
import type { Tables } from './schema.ts';

/** Events are numbered in 64 bits; 2^53 of them are enough. */
const BIGINT = 20;

/**
 * A ledger on a server, which many stations and shops may share. `tell` hears of connections that broke: the next
 * append opens a new one.
 */
export async function openPostgres(url: string, shop: string, tell: (trouble: Error) => void): Promise<Ledger> {
  const pool = new pg.Pool({
    connectionString: url,
    max: 4,
    connectionTimeoutMillis: 2000,
    types: { getTypeParser: (type, format) => (type === BIGINT ? Number : pg.types.getTypeParser(type, format)) },
  });
  // Both: a broken connection tells its pool while it is idle and only itself while it is in use.
  pool.on('error', tell);
  pool.on('connect', client => client.on('error', tell));
  try {
    return await ledgerIn(new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) }), 'postgres', shop);
  } catch (refused) {
    await pool.end();
    throw refused;
  }
}
