import { problemOf } from '../../src/layout/cutting/in-units.ts';
import { planCutting } from '../../src/layout/cutting/index.ts';
import { LOOKS_A_SECOND, search } from '../../src/layout/cutting/search.ts';
import type { Solver } from '../../src/layout/solver.ts';
import { verify } from '../layout/verify.ts';
import { asJob, type Instance } from '../published/cutting/instances.ts';

/** Bins and bound of a plan that the judge has nothing against. */
export function planned(
  solver: Solver,
  instance: Instance,
  seconds: number,
  stages: number,
): { readonly bins: number; readonly bound: number } {
  const job = asJob(instance, 'free', seconds);
  const [stock] = job.stock;
  if (stock === undefined) throw new Error('no stock');
  if (stages === 4) {
    // Between what a shop can say (2, 3 or any) lies what the literature calls three stages with trimming.
    const found = search({ ...problemOf(job.blanks, stock, job.shop), stages }, noPatience(seconds), 1, solver);
    return { bins: found.bins.length, bound: found.bound.bins };
  }
  const [plan] = planCutting(job.blanks, job, solver).value;
  if (plan === undefined) throw new Error(`${instance.name} has no plan`);
  const wrong = verify(plan, job.blanks, stock, job.shop);
  if (wrong.length > 0) throw new Error(`${instance.name}: ${wrong[0]}`);
  return { bins: plan.bins.length, bound: plan.bound.bins };
}

/** So many seconds, and all of them. */
export const noPatience = (seconds: number) => ({
  looks: seconds * LOOKS_A_SECOND,
  patience: Number.POSITIVE_INFINITY,
});

export const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
