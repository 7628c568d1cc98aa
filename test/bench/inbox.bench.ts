import { copyFile, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import ExcelJS from 'exceljs';
import { openBuilders } from '../../src/commands/inbox-builders.ts';
import { openInbox } from '../../src/inbox/index.ts';
import { machine } from '../../src/machine.ts';
import type { Measurement } from './measurement.ts';

const KITCHEN = new URL('../../fixtures/demo/kitchen.xlsx', import.meta.url).pathname;
const SMALL = new URL('../../fixtures/demo/small.xlsx', import.meta.url).pathname;
const POLL_MS = 500;
const MANY = 12;

/** From the end of a copy to the packet under its final name, settling included; and many workbooks at once. */
export async function measure(): Promise<readonly Measurement[]> {
  const [first, second] = await oneAfterTheOther();
  const alone = await manyAtOnce(1);
  const together = await manyAtOnce(availableParallelism());
  const target = availableParallelism() < 2 ? {} : { target: '≤ 0.65 of one builder', met: together <= 0.65 * alone };
  return [
    { what: 'kitchen dropped → packet, first of the day', unit: 's', ours: first },
    {
      what: 'kitchen dropped → packet, changed and dropped again',
      unit: 's',
      ours: second,
      target: '≤ 3 s',
      met: second <= 3,
    },
    {
      what: `${MANY} workbooks dropped at once → packets`,
      unit: 's',
      ours: together,
      peer: { name: 'one builder', value: alone },
      ...target,
    },
  ];
}

async function oneAfterTheOther(): Promise<readonly [number, number]> {
  return inFolder(async root => {
    const inbox = await openInbox(root, machine, openBuilders(1, undefined), () => undefined);
    const seconds: number[] = [];
    for (const note of ['first', 'second']) {
      await writeFile(join(root, '.kitchen'), await noted(KITCHEN, note));
      await copyFile(join(root, '.kitchen'), join(root, 'kitchen.xlsx'));
      const start = performance.now();
      do {
        await inbox.poll();
        await sleep(POLL_MS);
      } while ((await packetsIn(root)) < seconds.length + 1);
      seconds.push((performance.now() - start) / 1000);
    }
    await inbox.close();
    return [seconds[0] ?? 0, seconds[1] ?? 0];
  });
}

/** Different jobs, so that none has to wait for another. */
async function manyAtOnce(builders: number): Promise<number> {
  return inFolder(async root => {
    for (let index = 0; index < MANY; index++)
      await writeFile(join(root, `w${index}.xlsx`), await noted(SMALL, `${index}`, `J-${index}`));
    const inbox = await openInbox(root, machine, openBuilders(builders, undefined), () => undefined);
    const start = performance.now();
    do {
      await inbox.poll();
      await sleep(50);
    } while (inbox.waiting().length > 0);
    const seconds = (performance.now() - start) / 1000;
    await inbox.close();
    return seconds;
  });
}

async function inFolder<T>(work: (root: string) => Promise<T>): Promise<T> {
  const root = await mkdtemp(join(tmpdir(), 'inbox-'));
  try {
    return await work(root);
  } finally {
    await rm(root, { recursive: true, force: true });
  }
}

/** A demo workbook with a customer, and perhaps a job number, of its own. */
async function noted(demo: string, customer: string, job?: string): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load((await readFile(demo)) as unknown as ExcelJS.Buffer);
  book.getWorksheet('Job')?.eachRow(row => {
    if (row.getCell(1).text === 'Customer') row.getCell(2).value = customer;
    if (row.getCell(1).text === 'Job number' && job !== undefined) row.getCell(2).value = job;
  });
  return new Uint8Array(await book.xlsx.writeBuffer());
}

async function packetsIn(root: string): Promise<number> {
  const jobs = await readdir(join(root, 'packets')).catch(() => []);
  const revisions = await Promise.all(jobs.map(job => readdir(join(root, 'packets', job))));
  return revisions.flat().filter(name => !name.startsWith('.')).length;
}
