import type { Part } from '../calculate/door-set.ts';
import type { BlankCode } from '../codes/codes.ts';
import { RABBET_TEST_WIDTH } from '../trade/machining.ts';
import { longest, plus } from '../units/length.ts';
import { copeSetting, grooveSetting } from './operations/joints.ts';
import { rabbetSetting } from './operations/panels.ts';
import { settingKey } from './operations/pass.ts';
import type { Blank, OperationId } from './shop-plan.ts';
import { type BlankPlan, stockOf, type Work } from './work.ts';

/**
 * Every rough piece that has to come from a board or a sheet: one for each part (for a solid panel, one for each of its
 * strips), test pieces for each bit and rabbet set-up, and spare stiles and rails. Rough blanks are longer and wider
 * than what they become; what comes off a sheet is of final size.
 */
export function planBlanks(work: Work): BlankPlan {
  const standsFor = new Map<BlankCode, Part>();
  const testPieces = new Map<string, readonly BlankCode[]>();
  const blanks = work.doorSet.parts.flatMap(part => blanksOf(part, work));
  for (const { blank, part } of spares(work)) {
    blanks.push(blank);
    standsFor.set(blank.code, part);
  }
  for (const trial of trials(work)) {
    const pieces = testBlanks(trial, work);
    testPieces.set(
      trialKey(trial.operation, trial.key),
      pieces.map(blank => blank.code),
    );
    for (const blank of pieces) standsFor.set(blank.code, trial.longest);
    blanks.push(...pieces);
  }
  return { blanks, standsFor, testPieces };
}

/** Which test pieces belong to a set-up: its operation and its setting. */
export const trialKey = (operation: OperationId, key: string): string => `${operation} ${key}`;

function blanksOf(part: Part, work: Work): Blank[] {
  if (part.stock === undefined) return [];
  const blank = { purpose: 'part', part: part.code, operation: undefined, stock: part.stock } as const;
  const code = part.code as string as BlankCode;
  const [length, width] = [part.length.value, part.width.value];
  if (stockOf(part, work)?.kind === 'sheet') return [{ ...blank, code, length, width }];
  if (part.make.kind === 'solid-panel') return stripsOf(part, part.stock);
  const { lengthAllowance, widthAllowance } = work.shop.rough;
  return [{ ...blank, code, length: plus(length, lengthAllowance), width: plus(width, widthAllowance) }];
}

/** No board is as wide as a panel. The strips' allowance for two jointed edges is in their width already. */
function stripsOf(part: Part, stock: string): Blank[] {
  if (part.make.kind !== 'solid-panel') return [];
  const { strips, stripWidth, blankLength } = part.make.glueUp;
  return Array.from({ length: strips }, (_, at) => ({
    code: `${part.code}.${at + 1}` as BlankCode,
    purpose: 'strip',
    part: part.code,
    operation: undefined,
    stock,
    length: blankLength,
    width: stripWidth,
  }));
}

/**
 * A spare stile and a spare rail for so many of each that get the same groove in the same stock, as long and as wide as
 * the largest of them: it can become any. Middle stiles are short, and a spoiled stile or its spare yields one.
 */
function spares(work: Work): readonly { readonly blank: Blank; readonly part: Part }[] {
  const { lengthAllowance, widthAllowance } = work.shop.rough;
  return (['stile', 'rail'] as const).flatMap(kind => {
    const parts = work.doorSet.parts.filter(part => part.make.kind === kind && isFromBoard(part, work));
    const groups = groupBy(parts, part => `${part.stock} ${grooveKey(part, work)}`);
    return groups
      .flatMap(group => {
        const part = longestOf(group);
        const width = longest(part.width.value, ...group.map(each => each.width.value));
        const blank = {
          purpose: 'spare',
          part: undefined,
          operation: undefined,
          stock: part.stock ?? '',
          length: plus(part.length.value, lengthAllowance),
          width: plus(width, widthAllowance),
        } as const;
        const count = Math.max(1, Math.ceil(group.length / work.shop.testing.spareForEvery));
        return Array.from({ length: count }, () => ({ blank, part }));
      })
      .map(({ blank, part }, at) => ({
        blank: { ...blank, code: `SPARE-${kind.toUpperCase()}-${at + 1}` as BlankCode },
        part,
      }));
  });
}

/** A machine setting that is tried on a piece of the same stock before it touches a part. */
type Trial = {
  readonly operation: OperationId;
  readonly key: string;
  readonly letter: string;
  readonly number: number;
  readonly longest: Part;
};

function trials(work: Work): readonly Trial[] {
  const grooved = work.doorSet.parts.filter(part => isFramePart(part));
  const coped = grooved.filter(part => part.make.kind !== 'stile');
  const rabbeted = work.doorSet.parts.filter(part => hasRabbet(part));
  return [
    ...trialsOf('groove', 'G', grooved, part => grooveKey(part, work)),
    ...trialsOf('cope', 'C', coped, part => copeKey(part, work)),
    ...trialsOf('rabbet-panel', 'R', rabbeted, part => settingKey(rabbetSetting(part, work.shop))),
  ];
}

const trialsOf = (
  operation: OperationId,
  letter: string,
  parts: readonly Part[],
  keyOf: (part: Part) => string,
): readonly Trial[] =>
  groupBy(parts, keyOf).map((group, at) => {
    const part = longestOf(group);
    return { operation, key: keyOf(part), letter, number: at + 1, longest: part };
  });

/** Of the stock and the width of the longest piece that is run at the setting, so that no saw setting is added for it. */
function testBlanks({ operation, letter, number, longest: part }: Trial, work: Work): readonly Blank[] {
  const { stickingPieces, copingPieces, rabbetPieces, pieceLength } = work.shop.testing;
  const count = operation === 'groove' ? stickingPieces : operation === 'cope' ? copingPieces : rabbetPieces;
  const { lengthAllowance, widthAllowance } = work.shop.rough;
  const width = operation === 'rabbet-panel' ? RABBET_TEST_WIDTH : part.width.value;
  const rough = isFromBoard(part, work);
  return Array.from({ length: count }, (_, at) => ({
    code: `TEST-${letter}${number}.${at + 1}` as BlankCode,
    purpose: 'test',
    part: undefined,
    operation,
    stock: part.stock ?? '',
    length: rough ? plus(pieceLength, lengthAllowance) : pieceLength,
    width: rough ? plus(width, widthAllowance) : width,
  }));
}

const isFromBoard = (part: Part, work: Work): boolean => stockOf(part, work)?.kind === 'board';
const isFramePart = (part: Part): boolean => ['stile', 'rail', 'middle-stile'].includes(part.make.kind);
const hasRabbet = (part: Part): boolean =>
  (part.make.kind === 'plywood-panel' || part.make.kind === 'solid-panel') && part.make.rabbet !== undefined;

function grooveKey(part: Part, work: Work): string {
  const { joint } = work.doorOf(part);
  return joint === undefined ? '' : settingKey(grooveSetting(joint, work.shop));
}

function copeKey(part: Part, work: Work): string {
  const { joint } = work.doorOf(part);
  return joint === undefined ? '' : settingKey(copeSetting(joint, work.shop));
}

/** Groups by key, in the keys' order, so that the order of rows does not matter. */
function groupBy(parts: readonly Part[], keyOf: (part: Part) => string): readonly (readonly Part[])[] {
  const groups = new Map<string, Part[]>();
  for (const part of parts) {
    const key = keyOf(part);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [part]);
    else group.push(part);
  }
  return [...groups].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([, group]) => group);
}

/** The longest of a group, by its code where two are equal. */
const longestOf = (group: readonly Part[]): Part =>
  group.reduce((a, b) => ((b.length.value - a.length.value || (b.code < a.code ? 1 : -1)) > 0 ? b : a));
