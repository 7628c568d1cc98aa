import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calculate/index.ts';
import { importJob } from '../../src/import/index.ts';
import type { Job } from '../../src/import/job.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';
import { loadSolver } from '../../src/layout/solver.ts';
import { planWoodAndWork, type WoodAndWork } from '../../src/layout/wood-and-work.ts';
import { print, printSetup } from './print-plan.ts';
import { verifyReminders } from './verify-reminders.ts';
import { verifyWork } from './verify-work.ts';

const solver = await loadSolver();

describe.each(['small', 'kitchen'])('the %s demo', name => {
  it('can be made as it is planned, with every caution that it calls for', async () => {
    const { job, doorSet, plan } = await planned(name);
    expect(verifyWork(plan, job, doorSet)).toEqual([]);
    expect(verifyReminders(plan, job, doorSet)).toEqual([]);
  });
});

it('plans the small demo as it was last read and found good', async () => {
  const { plan } = await planned('small');
  await expect(printPlan(plan)).toMatchFileSnapshot('plans/small.txt');
});

async function planned(name: string) {
  const file = new URL(`../../fixtures/demo/${name}.xlsx`, import.meta.url);
  const workbook = (await readXlsx(readFileSync(file), `${name}.xlsx`)).value;
  if (workbook === undefined) throw new Error(`${name}.xlsx does not read`);
  const read = importJob(workbook).value;
  const job: Job = { ...read, shop: { ...read.shop, planning: { ...read.shop.planning, seconds: 0 } } };
  const doorSet = calculate(job).value;
  return { job, doorSet, plan: planWoodAndWork(job, doorSet, solver).value };
}

/** Every operation with its set-ups, as one reads it aloud; which board a blank lies on is the cutting plan's to say. */
const printPlan = ({ operations, blanks, batches }: WoodAndWork): string =>
  [
    ...operations.map(({ id, station, setups, reminders, minutes }) =>
      [
        `${id} at the ${station}, ${minutes.setup} + ${minutes.pieces} min: ${reminders.map(each => each.id).join(', ')}`,
        ...setups.map(setup => {
          const { testPieces, notes, reminders: said } = setup;
          const rest = [
            ...(testPieces.length === 0 ? [] : [`test ${testPieces.join(' ')}`]),
            ...notes,
            ...said.map(({ id: caution, pieces }) => `! ${caution} ${pieces.length}`),
          ];
          return `  ${printSetup(setup)}${rest.length === 0 ? '' : `\n      ${rest.join(', ')}`}`;
        }),
      ].join('\n'),
    ),
    'blanks',
    ...blanks.map(({ code, length, width, stock }) => `  ${code} ${print(length)} × ${print(width)} ${stock}`).sort(),
    'batches',
    ...batches.map(({ number, doors, clamps }) => `  ${number}: ${doors.join(' ')}, ${clamps} clamps`),
    '',
  ].join('\n');
