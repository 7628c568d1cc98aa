import { readFile } from 'node:fs/promises';
import { calculate } from '../../src/calculate/index.ts';
import { isError } from '../../src/diagnostics/diagnostic.ts';
import { printDiagnostics } from '../../src/diagnostics/print.ts';
import { importJob } from '../../src/import/index.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';
import { chanceOf, mutate } from './mutations.ts';

/** What became of mutated workbooks. `lost` are those of which nothing was said, or that took too long. */
export type Outcome = {
  readonly tried: number;
  readonly refused: number;
  readonly toMend: number;
  readonly sound: number;
  readonly lost: readonly string[];
  readonly slowestSeconds: number;
};

/** No workbook may take longer than this. */
const SECONDS_MAX = 10;

/** Reads so many mutations of the demo workbooks, from the seed on, and says what became of each. */
export async function tryMutations(count: number, firstSeed: number): Promise<Outcome> {
  const demos = await Promise.all(
    ['small', 'kitchen'].map(name => readFile(new URL(`../../fixtures/demo/${name}.xlsx`, import.meta.url))),
  );
  const became = { refused: 0, toMend: 0, sound: 0 };
  const lost: string[] = [];
  let slowestSeconds = 0;
  for (let seed = firstSeed; seed < firstSeed + count; seed++) {
    const started = performance.now();
    try {
      became[await fateOf(mutate(demos[seed % demos.length] ?? new Uint8Array(), chanceOf(seed)))] += 1;
    } catch (failure) {
      lost.push(`seed ${seed}: ${failure instanceof Error ? failure.stack : String(failure)}`);
    }
    const seconds = (performance.now() - started) / 1000;
    slowestSeconds = Math.max(slowestSeconds, seconds);
    if (seconds > SECONDS_MAX) lost.push(`seed ${seed}: ${seconds.toFixed(1)} s`);
  }
  return { tried: count, ...became, lost, slowestSeconds };
}

async function fateOf(bytes: Uint8Array): Promise<'refused' | 'toMend' | 'sound'> {
  const read = await readXlsx(bytes, 'mutated.xlsx');
  // Each finding must have words, in both languages.
  for (const language of ['en', 'es'] as const) printDiagnostics(read.diagnostics, language, String);
  if (read.value === undefined) {
    if (!read.diagnostics.some(isError)) throw new Error('refused without a word');
    return 'refused';
  }
  const job = importJob(read.value);
  const doorSet = calculate(job.value);
  const diagnostics = [...job.diagnostics, ...doorSet.diagnostics];
  for (const language of ['en', 'es'] as const) printDiagnostics(diagnostics, language, String);
  return diagnostics.some(isError) ? 'toMend' : 'sound';
}
