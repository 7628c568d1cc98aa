import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFile, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { availableParallelism, cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as sleep } from 'node:timers/promises';
import ExcelJS from 'exceljs';
import { bundled } from './bundled.ts';
import type { Measurement } from './measurement.ts';

const KITCHEN = new URL('../../fixtures/demo/kitchen.xlsx', import.meta.url).pathname;
const SMALL = new URL('../../fixtures/demo/small.xlsx', import.meta.url).pathname;
/** The program as it is installed, and a bench bundled as the program is. */
const PROGRAM = 'dist/cli.js';
const MANY = 12;
/** One drop may meet whatever else the machine does. */
const AGAIN = 5;
/** An inbox is opened in the morning; by then it has rehearsed. */
const OPEN_SECONDS = 40;

/** From the end of a copy to the packet under its final name, settling included; and many workbooks at once. */
export async function measure(): Promise<readonly Measurement[]> {
  execFileSync(process.execPath, ['.build.js']);
  const inboxMany = bundled('inbox-many');
  const [atOnce] = await oneAfterTheOther(1, 0);
  const [first = Number.NaN, ...again] = await oneAfterTheOther(1 + AGAIN, OPEN_SECONDS);
  const second = again.sort((one, two) => one - two)[Math.floor(AGAIN / 2)] ?? Number.NaN;
  const alone = await manyAtOnce(inboxMany, 1);
  const together = await manyAtOnce(inboxMany, availableParallelism());
  const target =
    availableParallelism() < 2
      ? {}
      : { target: '≤ 0.65 of one builder', met: together.seconds <= 0.65 * alone.seconds };
  return [
    { what: 'kitchen dropped → packet, as the inbox is started', unit: 's', ours: atOnce ?? Number.NaN },
    { what: 'kitchen dropped → packet, first of the day', unit: 's', ours: first },
    {
      what: `kitchen dropped → packet, changed and dropped again, middle of ${AGAIN}`,
      unit: 's',
      ours: second,
      target: '≤ 3 s',
      met: second <= 3,
    },
    {
      what: `${MANY} workbooks dropped at once → packets`,
      unit: 's',
      ours: together.seconds,
      peer: { name: 'one builder', value: alone.seconds },
      ...target,
    },
    {
      what: '… processors that are busy meanwhile, of the whole machine',
      unit: '',
      ours: together.busy,
      peer: { name: 'one builder', value: alone.busy },
    },
  ];
}

/**
 * By the command as a person starts it, when it has been open for so many seconds: from the end of the copy until it says
 * that the packet is filed.
 */
async function oneAfterTheOther(workbooks: number, openSeconds: number): Promise<readonly number[]> {
  return inFolder(async root => {
    const host = spawn(process.execPath, [PROGRAM, 'inbox', root, '--json'], { stdio: ['ignore', 'pipe', 'inherit'] });
    const news = createInterface({ input: host.stdout })[Symbol.asyncIterator]();
    const dropped = async (note: string): Promise<number> => {
      await writeFile(join(root, '.kitchen'), await noted(KITCHEN, note));
      await copyFile(join(root, '.kitchen'), join(root, 'kitchen.xlsx'));
      const start = performance.now();
      const { value } = await news.next();
      if ((JSON.parse(value) as { kind: string }).kind !== 'packet') throw new Error(`no packet: ${value}`);
      return (performance.now() - start) / 1000;
    };
    try {
      await sleep(openSeconds * 1000);
      const seconds: number[] = [];
      for (let index = 0; index < workbooks; index++) seconds.push(await dropped(`customer ${index}`));
      return seconds;
    } finally {
      host.kill();
      await once(host, 'exit');
    }
  });
}

/** Different jobs, so that none has to wait for another; where two processors share a core, both are busy and hardly faster. */
async function manyAtOnce(
  inboxMany: string,
  builders: number,
): Promise<{ readonly seconds: number; readonly busy: number }> {
  return inFolder(async root => {
    for (let index = 0; index < MANY; index++)
      await writeFile(join(root, `w${index}.xlsx`), await noted(SMALL, `${index}`, `J-${index}`));
    const before = busySeconds();
    const start = performance.now();
    const words = [inboxMany, root, `${builders}`];
    const seconds = Number(execFileSync(process.execPath, words, { encoding: 'utf8' }));
    return { seconds, busy: (busySeconds() - before) / ((performance.now() - start) / 1000) };
  });
}

const busySeconds = (): number =>
  cpus().reduce((sum, { times }) => sum + times.user + times.nice + times.sys, 0) / 1000;

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
