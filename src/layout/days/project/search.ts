import { type Bound, boundOf } from './bound.ts';
import { type Chance, chanceFrom } from './chance.ts';
import { dispatch } from './dispatch.ts';
import { activityAt, type Network, networkOf } from './network.ts';
import { emptyProfile } from './profile.ts';
import type { Plan, Project } from './project.ts';
import { byRule, drawn, RULES } from './rules.ts';
import { byStart, justify, serial } from './serial.ts';

export type Effort = {
  /** How many plans may be made, the first ones and each move of a justification included. */
  readonly plans: number;
  readonly seed: number;
};

export type Found = { readonly plan: Plan; readonly bound: Bound; readonly plans: number };

/** A search that can be gone on with: the same plans come in the same order, however often it rests. */
export type Search = {
  readonly bound: Bound;
  /** Goes on until so many plans were made in all, or one meets the bound. */
  readonly until: (plans: number) => Found;
};

/** The shortest plan of a search that is gone on with until the effort is spent. */
export const shortPlan = (project: Project, { plans, seed }: Effort): Found => searchFor(project, seed).until(plans);

/**
 * Looks for a short plan for a project: first the priority rules, by the parallel and the serial scheme; then a population
 * of lists is crossed, shaken and justified (a genetic algorithm over activity lists: Hartmann, Naval Research Logistics
 * 45, 1998; with justification: Valls, Ballestín and Quintanilla, 2005). The same project and seed give the same plans.
 */
export function searchFor(project: Project, seed: number): Search {
  const network = networkOf(project);
  const bound = boundOf(network);
  const attempts = attemptsAt(network, chanceFrom(seed));
  const first = attempts.next().value;
  let best = first.plan;
  let { made } = first;
  return {
    bound,
    until: plans => {
      while (made < plans && best.makespan > bound.makespan) {
        const attempt = attempts.next().value;
        made += attempt.made;
        best = shorter(best, attempt.plan);
      }
      return { plan: best, bound, plans: made };
    },
  };
}

/** A plan, and how many were made on the way to it. */
type Attempt = { readonly plan: Plan; readonly made: number };

function* attemptsAt(network: Network, chance: Chance): Generator<Attempt, never> {
  const profile = emptyProfile(network.project);
  const improved = (list: ArrayLike<number>): Attempt => ({
    plan: justify(network, profile, serial(network, profile, list)),
    made: PLANS_OF_A_JUSTIFICATION,
  });
  const population: Plan[] = [];
  function* taken(attempt: Attempt): Generator<Attempt, void> {
    population.push(attempt.plan);
    yield attempt;
  }
  for (const rule of RULES) {
    const plan = dispatch(network, rule(network));
    yield* taken({ plan, made: 1 });
    yield* taken(improved(byRule(network, rule)));
    yield* taken(improved(byStart(network, plan.starts)));
  }
  while (population.length < POPULATION) yield* taken(improved(drawn(network, chance)));
  for (;;) {
    const [mother, father] = [chosen(population, chance), chosen(population, chance)];
    const list = crossed(byStart(network, mother.starts), byStart(network, father.starts), chance);
    shake(network, list, chance);
    const attempt = improved(list);
    replaceWorst(population, attempt.plan);
    yield attempt;
  }
}

const shorter = (a: Plan, b: Plan): Plan => (b.makespan < a.makespan ? b : a);

/** The shorter of two drawn plans. */
const chosen = (population: readonly Plan[], chance: Chance): Plan => {
  const [first, second] = [population[chance.whole(population.length)], population[chance.whole(population.length)]];
  if (first === undefined || second === undefined) throw new Error('nothing was planned');
  return shorter(first, second);
};

/** The mother's list, but between two places in the order of the father's. */
function crossed(mother: Int32Array, father: Int32Array, chance: Chance): Int32Array {
  const [first, second] = [chance.whole(mother.length + 1), chance.whole(mother.length + 1)];
  const [from, to] = [Math.min(first, second), Math.max(first, second)];
  const list = new Int32Array(mother.length);
  const used = new Uint8Array(mother.length);
  let place = 0;
  const add = (at: number): void => {
    if (used[at] === 1) return;
    used[at] = 1;
    list[place] = at;
    place += 1;
  };
  for (let at = 0; at < from; at += 1) add(mother[at] ?? 0);
  for (let at = 0; at < father.length && place < to; at += 1) add(father[at] ?? 0);
  for (let at = 0; at < mother.length; at += 1) add(mother[at] ?? 0);
  return list;
}

/** Some activities are moved, each to anywhere between the last that it comes after and the first that comes after it. */
function shake(network: Network, list: Int32Array, chance: Chance): void {
  for (let moves = 1 + chance.whole(Math.ceil(list.length * SHAKEN)); moves > 0; moves -= 1) {
    const place = chance.whole(list.length);
    const at = list[place] ?? 0;
    const { after } = activityAt(network.project, at);
    const successors = network.successors[at] ?? [];
    let from = place;
    while (from > 0 && !after.includes(list[from - 1] ?? 0)) from -= 1;
    let to = place;
    while (to + 1 < list.length && !successors.includes(list[to + 1] ?? 0)) to += 1;
    const target = from + chance.whole(to - from + 1);
    if (target < place) list.copyWithin(target + 1, target, place);
    else list.copyWithin(place, place + 1, target + 1);
    list[target] = at;
  }
}

/**
 * The new plan takes the place of the longest one, unless it is longer still. Of plans that start everything at the same
 * times one is enough: a population of one plan finds nothing new.
 */
function replaceWorst(population: Plan[], plan: Plan): void {
  let worst = 0;
  for (const [at, each] of population.entries()) {
    if (each.makespan === plan.makespan && isSame(each, plan)) return;
    if (each.makespan >= (population[worst]?.makespan ?? 0)) worst = at;
  }
  if (plan.makespan <= (population[worst]?.makespan ?? 0)) population[worst] = plan;
}

const isSame = (a: Plan, b: Plan): boolean => a.starts.every((start, at) => start === b.starts[at]);

const PLANS_OF_A_JUSTIFICATION = 3;
const POPULATION = 40;
/** Share of the activities that is moved at most. */
const SHAKEN = 0.15;
