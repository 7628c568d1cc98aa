import { calculate } from '../../src/calculate/index.ts';
import type { Job } from '../../src/import/job.ts';
import { planBlanks } from '../../src/layout/blanks/index.ts';
import { planDays } from '../../src/layout/days/index.ts';
import { shortPlan } from '../../src/layout/days/project/search.ts';
import { planFinish } from '../../src/layout/finishing/index.ts';
import { planBatches } from '../../src/layout/glue-up.ts';
import { planOperations } from '../../src/layout/operations/index.ts';
import { workOf } from '../../src/layout/work.ts';
import { hours } from '../../src/units/duration.ts';
import { aFinishStep } from '../layout/finishing/a-finish-step.ts';
import { readInstances } from '../published/project-instances.ts';
import { aJob } from '../support/a-job.ts';
import { growth, type Measurement, timed } from './measurement.ts';

/** How short the plans of published projects come out, beside their proven optima, and how long the days of a job take. */
export async function measure(): Promise<readonly Measurement[]> {
  // A plan of twice the activities takes more than twice the time.
  const sets = [await published('j30', 25_000), await published('j60', 12_000)].flat();
  const small = await days(2);
  const large = await days(700);
  const exponent = growth([small.doors, small.processorSeconds], [large.doors, large.processorSeconds]);
  return [
    ...sets,
    { what: `days of ${small.doors} doors`, unit: 's of processor', ours: small.processorSeconds },
    {
      what: `days of ${large.doors} doors`,
      unit: 's of processor',
      ours: large.processorSeconds,
      target: '≤ 5 s',
      met: large.processorSeconds <= 5,
    },
    {
      what: 'growth of the days with the doors',
      unit: 'exponent',
      ours: exponent,
      target: '≤ 1.1',
      met: exponent <= 1.1,
    },
  ];
}

/** The sum of the makespans of a set beside the sum of the optima, and the processor's time for each project. */
async function published(set: 'j30' | 'j60', plans: number): Promise<readonly Measurement[]> {
  const instances = readInstances(set);
  const run = await timed(() => instances.map(({ project }) => shortPlan(project, { plans, seed: 1 }).plan.makespan));
  const over =
    instances.reduce((sum, { optimum }, at) => sum + (run.value[at] ?? 0) / optimum - 1, 0) / instances.length;
  const total = (all: readonly number[]): number => all.reduce((sum, each) => sum + each, 0);
  const each = run.processorSeconds / instances.length;
  return [
    {
      what: `${instances.length} projects of PSPLIB ${set}, all makespans`,
      unit: 'units of time',
      ours: total(run.value),
      peer: { name: 'proven optima', value: total(instances.map(({ optimum }) => optimum)) },
    },
    {
      what: `… above the optimum on average (${set})`,
      unit: '%',
      ours: 100 * over,
      target: '≤ 3 %',
      met: over <= 0.03,
    },
    { what: `… for each (${set})`, unit: 's of processor', ours: each, target: '≤ 1 s', met: each <= 1 },
  ];
}

async function days(quantity: number) {
  const base = aJob();
  const job: Job = {
    ...base,
    openings: base.openings.map(opening => ({ ...opening, quantity: opening.quantity * quantity })),
    finish: [
      aFinishStep({ kind: 'stain', name: 'Stain', transfer: 1, wait: hours(12) }),
      aFinishStep({ coats: 3, wait: hours(4) }),
      aFinishStep({ kind: 'wait', name: 'Cure', wait: hours(48) }),
    ],
  };
  const doorSet = calculate(job).value;
  const work = workOf(job, doorSet);
  const finish = planFinish(job, doorSet).value;
  const batches = planBatches(doorSet.doors, job.shop);
  const operations = planOperations(work, { blanks: planBlanks(work), batches, cutPlans: [], finish });
  const run = await timed(() => planDays(job, doorSet, operations, batches, finish));
  return { doors: doorSet.doors.length, processorSeconds: run.processorSeconds };
}
