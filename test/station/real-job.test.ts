import { beforeAll, describe, expect, it } from 'vitest';
import { makeManifest } from '../../src/render/manifest.ts';
import { type Manifest, manifestSchema } from '../../src/render/packet.ts';
import { openSqlite } from '../../src/station/ledger/sqlite.ts';
import { aDesk, aScan, summary } from '../support/day.ts';
import { demoJob, drafted, laidOut } from '../support/packet.ts';

/** The job of the demo workbook, as its packet tells it to the stations. */
let manifest: Manifest;
beforeAll(async () => {
  const made = makeManifest(drafted(await laidOut(await demoJob('small'))));
  // As a station gets it: through a file.
  manifest = manifestSchema.parse(JSON.parse(JSON.stringify(made)));
});

const isWait = ({ minutes, waitMinutes }: Manifest['operations'][number]): boolean =>
  waitMinutes > 0 && minutes.setup + minutes.pieces === 0;

describe('the demo job on the floor', () => {
  it('is done without one question, where everything is scanned in the order of the packet', async () => {
    const test = await aDesk([manifest], await openSqlite(':memory:', 'test'));
    let time = Date.parse('2026-03-04T08:00:00.000Z');
    const asked: string[] = [];
    for (const operation of manifest.operations) {
      if (!isWait(operation))
        for (const piece of [...manifest.parts, ...manifest.doors].filter(each => each.route.includes(operation.id))) {
          time += 60_000;
          test.setTime(new Date(time));
          const at = new Date(time).toISOString();
          const scan = aScan(`${piece.code} ${operation.id}`, { code: piece.barcode, station: operation.station, at });
          const answer = summary(await test.desk.scan(scan));
          if (!answer.startsWith(`done ${operation.name} `)) asked.push(`${piece.code} at ${operation.id}: ${answer}`);
        }
      time += operation.waitMinutes * 60_000;
    }
    expect(asked).toEqual([]);
    const progress = await test.desk.progress(manifest.job.number);
    expect(progress).toMatchObject({ minutesLeft: 0, batch: undefined, forecast: undefined, remakes: [] });
    expect(progress?.doors).toEqual({ done: manifest.doors.length, total: manifest.doors.length });
  });

  it('is done by its set-up cards too', async () => {
    const test = await aDesk([manifest], await openSqlite(':memory:', 'test'));
    let time = Date.parse('2026-03-04T08:00:00.000Z');
    for (const operation of manifest.operations) {
      test.setTime(new Date(time));
      for (const { barcode } of isWait(operation) ? [] : operation.setups) {
        const card = { code: barcode, station: operation.station, agreed: ['batch'] as const };
        await test.desk.scan(aScan(barcode, { ...card, agreed: [...card.agreed] }));
      }
      time += operation.waitMinutes * 60_000;
    }
    const progress = await test.desk.progress(manifest.job.number);
    expect(progress?.operations.filter(each => each.done < each.total)).toEqual([]);
  });

  it('has an instruction for every piece at every operation that a hand does', () => {
    const lacking = manifest.operations
      .filter(operation => !isWait(operation))
      .flatMap(operation => {
        const atSetups = new Set(operation.setups.flatMap(setup => setup.pieces));
        return [...manifest.parts, ...manifest.doors]
          .filter(piece => piece.route.includes(operation.id) && !atSetups.has(piece.code))
          .map(piece => `${piece.code} at ${operation.id}`);
      });
    expect(lacking).toEqual([]);
  });
});
