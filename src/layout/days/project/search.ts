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

/**
 * A short plan for a project. First the priority rules, by the parallel and the serial scheme; then, until the effort is
 * spent or a plan meets the bound, a population of lists is crossed, shaken and justified (a genetic algorithm over
 * activity lists: Hartmann, Naval Research Logistics 45, 1998; with justification: Valls, Ballestín and Quintanilla,
 * 2005). The same project, effort and seed give the same plan.
 */
export function shortPlan(project: Project, effort: Effort): Found {
  const network = networkOf(project);
  const bound = boundOf(network);
  const profile = emptyProfile(project);
  const chance = chanceFrom(effort.seed);
  let plans = 0;
  let best: Plan | undefined;
  const note = (plan: Plan, made: number): Plan => {
    plans += made;
    if (best === undefined || plan.makespan < best.makespan) best = plan;
    return plan;
  };
  const isDone = (): boolean => plans >= effort.plans || (best !== undefined && best.makespan <= bound.makespan);
  const improved = (list: ArrayLike<number>): Plan =>
    note(justify(network, profile, serial(network, profile, list)), PLANS_OF_A_JUSTIFICATION);

  const population: Plan[] = [];
  for (const rule of RULES) {
    population.push(note(dispatch(network, rule(network)), 1));
    if (isDone()) return { plan: population.reduce(shorter), bound, plans };
    population.push(improved(byRule(network, rule)), improved(byStart(network, population.at(-1)?.starts ?? [])));
  }
  while (population.length < POPULATION && !isDone()) population.push(improved(drawn(network, chance)));
  while (!isDone()) {
    const [mother, father] = [chosen(population, chance), chosen(population, chance)];
    const list = crossed(byStart(network, mother.starts), byStart(network, father.starts), chance);
    shake(network, list, chance);
    replaceWorst(population, improved(list));
  }
  return { plan: best ?? population.reduce(shorter), bound, plans };
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
