import { placeMark } from '../codes/part-code.ts';
import type { FrameStyle } from '../import/job.ts';
import { type Length, minus, nm, plus } from '../units/length.ts';
import type { Density } from '../units/mass.ts';
import type { LengthWorking } from './door-set.ts';
import type { Band, Division } from './grid.ts';
import { onceFor } from './once-for.ts';
import { type Piece, sameAs, weighed } from './piece.ts';
import { sumOf, work } from './working.ts';

type Leaf = { readonly width: LengthWorking; readonly height: LengthWorking };

/**
 * The members of a cope-and-stick frame. Stiles run through; rails run between them, and middle stiles between two
 * rails, each with a tongue in the groove at both ends. Geometry.
 */
export function framePieces(leaf: Leaf, style: FrameStyle, division: Division, density: Density): readonly Piece[] {
  const left = leftStile(leaf, style, density);
  const bottom = bottomRail(leaf, style, density);
  return [
    left,
    rightStile(left, leaf, style),
    bottom,
    ...middleRails(bottom, style, division, density),
    topRail(bottom, leaf, style, density),
  ].concat(...division.rows.map((row, at) => middleStiles(row, at + 1, division.columns, style, density)));
}

function leftStile(leaf: Leaf, style: FrameStyle, density: Density): Piece {
  const height = leaf.height.value;
  const length = style.horn === 0 ? work(STILE, { H: height }) : work(HORNED_STILE, { H: height, horn: style.horn });
  return weighed(
    {
      mark: 'SL',
      role: 'stile-left',
      stock: style.frameStock,
      length,
      width: widthsOf(style).stile,
      thickness: style.frameThickness,
      shoulder: undefined,
      place: { left: nm(0), bottom: nm(0), width: style.stileWidth, height },
      make: { kind: 'stile', groovedEdges: 1, horn: style.horn },
      workings: [],
    },
    density,
  );
}

const rightStile = (left: Piece, leaf: Leaf, style: FrameStyle): Piece =>
  sameAs(left, 'SR', 'stile-right', {
    left: minus(leaf.width.value, style.stileWidth),
    bottom: nm(0),
    width: style.stileWidth,
    height: leaf.height.value,
  });

/** Between the shoulders of every rail that runs through. */
export const railShoulder = (leaf: Leaf, style: FrameStyle): LengthWorking =>
  work(RAIL_SHOULDER, { W: leaf.width.value, S: style.stileWidth });

function bottomRail(leaf: Leaf, style: FrameStyle, density: Density): Piece {
  const shoulder = railShoulder(leaf, style);
  return weighed(
    {
      mark: 'RB',
      role: 'rail-bottom',
      stock: style.frameStock,
      length: work(RAIL, { W: leaf.width.value, S: style.stileWidth, T: style.tongueLength }),
      width: widthsOf(style).bottomRail,
      thickness: style.frameThickness,
      shoulder,
      place: { left: style.stileWidth, bottom: nm(0), width: shoulder.value, height: style.bottomRail },
      make: { kind: 'rail', groovedEdges: 1 },
      workings: [],
    },
    density,
  );
}

/** Another rail differs in its width and place only: all are cut at one setting of the stop. */
const otherRail = (
  like: Piece,
  rail: Pick<Piece, 'mark' | 'role' | 'width' | 'make'> & { readonly bottom: Length },
  density: Density,
): Piece =>
  weighed(
    {
      mark: rail.mark,
      role: rail.role,
      stock: like.stock,
      length: like.length,
      width: rail.width,
      thickness: like.thickness,
      shoulder: like.shoulder,
      place: { left: like.place.left, bottom: rail.bottom, width: like.place.width, height: rail.width.value },
      make: rail.make,
      workings: [],
    },
    density,
  );

const middleRails = (bottom: Piece, style: FrameStyle, division: Division, density: Density): readonly Piece[] =>
  division.rows.slice(0, -1).map((row, at) =>
    otherRail(
      bottom,
      {
        mark: `RM${at + 1}`,
        role: 'rail-middle',
        width: widthsOf(style).middleRail,
        make: { kind: 'rail', groovedEdges: 2 },
        bottom: plus(row.start, row.size),
      },
      density,
    ),
  );

const topRail = (bottom: Piece, leaf: Leaf, style: FrameStyle, density: Density): Piece =>
  otherRail(
    bottom,
    {
      mark: 'RT',
      role: 'rail-top',
      width: widthsOf(style).topRail,
      make: bottom.make,
      bottom: minus(leaf.height.value, style.topRail),
    },
    density,
  );

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
        length: work(MIDDLE_STILE, { h: row.size, T: style.tongueLength }),
        width: widthsOf(style).middleStile,
        thickness: style.frameThickness,
        shoulder: work(MIDDLE_STILE_SHOULDER, { h: row.size }),
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

const STILE = sumOf('stile', [1, 'H']);
const HORNED_STILE = sumOf('stile', [1, 'H'], [2, 'horn']);
const RAIL = sumOf('rail', [1, 'W'], [-2, 'S'], [2, 'T']);
const RAIL_SHOULDER = sumOf('rail-shoulder', [1, 'W'], [-2, 'S']);
const MIDDLE_STILE = sumOf('middle-stile', [1, 'h'], [2, 'T']);
const MIDDLE_STILE_SHOULDER = sumOf('middle-stile-shoulder', [1, 'h']);

const widthsOf = onceFor((style: FrameStyle) => ({
  stile: work(sumOf('stile-width', [1, 'S']), { S: style.stileWidth }),
  topRail: work(sumOf('top-rail-width', [1, 'TR']), { TR: style.topRail }),
  middleRail: work(sumOf('middle-rail-width', [1, 'MR']), { MR: style.middleRail }),
  bottomRail: work(sumOf('bottom-rail-width', [1, 'BR']), { BR: style.bottomRail }),
  middleStile: work(sumOf('middle-stile-width', [1, 'MS']), { MS: style.middleStile }),
}));
