import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calculate/index.ts';
import type { Job, Opening } from '../../src/import/job.ts';
import { loadSolver } from '../../src/layout/solver.ts';
import { planWoodAndWork, type WoodAndWork } from '../../src/layout/wood-and-work.ts';
import { nm } from '../../src/units/length.ts';
import { aFrameStyle, aJob, anOpening } from '../support/a-job.ts';
import { length } from '../support/length.ts';
import { law } from '../support/runs.ts';
import { someOpenings } from './some-openings.ts';
import { verifyWork } from './verify-work.ts';

const solver = await loadSolver();

describe('the work of a job', () => {
  it('can be carried from machine to machine', () => {
    const job = aJob();
    expect(faults(job)).toEqual([]);
  });

  it('can be so for every job, groove first or cope first', () => {
    law<[readonly Opening[], 'groove-first' | 'cope-first']>(
      [someOpenings(5), fc.constantFrom('groove-first', 'cope-first')],
      (openings, order) => {
        const { shop } = aJob();
        expect(faults(aJob({ openings, shop: { ...shop, router: { ...shop.router, order } } }))).toEqual([]);
      },
      30,
    );
  });

  it('can be so where frames are cut from a sheet, as for paint', () => {
    const painted = aFrameStyle({ frameStock: 'Maple ply 3/4', frameThickness: length('23/32') });
    expect(faults(aJob({ styles: [painted], openings: [anOpening()] }))).toEqual([]);
  });

  it('is the same whatever the order of rows', () => {
    law<[readonly Opening[], number]>(
      [someOpenings(5), fc.nat()],
      (openings, turn) => {
        const at = turn % openings.length;
        const turned = [...openings.slice(at), ...openings.slice(0, at)].reverse();
        expect(planOf(aJob({ openings: turned })).operations).toEqual(planOf(aJob({ openings })).operations);
      },
      10,
    );
  });
});

describe('the judge sees', () => {
  const job = aJob();
  const doorSet = calculate(job).value;
  const plan = planWoodAndWork(job, doorSet, solver).value;
  const [firstOfMany] = plan.operations;
  const tamper = (id: string, change: (pieces: Setups) => Setups): WoodAndWork => ({
    ...plan,
    operations: plan.operations.map(operation =>
      operation.id === id ? { ...operation, setups: change(operation.setups) } : operation,
    ),
  });
  type Setups = NonNullable<typeof firstOfMany>['setups'];
  it.each<[string, WoodAndWork, RegExp]>([
    [
      'a piece left out',
      tamper(
        'cope',
        ([first, ...rest]) => [{ ...first, pieces: first?.pieces.slice(1) ?? [] } as Setups[0], ...rest] as Setups,
      ),
      /at cope 0 times/,
    ],
    ['a piece run twice', tamper('cut-length', all => [...all, ...all.slice(0, 1)]), /at cut-length 2 times/],
    ['a setting made twice', tamper('cut-length', all => [...all, ...all.slice(0, 1)]), /set twice/],
    ['short ones first', tamper('cut-length', all => [...all].reverse()), /not set longest first/],
    [
      'a wrong setting',
      tamper('rip-width', all =>
        all.map(each => ({ ...each, settings: each.settings.map(set => ({ ...set, value: nm(set.value + 1) })) })),
      ),
      /wants final-width/,
    ],
    [
      'an operation left out',
      { ...plan, operations: plan.operations.filter(each => each.id !== 'inspect') },
      /at inspect 0 times/,
    ],
    ['operations out of order', { ...plan, operations: [...plan.operations].reverse() }, /carried back/],
    ['a part without wood', { ...plan, blanks: plan.blanks.slice(1) }, /has 0 blanks/],
    [
      'a blank that is too short',
      { ...plan, blanks: plan.blanks.map(each => ({ ...each, length: length('12') })) },
      /is too small/,
    ],
    ['a door that is not glued', { ...plan, batches: plan.batches.slice(1) }, /not each frame is glued once/],
    [
      'a batch with too many clamps',
      { ...plan, batches: [{ number: 1, doors: plan.batches.flatMap(each => each.doors), clamps: 12 }] },
      /takes \d+ clamps and says 12/,
    ],
  ])('%s', (_what, tampered, finding) => {
    expect(verifyWork(tampered, job, doorSet).join('\n')).toMatch(finding);
  });
});

const planOf = (job: Job): WoodAndWork => planWoodAndWork(job, calculate(job).value, solver).value;

function faults(job: Job): readonly string[] {
  const doorSet = calculate(job).value;
  return verifyWork(planWoodAndWork(job, doorSet, solver).value, job, doorSet);
}
