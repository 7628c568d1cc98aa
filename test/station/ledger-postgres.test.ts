import pg from 'pg';
import { afterAll, describe, expect, it } from 'vitest';
import { progressOf } from '../../src/station/floor/progress.ts';
import { shelve } from '../../src/station/floor/shelf.ts';
import { openPostgres } from '../../src/station/ledger/postgres.ts';
import { stateIn } from '../../src/station/states.ts';
import { aDesk, aScan, summary } from '../support/day.ts';
import { aManifest } from '../support/manifest.ts';
import { startPostgres } from '../support/postgres.ts';
import { daysOnTheFloor } from './day.contract.ts';
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

daysOnTheFloor('PostgreSQL', async () => (await open()).ledger);

describe('two hosts on one ledger', () => {
  const manifest = aManifest({ cabinets: ['B1', 'B2'] });

  it('know of each other’s scans: what one counted is twice at the other', async () => {
    const { ledger, again } = await open();
    const [one, two] = [await aDesk([manifest], ledger), await aDesk([manifest], await again())];
    const stile = { code: 'B1.A.1L-SL', operation: 'crosscut-rough' };
    expect(summary(await one.desk.scan(aScan('a', stile)))).toMatch(/^done/);
    expect(summary(await two.desk.scan(aScan('b', stile)))).toMatch(/^twice/);
    expect(summary(await two.desk.scan(aScan('c', { act: 'undo', code: aScan('a', stile).key })))).toMatch(/^undone/);
    expect(summary(await one.desk.scan(aScan('d', stile)))).toMatch(/^done/);
    await Promise.all([one.ledger.close(), two.ledger.close()]);
  });

  it('take in once what happened before a job was opened', async () => {
    const { ledger, again } = await open();
    const [one, two] = [await aDesk([manifest], ledger), await aDesk([manifest], await again())];
    await one.desk.scan(aScan('a', { code: 'B1.A.1L-SL' }));
    // The second host reads the job with the scan in it, and then hears of the scan.
    expect((await two.desk.progress('K7'))?.recent).toHaveLength(1);
    await two.desk.catchUp();
    expect((await two.desk.progress('K7'))?.recent).toHaveLength(1);
    await Promise.all([one.ledger.close(), two.ledger.close()]);
  });

  it('end with the same state, that of the ledger, however their scans meet', async () => {
    const { ledger, again } = await open();
    const hosts = [await aDesk([manifest], ledger), await aDesk([manifest], await again())];
    const told: string[] = [];
    hosts[1]?.desk.follow(job => told.push(job));
    const scans = manifest.parts.flatMap(part =>
      part.route.flatMap(operation => [0, 1].map(host => ({ host, part, operation }))),
    );
    await Promise.all(
      scans.map(({ host, part, operation }) =>
        hosts[host]?.desk.scan(
          aScan(`${host} ${part.code} ${operation}`, { code: part.code, operation, agreed: ['order'], reason: 'both' }),
        ),
      ),
    );
    await Promise.all(hosts.map(host => host.desk.catchUp()));
    const [one, two] = await Promise.all(hosts.map(host => host.desk.progress('K7')));
    expect(one).toEqual(two);
    const job = shelve([manifest]).jobs.get('K7');
    if (job === undefined) throw new Error('the job is not on the shelf');
    expect(one).toEqual(progressOf(job.book, await stateIn(ledger, 'K7'), new Date('2026-03-04T08:00:00.000Z')));
    expect(told).toContain('K7');
    await Promise.all(hosts.map(host => host.ledger.close()));
  });
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
