import type { Joint, Part } from '../../calculate/door-set.ts';
import type { BlankCode } from '../../codes/codes.ts';
import { RABBET_TEST_WIDTH } from '../../trade/machining.ts';
import { type Length, plus } from '../../units/length.ts';
import { copeSetting, grooveSetting } from '../operations/joints.ts';
import { rabbetSetting } from '../operations/panels.ts';
import { type MachineSetting, settingKey } from '../operations/pass.ts';
import type { Blank, OperationId } from '../shop-plan.ts';
import { isFromBoard, type Work } from '../work.ts';
import { grouped } from './groups.ts';

/** A machine setting that is tried on a piece of the same stock before it touches a part. */
export type Trial = {
  readonly operation: OperationId;
  readonly key: string;
  /** Together they name its test pieces: `TEST-G1.2` is the second one of the first groove setting. */
  readonly letter: string;
  readonly number: number;
  readonly longest: Part;
};

/** Which test pieces belong to a set-up: its operation and its setting. */
export const trialKey = (operation: OperationId, key: string): string => `${operation} ${key}`;

/** Every setting of the two bits and of the rabbet. */
export function trials(work: Work): readonly Trial[] {
  const { shop, doorSet } = work;
  const framed = doorSet.parts.filter(part => FRAME_PARTS.has(part.make.kind));
  const coped = framed.filter(part => part.make.kind !== 'stile');
  const rabbeted = doorSet.parts.filter(hasRabbet);
  const jointKey = (setting: (joint: Joint) => MachineSetting) => (part: Part) => {
    const { joint } = work.doorOf(part);
    return joint === undefined ? '' : settingKey(setting(joint));
  };
  return [
    ...trialsOf(
      'groove',
      'G',
      framed,
      jointKey(joint => grooveSetting(joint, shop)),
    ),
    ...trialsOf(
      'cope',
      'C',
      coped,
      jointKey(joint => copeSetting(joint, shop)),
    ),
    ...trialsOf('rabbet-panel', 'R', rabbeted, part => settingKey(rabbetSetting(part, shop))),
  ];
}

const trialsOf = (
  operation: OperationId,
  letter: string,
  parts: readonly Part[],
  keyOf: (part: Part) => string,
): readonly Trial[] =>
  grouped(parts, keyOf).map((group, at) => {
    const part = group.reduce((a, b) => (b.length.value > a.length.value ? b : a));
    return { operation, key: keyOf(part), letter, number: at + 1, longest: part };
  });

/** Of the stock of the longest piece that is run at the setting. */
export function testBlanks({ operation, letter, number, longest: part }: Trial, work: Work): readonly Blank[] {
  const { stickingPieces, copingPieces, rabbetPieces } = work.shop.testing;
  const count = operation === 'groove' ? stickingPieces : operation === 'cope' ? copingPieces : rabbetPieces;
  return Array.from({ length: count }, (_, at) => ({
    code: `TEST-${letter}${number}.${at + 1}` as BlankCode,
    purpose: 'test',
    parts: [],
    operation,
    stock: part.stock ?? '',
    ...testSize(part, work),
  }));
}

/** As wide as what is run at the setting, so that no saw setting is added: a part, or a strip of a panel. */
function testSize(part: Part, work: Work): { readonly length: Length; readonly width: Length } {
  const { rough, testing } = work.shop;
  if (!isFromBoard(part, work)) return { length: testing.pieceLength, width: RABBET_TEST_WIDTH };
  const width =
    part.make.kind === 'solid-panel' ? part.make.glueUp.stripWidth : plus(part.width.value, rough.widthAllowance);
  return { length: plus(testing.pieceLength, rough.lengthAllowance), width };
}

const hasRabbet = (part: Part): boolean =>
  (part.make.kind === 'plywood-panel' || part.make.kind === 'solid-panel') && part.make.rabbet !== undefined;

const FRAME_PARTS: ReadonlySet<Part['make']['kind']> = new Set(['stile', 'rail', 'middle-stile']);
