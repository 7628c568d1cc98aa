import { type Generated, type Kysely, type Migration, sql } from 'kysely';

/** The one table that matters. Times are text in ISO form; what happened is JSON, so that it needs no new columns. */
export type Tables = {
  readonly floor_event: {
    readonly seq: Generated<number>;
    readonly shop: string;
    readonly key: string;
    readonly job: string;
    readonly revision: string;
    readonly station: string;
    readonly device: string;
    readonly device_time: string;
    readonly server_time: string;
    readonly what: string;
  };
};

export type Engine = 'sqlite' | 'postgres';

/** Steps from an empty database to today's, by name in order. A step that a shop may have run is never edited. */
export const migrations = (engine: Engine): { readonly [name: string]: Migration } => ({
  '001-events': {
    up: async (db: Kysely<unknown>) => {
      await createEvents(db, engine);
      for (const statement of neverChanged(engine)) await sql.raw(statement).execute(db);
    },
  },
});

async function createEvents(db: Kysely<unknown>, engine: Engine): Promise<void> {
  await db.schema
    .createTable('floor_event')
    .addColumn('seq', engine === 'sqlite' ? 'integer' : 'bigint', column =>
      engine === 'sqlite' ? column.primaryKey().autoIncrement() : column.primaryKey().generatedAlwaysAsIdentity(),
    )
    .addColumn('shop', 'text', column => column.notNull())
    .addColumn('key', 'text', column => column.notNull())
    .addColumn('job', 'text', column => column.notNull())
    .addColumn('revision', 'text', column => column.notNull())
    .addColumn('station', 'text', column => column.notNull())
    .addColumn('device', 'text', column => column.notNull())
    .addColumn('device_time', 'text', column => column.notNull())
    .addColumn('server_time', 'text', column => column.notNull())
    .addColumn('what', 'text', column => column.notNull())
    .addUniqueConstraint('floor_event_key', ['shop', 'key'])
    .execute();
  await db.schema.createIndex('floor_event_job').on('floor_event').columns(['shop', 'job', 'seq']).execute();
}

/** The database itself refuses to change or lose an event, whoever asks. */
const neverChanged = (engine: Engine): readonly string[] =>
  engine === 'sqlite'
    ? ['UPDATE', 'DELETE'].map(
        act =>
          `CREATE TRIGGER floor_event_no_${act.toLowerCase()} BEFORE ${act} ON floor_event
           BEGIN SELECT RAISE(ABORT, 'the ledger is only added to'); END`,
      )
    : [
        `CREATE FUNCTION floor_event_only_grows() RETURNS trigger LANGUAGE plpgsql AS
         $$ BEGIN RAISE EXCEPTION 'the ledger is only added to'; END $$`,
        `CREATE TRIGGER floor_event_only_grows BEFORE UPDATE OR DELETE ON floor_event
         FOR EACH ROW EXECUTE FUNCTION floor_event_only_grows()`,
        `CREATE TRIGGER floor_event_not_emptied BEFORE TRUNCATE ON floor_event
         FOR EACH STATEMENT EXECUTE FUNCTION floor_event_only_grows()`,
      ];
