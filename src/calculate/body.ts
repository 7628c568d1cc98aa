import assert from 'node:assert';
import { placeMark } from '../codes/part-code.ts';
import type { FrameStyle, SlabStyle } from '../import/job.ts';
import { type Length, nm } from '../units/length.ts';
import type { Bench } from './bench.ts';
import type { Joint, Rectangle, Working } from './door-set.ts';
import { framePieces } from './frame.ts';
import { glazing } from './glass.ts';
import type { Band, Division } from './grid.ts';
import { jointOf } from './joint.ts';
import type { Leaf } from './leaves.ts';
import { type Cell, plywoodPanel, solidPanel } from './panel.ts';
import { type Piece, weighed } from './piece.ts';
import { sumOf, work } from './working.ts';

/** What a leaf is made of. `division` is undefined for a slab. */
export type Body = {
  readonly thickness: Length;
  readonly pieces: readonly Piece[];
  readonly sights: readonly MarkedSight[];
  readonly joint: Joint | undefined;
  readonly workings: readonly Working[];
};

/** A clear opening, with the mark of what fills it. */
export type MarkedSight = {
  readonly place: Rectangle;
  readonly column: number;
  readonly row: number;
  readonly mark: string;
};

export function slabBody(leaf: Leaf, style: SlabStyle, bench: Bench): Body {
  const slab = weighed(
    {
      mark: 'SLAB',
      role: 'slab',
      stock: style.stock,
      length: work(SLAB_LENGTH, { H: leaf.height.value }),
      width: work(SLAB_WIDTH, { W: leaf.width.value }),
      thickness: style.thickness,
      shoulder: undefined,
      place: { left: nm(0), bottom: nm(0), width: leaf.width.value, height: leaf.height.value },
      make: { kind: 'slab' },
      workings: [],
    },
    bench.materials.densityOf(style.stock),
  );
  return { thickness: style.thickness, pieces: [slab], sights: [], joint: undefined, workings: [] };
}

const SLAB_LENGTH = sumOf('slab-length', [1, 'H']);
const SLAB_WIDTH = sumOf('slab-width', [1, 'W']);

export function frameBody(leaf: Leaf, style: FrameStyle, division: Division, bench: Bench): Body {
  const filled = cellsOf(division).map((cell): Filled => ({ cell, infill: infillOf(cell, style, bench) }));
  const [first] = filled;
  assert(first !== undefined, 'a frame without a clear opening');
  const section = jointOf(style, first.infill[0], first.cell.width);
  return {
    thickness: style.frameThickness,
    pieces: framePieces(leaf, style, division, bench.materials.densityOf(style.frameStock)).concat(
      ...filled.map(({ infill }) => infill),
    ),
    sights: filled.map(({ cell: { place, column, row }, infill: [seen] }) => ({ place, column, row, mark: seen.mark })),
    joint: section.joint,
    workings: [...sizesOnce(division.columns), ...sizesOnce(division.rows), ...section.workings],
  };
}

type NumberedCell = Cell & { readonly row: number; readonly column: number };

/** The first piece of an infill is what is seen. */
type Filled = { readonly cell: NumberedCell; readonly infill: readonly [Piece, ...Piece[]] };

function cellsOf({ rows, columns }: Division): readonly NumberedCell[] {
  const cells: NumberedCell[] = [];
  rows.forEach((row, rowAt) => {
    columns.forEach((column, columnAt) => {
      cells.push({
        row: rowAt + 1,
        column: columnAt + 1,
        mark: rows.length * columns.length === 1 ? '' : placeMark(rowAt + 1, columnAt + 1),
        width: column.working,
        height: row.working,
        place: { left: column.start, bottom: row.start, width: column.size, height: row.size },
      });
    });
  });
  return cells;
}

function infillOf(cell: Cell, style: FrameStyle, bench: Bench): Filled['infill'] {
  const { infill } = style;
  switch (infill.kind) {
    case 'plywood':
      return [plywoodPanel(cell, style, infill, bench)];
    case 'solid':
      return [solidPanel(cell, style, infill, bench)];
    case 'glass':
      return glazing(cell, style, infill, bench.materials.densityOf(style.frameStock), bench.shop);
  }
}

/** Sizes that are shared were worked out once for all bands. */
const sizesOnce = (bands: readonly Band[]): readonly Working[] =>
  bands.map(band => band.working).filter((working, at, all) => working !== all[at - 1]);

export const middleRailsOf = (body: Body): readonly Rectangle[] =>
  body.pieces.filter(piece => piece.role === 'rail-middle').map(piece => piece.place);
