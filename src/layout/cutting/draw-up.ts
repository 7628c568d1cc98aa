import type { BlankCode } from '../../codes/codes.ts';
import type { Stock } from '../../import/job.ts';
import { densityOf } from '../../trade/materials.ts';
import type { Shop } from '../../trade/shop.ts';
import { type Length, minus, nm } from '../../units/length.ts';
import { massOf, volume } from '../../units/mass.ts';
import type { Cut, CutBin, CutPlan, CutRectangle, Fallen, PlacedPiece } from '../shop-plan.ts';
import { assignBlanks } from './colour.ts';
import { sawOf } from './handling.ts';
import type { CuttingProblem } from './problem.ts';
import type { OpenBin } from './rows.ts';
import { type Box, type SawCut, type Side, sawingOrder } from './sawing.ts';
import type { Found } from './search.ts';

/** How many boards, sheets and offcuts of the job have their codes already. */
export type Numbers = { board: number; sheet: number; offcut: number };

/** A filling as the plan that is printed: true lengths, codes, cuts in sawing order, offcuts and waste. */
export function drawUp(cutting: CuttingProblem, found: Found, stock: Stock, shop: Shop, numbers: Numbers): CutPlan {
  const blanks = assignBlanks(cutting, found.bins, shop.planning.colourMatch);
  const bins = found.bins.map((bin, at) => drawBin(cutting, bin, stock, shop, numbers, blanks[at] ?? []));
  return {
    stock: stock.name,
    kind: stock.kind,
    thickness: stock.thickness,
    kerf: shop.saw.kerf,
    bins,
    bound: found.bound,
    settings: distinctSettings(bins.flatMap(bin => bin.cuts)),
    waste: wasteShare(bins),
  };
}

/** How many times fence and stop are set where each setting is made once. Trims are cut by eye and mark. */
export const distinctSettings = (cuts: readonly Cut[]): number =>
  new Set(cuts.filter(cut => !cut.trim).map(cut => `${cut.direction} ${cut.setting}`)).size;

function drawBin(
  cutting: CuttingProblem,
  bin: OpenBin,
  stock: Stock,
  shop: Shop,
  numbers: Numbers,
  blanks: readonly (readonly BlankCode[])[],
): CutBin {
  const kind = cutting.bins[bin.kind];
  const size = kind === undefined ? undefined : stock.sizes[kind.size];
  if (kind === undefined || size === undefined) throw new RangeError('a bin of no kind');
  const sawn = sawingOrder(sawOf(cutting, shop), bin, kind, stock.kind);
  numbers[stock.kind] += 1;
  const remaining = blanks.map(own => [...own]);
  const named = new Map<Side, Fallen>();
  for (const side of sawn.sides) named.set(side, nameSide(side, cutting, shop, numbers, remaining));
  const sides = [...named.values()];
  return {
    code: `${stock.kind === 'board' ? 'BD' : 'SH'}${numbers[stock.kind]}`,
    length: size.length,
    width: size.width,
    source: kind.source,
    pieces: [...named].flatMap(([side, name]) => placedPiece(side, name)),
    offcuts: sides.flatMap(side => (side.kind === 'offcut' ? [{ ...side.at, code: side.code }] : [])),
    waste: sides.flatMap(side => (side.kind === 'waste' ? [side.at] : [])),
    defects: size.defects.map(({ start, end }) => ({
      along: start,
      across: nm(0),
      length: minus(end, start),
      width: size.width,
    })),
    cuts: sawn.cuts.map((cut, index) => drawCut(cutting.unit, cut, index + 1, named)),
    mass: massOf(volume(size.length, size.width, stock.thickness), densityOf(stock)),
  };
}

/** What a side of a cut is called: the next blank of its size, the next offcut where it is worth keeping. */
function nameSide(
  side: Side,
  cutting: CuttingProblem,
  shop: Shop,
  numbers: Numbers,
  remaining: readonly BlankCode[][],
): Fallen {
  if (side.kind === 'nothing') return side;
  const at = inLengths(cutting.unit, side.at);
  switch (side.kind) {
    case 'workpiece':
      return { kind: 'workpiece', number: side.number, at };
    case 'piece': {
      const blank = remaining[side.piece.piece]?.shift();
      if (blank === undefined) throw new RangeError('a piece was cut that nobody asked for');
      return { kind: 'piece', blank, at };
    }
    case 'leftover': {
      const { remnantLength, remnantWidth } = shop.planning;
      if (side.spoilt || at.length < remnantLength || at.width < remnantWidth) return { kind: 'waste', at };
      numbers.offcut += 1;
      return { kind: 'offcut', code: `OC${numbers.offcut}`, at };
    }
  }
}

const placedPiece = (side: Side, name: Fallen): readonly PlacedPiece[] =>
  side.kind === 'piece' && name.kind === 'piece' ? [{ ...name.at, blank: name.blank, turned: side.piece.turned }] : [];

function drawCut(unit: number, cut: SawCut, number: number, named: ReadonlyMap<Side, Fallen>): Cut {
  return {
    number,
    direction: cut.direction,
    setting: nm(cut.setting * unit),
    workpiece: cut.workpiece,
    from: inLengths(unit, cut.from),
    falls: named.get(cut.falls) ?? { kind: 'nothing' },
    stays: named.get(cut.stays) ?? { kind: 'nothing' },
    trim: cut.trim,
  };
}

const inLengths = (unit: number, box: Box): CutRectangle => ({
  along: nm(box.along * unit),
  across: nm(box.across * unit),
  length: nm(box.length * unit),
  width: nm(box.width * unit),
});

/** Areas as shares of the whole, so that a float will do: nobody compares them. */
function wasteShare(bins: readonly CutBin[]): number {
  const area = (each: { readonly length: Length; readonly width: Length }): number =>
    (each.length / 1e6) * (each.width / 1e6);
  const total = bins.reduce((sum, bin) => sum + area(bin), 0);
  const kept = bins.flatMap(bin => [...bin.pieces, ...bin.offcuts]).reduce((sum, each) => sum + area(each), 0);
  return total === 0 ? 0 : 1 - kept / total;
}
