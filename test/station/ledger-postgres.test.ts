import pg from 'pg';
import { afterAll, describe, expect, it } from 'vitest';
import { openPostgres } from '../../src/station/ledger/postgres.ts';
import { startPostgres } from '../support/postgres.ts';
import { anEvent, everything, ledgerContract } from './ledger.contract.ts';

const server = await startPostgres();
afterAll(() => server.stop());

const troubles: Error[] = [];
let shops = 0;

async function open() {
  shops += 1;
  const shop = `shop ${process.pid} ${shops}`;
  const again = () => openPostgres(server.url, shop, trouble => troubles.push(trouble));
  return { ledger: await again(), again };
}

ledgerContract('PostgreSQL', {
  open,
  meddle: async (_, statement) => {
    const client = new pg.Client(server.url);
    await client.connect();
    try {
      await client.query(statement);
    } finally {
      await client.end();
    }
  },
});

describe('a ledger on a server', () => {
  it('keeps the shops of one server apart, even where their keys meet', async () => {
    const [one, two] = [(await open()).ledger, (await open()).ledger];
    await one.append([anEvent('a', { job: 'one' })]);
    expect(await two.find(['a'])).toEqual([]);
    await two.append([anEvent('a', { job: 'two' })]);
    expect(await everything(one)).toMatchObject([{ key: 'a', job: 'one' }]);
    expect(await everything(two)).toMatchObject([{ key: 'a', job: 'two' }]);
    await Promise.all([one.close(), two.close()]);
  });

  it('is filled by two stations at once, and each sees what the other did', async () => {
    const { ledger, again } = await open();
    const other = await again();
    await ledger.append([anEvent('a')]);
    await other.append([anEvent('a'), anEvent('b')]);
    expect((await everything(ledger)).map(event => event.key)).toEqual(['a', 'b']);
    await Promise.all([ledger.close(), other.close()]);
  });

  it('outlives its connections: told of the break, it works on with new ones', async () => {
    const { ledger } = await open();
    await ledger.append([anEvent('a')]);
    const client = new pg.Client(server.url);
    await client.connect();
    await client.query('SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid <> pg_backend_pid()');
    await client.end();
    await expect
      .poll(async () => (await ledger.append([anEvent('b')]).catch(() => undefined)) !== undefined)
      .toBe(true);
    expect((await everything(ledger)).map(event => event.key)).toEqual(['a', 'b']);
    expect(troubles.length).toBeGreaterThan(0);
    await ledger.close();
  });
});
