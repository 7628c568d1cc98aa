import { type Kysely, Migrator, type Selectable, sql } from 'kysely';
import { type FloorEvent, happeningSchema, type KeptEvent } from '../floor/event.ts';
import type { Ledger } from './ledger.ts';
import { type Engine, migrations, type Tables } from './schema.ts';

/** A ledger in a database: the same statements on both engines. `shop` keeps the shops of one server apart. */
export async function ledgerIn(db: Kysely<Tables>, engine: Engine, shop: string): Promise<Ledger> {
  await migrate(db, engine);
  return {
    shared: engine === 'postgres',
    append: events => append(db, engine, shop, events),
    find: keys => find(db, shop, keys),
    after: (seq, limit, job) => after(db, shop, seq, limit, job),
    last: () => last(db, shop),
    close: () => db.destroy(),
  };
}

async function migrate(db: Kysely<Tables>, engine: Engine): Promise<void> {
  const migrator = new Migrator({ db, provider: { getMigrations: async () => migrations(engine) } });
  const { error } = await migrator.migrateToLatest();
  if (error !== undefined) throw error;
}

async function append(
  db: Kysely<Tables>,
  engine: Engine,
  shop: string,
  events: readonly FloorEvent[],
): Promise<readonly KeptEvent[]> {
  if (events.length === 0) return [];
  const kept = await db.transaction().execute(async transaction => {
    // Numbers are given out before they are committed: without a queue a reader could miss the lower of two.
    if (engine === 'postgres') await sql`SELECT pg_advisory_xact_lock(${APPEND_LOCK})`.execute(transaction);
    return transaction
      .insertInto('floor_event')
      .values(events.map(event => rowOf(event, shop)))
      .onConflict(conflict => conflict.columns(['shop', 'key']).doNothing())
      .returning(['seq', 'key'])
      .execute();
  });
  const seqs = new Map(kept.map(({ seq, key }) => [key, seq]));
  return [...new Map(events.map(event => [event.key, event])).values()]
    .flatMap(event => seqOf(event, seqs))
    .sort((a, b) => a.seq - b.seq);
}

/** Only one program at a time is between taking its numbers and committing them. */
const APPEND_LOCK = 7_136_013;

async function find(db: Kysely<Tables>, shop: string, keys: readonly string[]): Promise<readonly KeptEvent[]> {
  if (keys.length === 0) return [];
  const rows = await db
    .selectFrom('floor_event')
    .selectAll()
    .where('shop', '=', shop)
    .where('key', 'in', [...keys])
    .orderBy('seq')
    .execute();
  return rows.map(eventOf);
}

async function after(
  db: Kysely<Tables>,
  shop: string,
  seq: number,
  limit: number,
  job: string | undefined,
): Promise<readonly KeptEvent[]> {
  let query = db.selectFrom('floor_event').selectAll().where('shop', '=', shop).where('seq', '>', seq);
  if (job !== undefined) query = query.where('job', '=', job);
  const rows = await query.orderBy('seq').limit(limit).execute();
  return rows.map(eventOf);
}

async function last(db: Kysely<Tables>, shop: string): Promise<number> {
  const row = await db
    .selectFrom('floor_event')
    .select('seq')
    .where('shop', '=', shop)
    .orderBy('seq', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row?.seq ?? 0;
}

const rowOf = (event: FloorEvent, shop: string) => ({
  shop,
  key: event.key,
  job: event.job,
  revision: event.revision,
  station: event.station,
  device: event.device,
  device_time: event.deviceTime,
  server_time: event.serverTime,
  what: JSON.stringify(event.what),
});

const eventOf = (row: Selectable<Tables['floor_event']>): KeptEvent => ({
  seq: row.seq,
  key: row.key,
  job: row.job,
  revision: row.revision,
  station: row.station,
  device: row.device,
  deviceTime: row.device_time,
  serverTime: row.server_time,
  what: happeningSchema.parse(JSON.parse(row.what)),
});

function seqOf(event: FloorEvent, seqs: ReadonlyMap<string, number>): readonly KeptEvent[] {
  const seq = seqs.get(event.key);
  return seq === undefined ? [] : [{ ...event, seq }];
}
