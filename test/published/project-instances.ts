import { readFileSync } from 'node:fs';
import { PLAIN_CLOCK, type Project } from '../../src/layout/days/project/project.ts';

export type Instance = { readonly name: string; readonly optimum: number; readonly project: Project };

/** The published projects of a set, as `fixtures/published/project-scheduling/SOURCE.md` tells how they are written. */
export function readInstances(set: 'j30' | 'j60'): readonly Instance[] {
  const folder = new URL('../../fixtures/published/project-scheduling/', import.meta.url);
  return readFileSync(new URL(`${set}.txt`, folder), 'utf8')
    .trim()
    .split('\n\n')
    .map(readInstance);
}

function readInstance(text: string): Instance {
  const [head = '', capacities = '', durations = '', ...rest] = text.split('\n');
  const [set = '', number = '', optimum = ''] = head.split(' ');
  const needs = rest.slice(0, -1).map(numbers);
  const successors = (rest.at(-1) ?? '').split('|').map(numbers);
  return {
    name: `${set} ${number}`,
    optimum: Number(optimum),
    project: {
      clock: PLAIN_CLOCK,
      capacities: numbers(capacities),
      activities: numbers(durations).map((duration, at) => ({
        duration,
        wait: 0,
        hold: 0,
        after: successors.flatMap((next, before) => (next.includes(at + 1) ? [before] : [])),
        needs: needs.flatMap((amounts, resource) =>
          (amounts[at] ?? 0) > 0 ? [{ resource, amount: amounts[at] ?? 0, held: false }] : [],
        ),
      })),
    },
  };
}

const numbers = (line: string): readonly number[] => line.split(' ').filter(Boolean).map(Number);
