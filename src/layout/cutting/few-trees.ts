import { stepsFor } from './coming-out.ts';
import { type CutTree, extent, together } from './cut-tree.ts';
import type { FewPieces } from './few-pieces.ts';
import { type Lie, pieceOf } from './lying.ts';
import { CROSSCUT, type Last, NONE, RIP, type Step } from './parting.ts';
import { BOTH, other } from './rows.ts';

/** How a set that comes out of a bin is cut; undefined where it does not come out. */
export function treeOfFew(few: FewPieces, lies: readonly number[]): CutTree | undefined {
  const steps = stepsFor(few, lies);
  return steps && planted(few, steps, few.length, few.width, few.stages, NONE);
}

function planted(
  few: FewPieces,
  [step, ...others]: readonly Step[],
  length: number,
  width: number,
  stages: number,
  last: Last,
): CutTree | undefined {
  if (step === undefined) return undefined;
  const { cut, lies } = step;
  const trees = treesOfUpToThree(lies.flatMap(lie => few.lying[lie] ?? []));
  if (cut === undefined)
    return trees.find(tree => {
      const within = extent(tree, 'crosscut') <= length && extent(tree, 'rip') <= width;
      return within && changes(tree, length, width, last) <= stages;
    });
  const next = cut === 'crosscut' ? CROSSCUT : RIP;
  const after = last === next ? stages : stages - 1;
  const across = other(cut);
  const room = cut === 'crosscut' ? width : length;
  const least = trees
    .filter(tree => {
      const size = extent(tree, cut);
      const [along, beside] = cut === 'crosscut' ? [size, room] : [room, size];
      return extent(tree, across) <= room && changes(tree, along, beside, next) <= after;
    })
    .sort((one, two) => extent(one, cut) - extent(two, cut))[0];
  if (least === undefined) return undefined;
  const size = extent(least, cut);
  const rest =
    cut === 'crosscut'
      ? planted(few, others, length - size, width, after, next)
      : planted(few, others, length, width - size, after, next);
  return rest && together(cut, [least, rest]);
}

/** How often the direction changes on the way to a piece of the tree, trims included, in a rectangle that was cut `last`. */
function changes(tree: CutTree, length: number, width: number, last: Last): number {
  if (tree.kind === 'piece')
    return Number(tree.length < length && last !== CROSSCUT) + Number(tree.width < width && last !== RIP);
  const crosscut = tree.direction === 'crosscut';
  const next = crosscut ? CROSSCUT : RIP;
  const most = tree.parts.map(part =>
    crosscut ? changes(part.tree, part.size, width, next) : changes(part.tree, length, part.size, next),
  );
  return Number(next !== last) + Math.max(...most);
}

/** Every way to cut up to three pieces apart. */
function treesOfUpToThree(lying: readonly Lie[]): readonly CutTree[] {
  const pieces = lying.map(pieceOf);
  const [only] = pieces;
  if (pieces.length === 1 && only !== undefined) return [only];
  return BOTH.flatMap(direction => {
    const line = together(direction, pieces);
    if (pieces.length < 3) return [line];
    const nested = pieces.map(piece => {
      const others = pieces.filter(each => each !== piece);
      return together(direction, [piece, together(other(direction), others)]);
    });
    return [line, ...nested];
  });
}
