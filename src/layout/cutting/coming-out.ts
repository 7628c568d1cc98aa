import { type FewPieces, FULL, KNOWN, mixed } from './few-pieces.ts';
import { fits, NONE, type Step } from './parting.ts';

/** What asking about a set costs, in looks; what parting it costs is counted there. */
const LOOKS_A_SET = 22;

/**
 * Whether the first `count` of `sets` come out of one bin by through cuts within the stages. What was asked lately is
 * remembered; of more than five pieces not every way to cut them is tried, so that a no may be wrong.
 */
export function comesOut(few: FewPieces, count: number): boolean {
  const { sets, areas, marks, known, length, width, stages } = few;
  few.spent += LOOKS_A_SET;
  let area = 0;
  let one = 0;
  let two = 0;
  for (let at = 0; at < count; at += 1) {
    const lie = sets[at] ?? 0;
    area += areas[lie] ?? 0;
    one = (one + (marks[2 * lie] ?? 0)) | 0;
    two = (two + (marks[2 * lie + 1] ?? 0)) | 0;
  }
  if (area > few.area || isTooHeavy(few, count)) return false;
  if (count < 4) return fits(few, 0, count, length, width, area, stages, NONE, undefined);
  const place = 2 * (mixed(one ^ two) & (KNOWN - 1));
  if (known[place] === one && (known[place + 1] ?? 0) >> 1 === two >> 1) return ((known[place + 1] ?? 0) & 1) === 1;
  const yes = fits(few, 0, count, length, width, area, stages, NONE, undefined);
  known[place] = one;
  known[place + 1] = (two & ~1) | (yes ? 1 : 0);
  return yes;
}

/** Whether a set weighs more than a bin can hold, by any of the weights. */
function isTooHeavy({ weights, sets }: FewPieces, count: number): boolean {
  for (let by = 0; by < weights.length; by += 1) {
    const each = weights[by];
    let weight = 0;
    for (let at = 0; at < count; at += 1) weight += each?.[sets[at] ?? 0] ?? 0;
    if (weight > FULL) return true;
  }
  return false;
}

/** How a set is taken apart, from the whole bin on; undefined where it does not come out of one. */
export function stepsFor(few: FewPieces, lies: readonly number[]): readonly Step[] | undefined {
  for (const [at, lie] of lies.entries()) few.sets[at] = lie;
  const area = lies.reduce((sum, lie) => sum + (few.areas[lie] ?? 0), 0);
  const steps: Step[] = [];
  const yes = fits(few, 0, lies.length, few.length, few.width, area, few.stages, NONE, steps);
  return yes ? steps.reverse() : undefined;
}
