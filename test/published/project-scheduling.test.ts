import { describe, expect, it } from 'vitest';
import { shortPlan } from '../../src/layout/days/project/search.ts';
import { judgeProject } from '../layout/days/judge-project.ts';
import { readInstances } from './project-instances.ts';

// PSPLIB (Kolisch and Sprecher, 1996) with proven optima; see fixtures/published/project-scheduling/SOURCE.md.
const instances = [...readInstances('j30'), ...readInstances('j60')];
const tried = instances.map(instance => ({ ...instance, ...shortPlan(instance.project, { plans: 3000, seed: 1 }) }));

describe('published projects', () => {
  it('are read whole: every activity has its resources, and some successor or none', () => {
    expect(instances.map(({ project }) => [project.capacities.length, project.activities.length])).toEqual([
      ...Array.from({ length: 12 }, () => [4, 30]),
      ...Array.from({ length: 6 }, () => [4, 60]),
    ]);
  });

  it.each(tried)(
    '$name: the plan keeps to the rules; bound ≤ optimum $optimum ≤ plan',
    ({ project, plan, bound, optimum }) => {
      expect(judgeProject(project, plan)).toEqual([]);
      expect(bound.makespan).toBeLessThanOrEqual(optimum);
      expect(plan.makespan).toBeGreaterThanOrEqual(optimum);
      expect(plan.makespan).toBeLessThanOrEqual(optimum * 1.06);
    },
  );

  // The aim is 3 % on average with a second for each; 3,000 plans take about a tenth of that.
  it('are planned within 3 % of the optimum on average', () => {
    const over = tried.map(({ plan, optimum }) => plan.makespan / optimum - 1);
    expect(over.reduce((sum, each) => sum + each, 0) / over.length).toBeLessThanOrEqual(0.03);
  });
});
