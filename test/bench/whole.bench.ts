import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { aLargeWorkbook } from '../support/a-large-workbook.ts';
import { bundled } from './bundled.ts';
import { growth, type Measurement } from './measurement.ts';
import type { WholeJob } from './whole-job.ts';

/** The whole way from workbook to packet at four sizes, each in a process of its own, and the command as a person runs it. */
export async function measure(): Promise<readonly Measurement[]> {
  execFileSync(process.execPath, ['.build.js']);
  const wholeJob = bundled('whole-job');
  const jobs: WholeJob[] = [];
  for (const doors of [24, 240, 2400, 10_000]) jobs.push(await inOwnProcess(wholeJob, doors));
  const [small, middle, large, largest] = jobs as [WholeJob, WholeJob, WholeJob, WholeJob];
  return [
    ...jobs.flatMap(stageLines),
    command(),
    {
      what: `growth of the whole, ${middle.doors} → ${large.doors} doors`,
      unit: '×',
      ours: large.total / middle.total,
      target: '≤ 11',
      met: large.total / middle.total <= 11,
    },
    exponent(small, middle),
    exponent(middle, large),
    exponent(large, largest),
  ];
}

function exponent(few: WholeJob, many: WholeJob): Measurement {
  const ours = growth([few.doors, few.total], [many.doors, many.total]);
  const what = `exponent of growth, ${few.doors} → ${many.doors} doors`;
  return { what, unit: '', ours, target: '≤ 1.1', met: ours <= 1.1 };
}

/** Where the workbooks lie, and the packets. */
const FOLDER = '.cache';

/** Bundled as the program is: what runs the sources would be measured with it. */
async function inOwnProcess(wholeJob: string, doors: number): Promise<WholeJob> {
  const workbook = join(FOLDER, `bench-${doors}.xlsx`);
  writeFileSync(workbook, await aLargeWorkbook(doors));
  const answer = execFileSync(process.execPath, [wholeJob, workbook], {
    encoding: 'utf8',
    maxBuffer: 1 << 20,
  });
  return JSON.parse(answer) as WholeJob;
}

const stageLines = ({ doors, pages, stages, total, floor, memory }: WholeJob): readonly Measurement[] => [
  ...Object.entries(stages).map(([stage, ours]) => ({ what: `${doors} doors: ${stage}`, unit: 's', ours })),
  {
    what: `${doors} doors, ${pages} pages: whole`,
    unit: 's',
    ours: total,
    floor: { name: 'spreadsheet read + deflate', value: floor },
    ...(doors > 1000 && doors < 10_000 ? { target: '≤ 4 × floor', met: total <= 4 * floor } : {}),
  },
  { what: `${doors} doors: peak memory`, unit: 'MB', ours: memory },
];

/** From the start of the process to its end, with the compiled program. */
function command(): Measurement {
  const start = performance.now();
  execFileSync(
    process.execPath,
    ['dist/cli.js', 'packet', 'fixtures/demo/small.xlsx', '--out', '.cache/bench-packet'],
    {
      stdio: 'ignore',
    },
  );
  const ours = (performance.now() - start) / 1000;
  return { what: 'the small demo, from the command line', unit: 's', ours, target: '≤ 1.5 s', met: ours <= 1.5 };
}
