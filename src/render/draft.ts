import type { Door, DoorSet, Part } from '../calculate/door-set.ts';
import type { DoorCode, PartCode } from '../codes/codes.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Job } from '../import/job.ts';
import type { Blank, ShopPlan } from '../layout/shop-plan.ts';
import type { Length } from '../units/length.ts';
import { type LengthFormat, printCaliper, printLength, printSetting } from '../units/print-length.ts';
import type { Pen } from './drawings/pen.ts';
import type { Figure, Measure } from './figure.ts';
import type { PacketWords } from './fill.ts';
import { pageSize } from './flow/paper.ts';
import type { Revision } from './packet.ts';
import { type Quantities, quantities } from './quantities.ts';
import { type Say, sayer } from './say.ts';

/** What the packet is made from: the job as each stage left it, and everything that was found on the way. */
export type RenderInput = {
  readonly job: Job;
  readonly doorSet: DoorSet;
  readonly plan: ShopPlan;
  readonly diagnostics: readonly Diagnostic[];
  readonly revision: Revision;
  /** The program's version. */
  readonly program: string;
};

/** The input with what every sheet needs to write it down: words, numbers as this job prints them, and look-ups. */
export type Draft = RenderInput & {
  readonly say: Say;
  readonly size: (length: Length) => string;
  /** In the job's own unit alone: for what is only named or reckoned with, where `size` may print two. */
  readonly sizeInOne: (length: Length) => string;
  /** Whether `size` prints two: they take lines of their own, or smaller type. */
  readonly hasTwoUnits: boolean;
  /** What is set on a machine, to the tenth of a millimetre or the thousandth of an inch. */
  readonly exact: (length: Length) => string;
  /** What a caliper shows. */
  readonly caliper: (length: Length) => string;
  readonly quantities: Quantities;
  readonly pen: Pen;
  readonly doors: ReadonlyMap<DoorCode, Door>;
  readonly parts: ReadonlyMap<PartCode, Part>;
  readonly partsOf: (door: Door) => readonly Part[];
  readonly blanks: ReadonlyMap<string, Blank>;
  /** Width of a page between its margins, in points. */
  readonly paperWidth: number;
};

/** The data of one template, and the drawings that it places by name. */
export type View<T extends object> = { readonly data: T; readonly figures: ReadonlyMap<string, Figure> };

export function draft(input: RenderInput, words: PacketWords, measure: Measure): Draft {
  const { job, doorSet, plan } = input;
  const size = remembered((length: Length): string => printLength(length, job.shop.printing.lengths));
  const sizeInOne = remembered((length: Length): string => printLength(length, inOneUnit(job)));
  const written = quantities(job.units);
  const parts = new Map(doorSet.parts.map(part => [part.code, part]));
  return {
    ...input,
    size,
    sizeInOne,
    hasTwoUnits: job.shop.printing.lengths.units === 'both',
    exact: length => printSetting(length, job.shop.printing.lengths),
    caliper: length => printCaliper(length, job.shop.printing.lengths),
    say: sayer(words, { length: size, mass: written.mass }),
    quantities: written,
    pen: { measure, print: sizeInOne },
    doors: new Map(doorSet.doors.map(door => [door.code, door])),
    parts,
    partsOf: door => door.parts.flatMap(code => parts.get(code) ?? []),
    blanks: new Map(plan.blanks.map(blank => [blank.code, blank])),
    paperWidth: pageSize(job.paper, 'portrait').width - 2 * MARGIN,
  };
}

/** A job's pieces have a few hundred sizes between them, each printed on many sheets. */
function remembered<T>(print: (what: T) => string): (what: T) => string {
  const printed = new Map<T, string>();
  return what => {
    const known = printed.get(what) ?? print(what);
    printed.set(what, known);
    return known;
  };
}

/** A drawing has no room for lengths in two units: the job's own is the one. */
/** How lengths are written in the job's own unit alone. */
export const inOneUnit = ({ units, shop }: Job): LengthFormat => {
  const { lengths } = shop.printing;
  return lengths.units === 'both' ? { ...lengths, units } : lengths;
};

/** Half an inch, as the templates have it: every printer reaches there, and a punched hole takes no words. */
const MARGIN = 36;
