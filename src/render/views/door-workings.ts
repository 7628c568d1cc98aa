import type { Door, Working } from '../../calculate/door-set.ts';
import { ZERO } from '../../units/length.ts';
import type { Draft } from '../draft.ts';
import { grouped } from '../order.ts';
import { formulaOf, printHow, printNumbers } from '../working.ts';

/** How numbers of a door came about, as it is said: `rail length = W − 2·S + 2·T = 14 3/8 − 2·2 + 2·3/8 = 11 1/8`. */
export type DoorWorking = {
  readonly names: string;
  readonly formula: string;
  readonly numbers: string;
  /** Formula and numbers. */
  readonly how: string;
};

/**
 * The door's numbers, then those of its parts. Numbers that come about in the same way share a line, and what is no sum
 * or leaves nothing over is not told.
 */
export function workings(door: Door, draft: Draft): readonly DoorWorking[] {
  const all = [
    door.width,
    door.height,
    ...door.workings,
    ...draft
      .partsOf(door)
      .flatMap(part => [
        part.length,
        part.width,
        ...(part.shoulder === undefined ? [] : [part.shoulder]),
        ...part.workings,
      ]),
  ];
  const exact = door.width.rest === ZERO && door.height.rest === ZERO;
  const told = all.filter(working => tellsSomething(working) && !(exact && GAPS.test(working.of)));
  return [...grouped(told, working => printHow(working, draft)).entries()].map(([how, alike]) => {
    const names = new Set(alike.map(working => draft.say(`working.${working.of}`)));
    const [working] = alike;
    return {
      names: [...names].join(', '),
      formula: formulaOf(working, draft),
      numbers: printNumbers(working, draft),
      how,
    };
  });
}

/** `stile width = S = 2` is on the drawing, and masses are for `explain`. */
const tellsSomething = (working: Working): boolean =>
  !UNTOLD.has(working.of) && (working.kind === 'fact' || working.terms.length > 1 || working.sharedBy > 1);

/** What is left at the sides: as it was asked for, where no size was rounded. */
const GAPS = /^(overlay|clearance|gap)-/;
const UNTOLD: ReadonlySet<string> = new Set([
  'diagonal',
  'mass',
  'door-mass',
  'finish-area',
  'hinge-count',
  'hinge-place',
  'hinge-edge',
  'edge-allowance',
]);

/** What is said of a door beside its workings, and these. */
type Said = { readonly facts: readonly string[]; readonly workings: readonly DoorWorking[] };

/**
 * The lines of several doors with nothing said twice: what most of them say alike stands before them all, and so does a
 * formula that some of them share, which then stands with each door as its numbers alone.
 */
export function shareWorkings(doors: readonly Said[]): {
  readonly shared: readonly string[];
  readonly formulas: readonly string[];
  readonly own: readonly (readonly string[])[];
} {
  const lines = doors.map(({ facts, workings: all }) => [...facts, ...all.map(lineOf)]);
  const times = timesSaid(lines);
  const alike = new Set([...times.keys()].filter(each => 2 * (times.get(each) ?? 0) > doors.length));
  const formulas = doors.flatMap(({ workings: all }) => [...new Set(all.map(formulaLine))]);
  const told = saidAgain(formulas);
  const isTold = (formula: string): boolean => [...alike].some(line => line.startsWith(`${formula} = `));
  const left = doors.map(({ workings: all }) => all.filter(each => !alike.has(lineOf(each))));
  const ownLine = (each: DoorWorking): string =>
    told.has(formulaLine(each)) ? `${each.names} = ${each.numbers}` : lineOf(each);
  return {
    shared: [...alike],
    formulas: [...told].filter(each => !isTold(each)),
    own: doors.map(({ facts }, index) => [
      ...facts.filter(each => !alike.has(each)),
      ...(left[index] ?? []).map(ownLine),
    ]),
  };
}

/** By how many each line is said, in the order in which it is first met. */
function timesSaid(lists: readonly (readonly string[])[]): ReadonlyMap<string, number> {
  const times = new Map<string, number>();
  for (const list of lists) for (const line of new Set(list)) times.set(line, (times.get(line) ?? 0) + 1);
  return times;
}

/** What is said more than once, in the order in which it is said again. */
function saidAgain(lines: readonly string[]): ReadonlySet<string> {
  const [met, again] = [new Set<string>(), new Set<string>()];
  for (const line of lines) (met.has(line) ? again : met).add(line);
  return again;
}

const lineOf = ({ names, how }: DoorWorking): string => `${names} = ${how}`;
const formulaLine = ({ names, formula }: DoorWorking): string => `${names} = ${formula}`;
