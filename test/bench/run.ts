import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, platform, tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Beside, figure, type Measurement } from './measurement.ts';
import { RESULTS, type Results, readResults } from './results.ts';

/**
 * `npm run bench [subject …]`: every `*.bench.ts`, or those named (`cutting` names all whose names begin so), each in a
 * process of its own. What others gave before stays.
 */
const here = new URL('.', import.meta.url).pathname;
const wanted = process.argv.slice(2);
const subjects = readdirSync(here)
  .flatMap(file => (file.endsWith('.bench.ts') ? [file.slice(0, -'.bench.ts'.length)] : []))
  .filter(subject => wanted.length === 0 || wanted.some(each => subject === each || subject.startsWith(`${each}-`)))
  .sort();

const failed = subjects.filter(subject => {
  const measurements = measureApart(subject);
  print(subject, measurements);
  if (measurements === undefined) return true;
  // At once, so that an evening's measuring is not lost with its last bench.
  writeFileSync(RESULTS, `${JSON.stringify(recordWith(subject, measurements), null, 2)}\n`);
  return false;
});
process.exitCode = failed.length > 0 ? 1 : 0;

/** In its own process, so that one bench's memory and warm code are not another's. */
function measureApart(subject: string): readonly Measurement[] | undefined {
  const folder = mkdtempSync(join(tmpdir(), 'stilebook-bench-'));
  const answer = join(folder, 'answer.json');
  // From a file and not from a text: threads take over how their process was started.
  const words = ['--import', 'tsx', join(here, 'apart.ts'), subject, answer];
  const { status } = spawnSync(process.execPath, words, {
    stdio: ['ignore', 'inherit', 'inherit'],
    cwd: join(here, '../..'),
  });
  const measured = status === 0 ? (JSON.parse(readFileSync(answer, 'utf8')) as readonly Measurement[]) : undefined;
  rmSync(folder, { recursive: true });
  return measured;
}

function print(subject: string, measurements: readonly Measurement[] | undefined): void {
  console.log(`\n${subject}`);
  if (measurements === undefined) console.log('  failed');
  for (const { what, unit, ours, peer, floor, target, met } of measurements ?? [])
    console.log(
      `  ${what.padEnd(52)} ${figure(ours).padStart(9)} ${unit.padEnd(9)}${beside('peer', ours, peer)}${beside('floor', ours, floor)}${
        target === undefined ? '' : `  ${met === undefined ? '' : met ? '✓ ' : '✗ '}${target}`
      }`,
    );
}

function beside(kind: string, ours: number, other: Beside | undefined): string {
  return other === undefined ? '' : `  ${kind} ${other.name} ${figure(other.value)} (${figure(ours / other.value)} ×)`;
}

function recordWith(subject: string, measurements: readonly Measurement[]): Results {
  const machine = { processor: cpus()[0]?.model ?? 'unknown', cores: cpus().length, platform: platform() };
  const all: Results = { ...readResults(), [subject]: { machine, node: process.version, measurements } };
  return Object.fromEntries(Object.entries(all).sort(([one], [two]) => (one < two ? -1 : 1)));
}
