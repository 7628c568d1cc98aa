import type { FrameStyle, Infill } from '../import/job.ts';
import { GLASS_DENSITY } from '../trade/materials.ts';
import type { Shop } from '../trade/shop.ts';
import { type Length, minus, plus } from '../units/length.ts';
import type { Density } from '../units/mass.ts';
import type { LengthWorking, Rectangle } from './door-set.ts';
import { onceFor } from './once-for.ts';
import type { Cell } from './panel.ts';
import { type Piece, sameAs, weighed } from './piece.ts';
import { sumOf, work } from './working.ts';

type Glass = Extract<Infill, { kind: 'glass' }>;

/**
 * A pane and the four stops that hold it. The back lip of the groove is cut away, so that a rabbet as wide as the groove
 * is deep takes the pane from behind; the stops fill it up to the frame's back. Level stops run through, upright ones
 * stand between them. Geometry; the clearance is common practice.
 */
export function glazing(
  cell: Cell,
  style: FrameStyle,
  infill: Glass,
  density: Density,
  shop: Shop,
): readonly [Piece, ...Piece[]] {
  const level = stop('top', cell, style, density);
  const upright = stop('left', cell, style, density);
  return [
    pane(cell, style, infill, shop),
    level,
    opposite('bottom', level, cell, style),
    upright,
    opposite('right', upright, cell, style),
  ];
}

function pane(cell: Cell, style: FrameStyle, infill: Glass, shop: Shop): Piece {
  const { glassClearance } = shop.panels;
  return weighed(
    {
      mark: `G${cell.mark}`,
      role: 'glass',
      stock: undefined,
      length: work(GLASS_HEIGHT, { h: cell.height.value, D: style.grooveDepth, c: glassClearance }),
      width: work(GLASS_WIDTH, { w: cell.width.value, D: style.grooveDepth, c: glassClearance }),
      thickness: infill.thickness,
      shoulder: undefined,
      place: cell.place,
      make: { kind: 'glass' },
      workings: [],
    },
    GLASS_DENSITY,
  );
}

const GLASS_HEIGHT = sumOf('glass-height', [1, 'h'], [2, 'D'], [-2, 'c']);
const GLASS_WIDTH = sumOf('glass-width', [1, 'w'], [2, 'D'], [-2, 'c']);

type StopSide = 'top' | 'bottom' | 'left' | 'right';

function stop(side: StopSide, cell: Cell, style: FrameStyle, density: Density): Piece {
  const thickness = stopThickness(style);
  return weighed(
    {
      mark: stopMark(side, cell),
      role: 'glass-stop',
      stock: style.frameStock,
      length: stopLength(side, cell, style),
      width: stopWidth(style),
      thickness: thickness.value,
      shoulder: undefined,
      place: stopPlace(side, cell.place, style.grooveDepth),
      make: { kind: 'glass-stop' },
      workings: [thickness],
    },
    density,
  );
}

/** Stops that face each other are cut alike. */
const opposite = (side: StopSide, like: Piece, cell: Cell, style: FrameStyle): Piece =>
  sameAs(like, stopMark(side, cell), 'glass-stop', stopPlace(side, cell.place, style.grooveDepth));

const stopMark = (side: StopSide, cell: Cell): string => `G${STOP_MARKS[side]}${cell.mark}`;

const stopWidth = onceFor((style: FrameStyle) => work(STOP_WIDTH, { D: style.grooveDepth }));

/** What is left behind the pane, up to the frame's back. */
export const stopThickness = onceFor((style: FrameStyle) =>
  work(STOP_THICKNESS, { F: style.frameThickness, L: style.faceToGroove, Tg: style.infill.thickness }),
);

/** Cut to the clear opening as it is, not to the one that panes are cut for: a stop has no play. */
const stopLength = (side: StopSide, cell: Cell, style: FrameStyle): LengthWorking =>
  side === 'top' || side === 'bottom'
    ? work(LEVEL_STOP, { w: cell.place.width, D: style.grooveDepth })
    : work(UPRIGHT_STOP, { h: cell.place.height });

const STOP_WIDTH = sumOf('stop-width', [1, 'D']);
const STOP_THICKNESS = sumOf('stop-thickness', [1, 'F'], [-1, 'L'], [-1, 'Tg']);
const LEVEL_STOP = sumOf('stop-length', [1, 'w'], [2, 'D']);
const UPRIGHT_STOP = sumOf('stop-length', [1, 'h']);

function stopPlace(side: StopSide, sight: Rectangle, width: Length): Rectangle {
  const { left, bottom, height } = sight;
  const before = minus(left, width);
  const through = plus(sight.width, width, width);
  switch (side) {
    case 'bottom':
      return { left: before, bottom: minus(bottom, width), width: through, height: width };
    case 'top':
      return { left: before, bottom: plus(bottom, height), width: through, height: width };
    case 'left':
      return { left: before, bottom, width, height };
    case 'right':
      return { left: plus(left, sight.width), bottom, width, height };
  }
}

const STOP_MARKS = { top: 'ST', bottom: 'SB', left: 'SL', right: 'SR' } as const;
