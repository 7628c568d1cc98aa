import { placeMark } from '../codes/part-code.ts';
import type { FrameStyle } from '../import/job.ts';
import { type Length, minus, nm, plus } from '../units/length.ts';
import type { Density } from '../units/mass.ts';
import type { LengthWorking } from './door-set.ts';
import type { Band, Division } from './grid.ts';
import { type Piece, weighed } from './piece.ts';
import { work } from './working.ts';

type Leaf = { readonly width: LengthWorking; readonly height: LengthWorking };

/**
 * The members of a cope-and-stick frame. Stiles run through; rails run between them, and middle stiles between two
 * rails, each with a tongue in the groove at both ends. Geometry.
 */
export const framePieces = (leaf: Leaf, style: FrameStyle, division: Division, density: Density): readonly Piece[] => [
  stile('left', nm(0), leaf, style, density),
  stile('right', minus(leaf.width.value, style.stileWidth), leaf, style, density),
  rail('rail-bottom', 'RB', nm(0), leaf, style, density),
  ...middleRails(leaf, style, division, density),
  rail('rail-top', 'RT', minus(leaf.height.value, style.topRail), leaf, style, density),
  ...division.rows.flatMap((row, at) => middleStiles(row, at + 1, division.columns, style, density)),
];

function stile(side: 'left' | 'right', left: Length, leaf: Leaf, style: FrameStyle, density: Density): Piece {
  const height = leaf.height.value;
  const length =
    style.horn === 0 ? work('stile', [1, 'H', height]) : work('stile', [1, 'H', height], [2, 'horn', style.horn]);
  return weighed(
    {
      mark: side === 'left' ? 'SL' : 'SR',
      role: `stile-${side}`,
      stock: style.frameStock,
      length,
      width: work('stile-width', [1, 'S', style.stileWidth]),
      thickness: style.frameThickness,
      shoulder: undefined,
      place: { left, bottom: nm(0), width: style.stileWidth, height },
      make: { kind: 'stile', groovedEdges: 1, horn: style.horn },
      workings: [],
    },
    density,
  );
}

const middleRails = (leaf: Leaf, style: FrameStyle, division: Division, density: Density): readonly Piece[] =>
  division.rows
    .slice(0, -1)
    .map((row, at) => rail('rail-middle', `RM${at + 1}`, plus(row.start, row.size), leaf, style, density));

function rail(
  role: 'rail-top' | 'rail-middle' | 'rail-bottom',
  mark: string,
  bottom: Length,
  leaf: Leaf,
  style: FrameStyle,
  density: Density,
): Piece {
  const width = RAIL_WIDTHS[role](style);
  const shoulder = work('rail-shoulder', [1, 'W', leaf.width.value], [-2, 'S', style.stileWidth]);
  return weighed(
    {
      mark,
      role,
      stock: style.frameStock,
      length: work('rail', [1, 'W', leaf.width.value], [-2, 'S', style.stileWidth], [2, 'T', style.tongueLength]),
      width,
      thickness: style.frameThickness,
      shoulder,
      place: { left: style.stileWidth, bottom, width: shoulder.value, height: width.value },
      make: { kind: 'rail', groovedEdges: role === 'rail-middle' ? 2 : 1 },
      workings: [],
    },
    density,
  );
}

/** One to the right of each column but the last. */
const middleStiles = (
  row: Band,
  rowNumber: number,
  columns: readonly Band[],
  style: FrameStyle,
  density: Density,
): readonly Piece[] =>
  columns.slice(0, -1).map((column, at) =>
    weighed(
      {
        mark: `SM${placeMark(rowNumber, at + 1)}`,
        role: 'stile-middle',
        stock: style.frameStock,
        length: work('middle-stile', [1, 'h', row.size], [2, 'T', style.tongueLength]),
        width: work('middle-stile-width', [1, 'MS', style.middleStile]),
        thickness: style.frameThickness,
        shoulder: work('middle-stile-shoulder', [1, 'h', row.size]),
        place: {
          left: plus(column.start, column.size),
          bottom: row.start,
          width: style.middleStile,
          height: row.size,
        },
        make: { kind: 'middle-stile', groovedEdges: 2 },
        workings: [],
      },
      density,
    ),
  );

const RAIL_WIDTHS = {
  'rail-top': (style: FrameStyle) => work('top-rail-width', [1, 'TR', style.topRail]),
  'rail-middle': (style: FrameStyle) => work('middle-rail-width', [1, 'MR', style.middleRail]),
  'rail-bottom': (style: FrameStyle) => work('bottom-rail-width', [1, 'BR', style.bottomRail]),
} as const;
