import type { Part } from '../../calculate/door-set.ts';
import type { BlankCode } from '../../codes/codes.ts';
import { STOP_BLANK_HOLD, STOPS_FROM_BLANK } from '../../trade/machining.ts';
import type { Shop } from '../../trade/shop.ts';
import { type Length, longest, plus, times } from '../../units/length.ts';
import type { Blank } from '../shop-plan.ts';
import { isFromBoard, type Work } from '../work.ts';
import { grouped, inChunks } from './groups.ts';

/**
 * One blank for each frame part; but short parts of one size are made from one blank that is long enough for jointer and
 * planer, and come apart when they are cut to length. The trade's rule for a short piece is the same: machine it as a
 * longer one, then cut.
 */
export function boardBlanks(work: Work): readonly Blank[] {
  const parts = work.doorSet.parts.filter(part => isFromBoard(part, work) && !IN_OTHER_BLANKS.has(part.make.kind));
  const long = parts.filter(part => roughLength(part, 1, work.shop) >= work.shop.router.shortPiece);
  const short = parts.filter(part => roughLength(part, 1, work.shop) < work.shop.router.shortPiece);
  return [
    ...long.map(part => boardBlank([part], work.shop)),
    ...grouped(short, sizeKey).flatMap(group =>
      inChunks(group, partsInBlank(group[0], work.shop)).map(chunk => boardBlank(chunk, work.shop)),
    ),
  ];
}

function boardBlank(parts: readonly Part[], shop: Shop): Blank {
  const [first, ...others] = parts;
  if (first === undefined) throw new Error('a blank is for at least one part');
  return {
    code: codeOf(first, others),
    purpose: 'part',
    parts: parts.map(part => part.code),
    operation: undefined,
    stock: first.stock ?? '',
    // A last short part may be alone in its blank, which is none the shorter for it.
    length: longest(roughLength(first, parts.length, shop), shop.router.shortPiece),
    width: plus(first.width.value, shop.rough.widthAllowance),
  };
}

/** All that it becomes, so that nobody has to look it up: `P3.1L-RB+RT`, and `P3.1L-RT+P3.1R-RB` across two doors. */
function codeOf(first: Part, others: readonly Part[]): BlankCode {
  const names = others.map(part => (part.door === first.door ? part.code.slice(part.door.length + 1) : part.code));
  return [first.code, ...names].join('+') as BlankCode;
}

/** `count` parts end to end, a kerf between each two, and the allowance for squaring the ends. */
const roughLength = (part: Part, count: number, { rough, saw }: Shop): Length =>
  plus(times(count, part.length.value), times(count - 1, saw.kerf), rough.lengthAllowance);

function partsInBlank(part: Part | undefined, shop: Shop): number {
  let count = 1;
  while (part !== undefined && roughLength(part, count, shop) < shop.router.shortPiece) count += 1;
  return count;
}

/**
 * Stops are ripped off the edge of a blank that keeps a hand's width to hold: several of one length from each. Nobody
 * joints or planes a stick of 3/8 in.
 */
export function stopBlanks(work: Work): readonly Blank[] {
  const { shop } = work;
  const stops = work.doorSet.parts.filter(part => part.make.kind === 'glass-stop' && isFromBoard(part, work));
  return [...grouped(stops, sizeKey)]
    .sort(([a], [b]) => (b?.length.value ?? 0) - (a?.length.value ?? 0))
    .flatMap(group => inChunks(group, STOPS_FROM_BLANK))
    .flatMap((chunk, at) => {
      const [first] = chunk;
      if (first === undefined) return [];
      const ripped = times(chunk.length, plus(first.width.value, shop.saw.kerf));
      return [
        {
          code: `STOPS-${at + 1}` as BlankCode,
          purpose: 'stops',
          parts: chunk.map(part => part.code),
          operation: undefined,
          stock: first.stock ?? '',
          length: longest(roughLength(first, 1, shop), shop.router.shortPiece),
          width: plus(ripped, STOP_BLANK_HOLD),
        },
      ];
    });
}

/** No board is as wide as a panel. The strips' allowance for two jointed edges is in their width already. */
export const strips = (work: Work): readonly Blank[] =>
  work.doorSet.parts.flatMap(part => {
    if (part.make.kind !== 'solid-panel') return [];
    const { strips: count, stripWidth, blankLength } = part.make.glueUp;
    return Array.from({ length: count }, (_, at) => ({
      code: `${part.code}.${at + 1}` as BlankCode,
      purpose: 'strip' as const,
      parts: [part.code],
      operation: undefined,
      stock: part.stock ?? '',
      length: blankLength,
      width: stripWidth,
    }));
  });

const sizeKey = (part: Part): string => [part.stock, part.length.value, part.width.value, part.thickness].join(' ');

const IN_OTHER_BLANKS: ReadonlySet<Part['make']['kind']> = new Set(['solid-panel', 'glass-stop']);
