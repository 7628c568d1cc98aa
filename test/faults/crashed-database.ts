import { allEvents } from '../../src/station/ledger/ledger.ts';
import { openPostgres } from '../../src/station/ledger/postgres.ts';
import { aDesk, aScan, summary } from '../support/day.ts';
import { aManifest } from '../support/manifest.ts';
import { startOwnPostgres } from '../support/postgres.ts';

/** What became of scans while their database was killed and started again under a host that went on. */
export type Crashed = {
  readonly scans: number;
  readonly refused: number;
  readonly troubles: number;
  readonly lost: readonly string[];
};

/** Sends every step of a job, killing the database so often in between; what is refused is sent again. */
export async function crashDatabase(crashes: number, cabinets: number): Promise<Crashed> {
  const server = await startOwnPostgres();
  let troubles = 0;
  const ledger = await openPostgres(server.url, 'crash', () => {
    troubles += 1;
  });
  const manifest = aManifest({ cabinets: Array.from({ length: cabinets }, (_, at) => `B${at + 1}`) });
  const { desk } = await aDesk([manifest], ledger);
  const acknowledged = new Set<string>();
  const lost: string[] = [];
  let refused = 0;
  const steps = manifest.parts.flatMap(part =>
    part.route.filter(each => each !== 'rest').map(operation => ({ part, operation })),
  );
  const work = steps.map(async ({ part, operation }, at) => {
    const scan = aScan(`${part.code} ${operation}`, {
      code: part.code,
      operation,
      agreed: ['order'],
      reason: 'x',
      device: `d${at}`,
    });
    for (;;) {
      const answer = await desk.scan(scan).catch(() => undefined);
      if (answer !== undefined) {
        // The steps of one piece are all sent at once: a later one vouches for those before it.
        if (!/^(done|twice)/.test(summary(answer))) lost.push(`${part.code} ${operation}: ${summary(answer)}`);
        if (answer.kind === 'done') acknowledged.add(scan.key);
        return;
      }
      refused += 1;
      await new Promise(done => setTimeout(done, 20));
    }
  });
  for (let at = 0; at < crashes; at += 1) await server.crash();
  await Promise.all(work);
  const found = new Set<string>();
  for await (const page of allEvents(ledger)) for (const event of page) found.add(event.key);
  await ledger.close();
  await server.stop();
  return {
    scans: steps.length,
    refused,
    troubles,
    lost: [
      ...lost,
      ...[...acknowledged].filter(key => !found.has(key)).map(key => `${key} was acknowledged and is not there`),
    ],
  };
}
