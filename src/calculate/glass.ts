import type { FrameStyle, Infill } from '../import/job.ts';
import { GLASS_DENSITY } from '../trade/materials.ts';
import type { Shop } from '../trade/shop.ts';
import { type Length, minus, plus } from '../units/length.ts';
import type { Density } from '../units/mass.ts';
import type { LengthWorking, Rectangle } from './door-set.ts';
import type { Cell } from './panel.ts';
import { type Piece, weighed } from './piece.ts';
import { work } from './working.ts';

type Glass = Extract<Infill, { kind: 'glass' }>;

/**
 * A pane and the four stops that hold it. The back lip of the groove is cut away, so that a rabbet as wide as the groove
 * is deep takes the pane from behind; the stops fill it up to the frame's back. Level stops run through, upright ones
 * stand between them. Geometry; the clearance is common practice.
 */
export const glazing = (
  cell: Cell,
  style: FrameStyle,
  infill: Glass,
  density: Density,
  shop: Shop,
): readonly [Piece, ...Piece[]] => [
  pane(cell, style, infill, shop),
  ...STOPS.map(side => stop(side, cell, style, infill, density)),
];

function pane(cell: Cell, style: FrameStyle, infill: Glass, shop: Shop): Piece {
  const { glassClearance } = shop.panels;
  return weighed(
    {
      mark: `G${cell.mark}`,
      role: 'glass',
      stock: undefined,
      length: work('glass-height', [1, 'h', cell.height.value], [2, 'D', style.grooveDepth], [-2, 'c', glassClearance]),
      width: work('glass-width', [1, 'w', cell.width.value], [2, 'D', style.grooveDepth], [-2, 'c', glassClearance]),
      thickness: infill.thickness,
      shoulder: undefined,
      place: cell.place,
      make: { kind: 'glass' },
      workings: [],
    },
    GLASS_DENSITY,
  );
}

type StopSide = 'top' | 'bottom' | 'left' | 'right';

function stop(side: StopSide, cell: Cell, style: FrameStyle, infill: Glass, density: Density): Piece {
  const thickness = stopThickness(style, infill.thickness);
  return weighed(
    {
      mark: `G${STOP_MARKS[side]}${cell.mark}`,
      role: 'glass-stop',
      stock: style.frameStock,
      length: stopLength(side, cell, style),
      width: work('stop-width', [1, 'D', style.grooveDepth]),
      thickness: thickness.value,
      shoulder: undefined,
      place: stopPlace(side, cell.place, style.grooveDepth),
      make: { kind: 'glass-stop' },
      workings: [thickness],
    },
    density,
  );
}

/** What is left behind the pane, up to the frame's back. */
export const stopThickness = (style: FrameStyle, glassThickness: Length): LengthWorking =>
  work('stop-thickness', [1, 'F', style.frameThickness], [-1, 'L', style.faceToGroove], [-1, 'Tg', glassThickness]);

/** Cut to the clear opening as it is, not to the one that panes are cut for: a stop has no play. */
const stopLength = (side: StopSide, cell: Cell, style: FrameStyle): LengthWorking =>
  side === 'top' || side === 'bottom'
    ? work('stop-length', [1, 'w', cell.place.width], [2, 'D', style.grooveDepth])
    : work('stop-length', [1, 'h', cell.place.height]);

function stopPlace(side: StopSide, sight: Rectangle, width: Length): Rectangle {
  const level = { left: minus(sight.left, width), width: plus(sight.width, width, width), height: width };
  const upright = { bottom: sight.bottom, width, height: sight.height };
  switch (side) {
    case 'bottom':
      return { ...level, bottom: minus(sight.bottom, width) };
    case 'top':
      return { ...level, bottom: plus(sight.bottom, sight.height) };
    case 'left':
      return { ...upright, left: minus(sight.left, width) };
    case 'right':
      return { ...upright, left: plus(sight.left, sight.width) };
  }
}

const STOPS: readonly StopSide[] = ['top', 'bottom', 'left', 'right'];
const STOP_MARKS = { top: 'ST', bottom: 'SB', left: 'SL', right: 'SR' } as const;
