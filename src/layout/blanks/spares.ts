import type { Part } from '../../calculate/door-set.ts';
import type { BlankCode } from '../../codes/codes.ts';
import { longest, plus } from '../../units/length.ts';
import { grooveSetting } from '../operations/joints.ts';
import { settingKey } from '../operations/pass.ts';
import type { Blank } from '../shop-plan.ts';
import { isFromBoard, type Work } from '../work.ts';
import { grouped, inChunks } from './groups.ts';

/**
 * A spare stile for so many stiles, and a spare rail for so many rails, that get the same groove in the same stock. Each
 * is as long and as wide as the largest of those that it stands in for, so that it can become any of them: the longest
 * have one of their own, the shorter ones do not waste a long board. Middle stiles are short; a spoiled stile or its
 * spare yields one.
 */
export function spares(work: Work): readonly { readonly blank: Blank; readonly part: Part }[] {
  return (['stile', 'rail'] as const).flatMap(kind => {
    const parts = work.doorSet.parts.filter(part => part.make.kind === kind && isFromBoard(part, work));
    return grouped(parts, part => grooveOf(part, work))
      .flatMap(group => inChunks([...group].sort(longestFirst), work.shop.testing.spareForEvery))
      .flatMap((chunk, at) => {
        const [part] = chunk;
        const code = `SPARE-${kind.toUpperCase()}-${at + 1}` as BlankCode;
        return part === undefined ? [] : [{ blank: spareFor(chunk, part, code, work), part }];
      });
  });
}

function spareFor(parts: readonly Part[], longestPart: Part, code: BlankCode, { shop }: Work): Blank {
  const width = longest(longestPart.width.value, ...parts.map(part => part.width.value));
  return {
    code,
    purpose: 'spare',
    parts: [],
    operation: undefined,
    stock: longestPart.stock ?? '',
    length: longest(plus(longestPart.length.value, shop.rough.lengthAllowance), shop.router.shortPiece),
    width: plus(width, shop.rough.widthAllowance),
  };
}

/** In this stock, at this thickness, with this groove: only such parts can stand in for each other. */
function grooveOf(part: Part, work: Work): string {
  const { joint } = work.doorOf(part);
  return [part.stock, part.thickness, joint === undefined ? '' : settingKey(grooveSetting(joint, work.shop))].join(' ');
}

const longestFirst = (a: Part, b: Part): number =>
  b.length.value - a.length.value || b.width.value - a.width.value || (a.code < b.code ? -1 : 1);
