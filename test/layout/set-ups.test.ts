import { describe, expect, it } from 'vitest';
import type { Job } from '../../src/import/job.ts';
import { layOut } from '../../src/layout/index.ts';
import type { OperationId, ShopPlan } from '../../src/layout/shop-plan.ts';
import { loadSolver } from '../../src/layout/solver.ts';
import { aJob } from '../support/a-job.ts';
import { doorSetOf, plainDoor, type Sizes } from './a-door-set.ts';
import { printSetup, setupsOf } from './print-plan.ts';

const solver = await loadSolver();

// All numbers are worked by hand from the sizes in a-door-set.ts; allowances are the shop's defaults.
describe('one plain door, 15 3/8 × 31', () => {
  const plan = planOf([plainDoor()]);
  it.each<[OperationId, readonly string[]]>([
    [
      'crosscut-rough',
      [
        // Stiles 31 + 1, one spare stile like them.
        'rough-length 32 from blade-to-stop: B1.1-STILE-LEFT0 · B1.1-STILE-RIGHT1 · SPARE-STILE-1',
        // Test pieces 16 + 1.
        'rough-length 17 from blade-to-stop: TEST-C1.1 · TEST-C1.2 · TEST-G1.1 · TEST-G1.2',
        // Rails 12 1/8 + 1.
        'rough-length 13 1/8 from blade-to-stop: B1.1-RAIL-BOTTOM3 · B1.1-RAIL-TOP2 · SPARE-RAIL-1',
      ],
    ],
    [
      'rip-width',
      [
        // Stiles, rails, spares and test pieces share the fence: all are 2 in wide.
        'final-width 2 from blade-to-fence: B1.1-STILE-LEFT0 · B1.1-STILE-RIGHT1 · SPARE-STILE-1 · TEST-C1.1 · TEST-C1.2 · TEST-G1.1 · TEST-G1.2 · B1.1-RAIL-BOTTOM3 · B1.1-RAIL-TOP2 · SPARE-RAIL-1',
      ],
    ],
  ])('%s', (id, expected) => {
    expect(setupsOf(plan, id).map(printSetup)).toEqual(expected);
  });
});

function planOf(doors: readonly Sizes[], changes: Partial<Job> = {}): ShopPlan {
  return layOut(aJob(changes), doorSetOf(...doors), solver).value;
}
