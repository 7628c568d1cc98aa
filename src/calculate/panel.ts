import assert from 'node:assert';
import type { FrameStyle, Infill } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import { floorTo, type Length, plus, share, shortest } from '../units/length.ts';
import type { Bench } from './bench.ts';
import type { LengthWorking, PanelGlueUp, Rectangle, Working } from './door-set.ts';
import { type Fact, fact, timesNeeded } from './formula.ts';
import { movingWidth } from './movement.ts';
import { type Piece, weighed } from './piece.ts';
import { panelRabbet } from './rabbet.ts';
import { sumOf, work } from './working.ts';

/** A clear opening that is to be filled: sight sizes that the infill is cut for, and where it is seen. */
export type Cell = {
  /** Told apart from the other cells of the door; empty where there is one. */
  readonly mark: string;
  readonly width: LengthWorking;
  readonly height: LengthWorking;
  readonly place: Rectangle;
};

type Of<Kind extends Infill['kind']> = Extract<Infill, { kind: Kind }>;

/** A panel that does not move: it may be glued in all round, and is cut with the same allowance on every edge. */
export function plywoodPanel(cell: Cell, style: FrameStyle, infill: Of<'plywood'>, bench: Bench): Piece {
  const { allowance } = bench.shop.panels;
  const { rabbet, workings } = bench.plywoodRabbet(style);
  return weighed(
    {
      mark: `P${cell.mark}`,
      role: 'panel',
      stock: infill.stock,
      length: panelLength(cell, style, allowance),
      width: work(PANEL_WIDTH, { w: cell.width.value, D: style.grooveDepth, a: allowance }),
      thickness: infill.thickness,
      shoulder: undefined,
      place: cell.place,
      make: { kind: 'plywood-panel', rabbet },
      workings,
    },
    bench.materials.densityOf(infill.stock),
  );
}

/** A panel of boards glued edge to edge: it moves across its grain, lies loose in its grooves and is never glued in. */
export function solidPanel(cell: Cell, style: FrameStyle, infill: Of<'solid'>, { air, materials, shop }: Bench): Piece {
  const species = materials.speciesOf(infill.stock);
  assert(species !== undefined, 'a style of an unknown species was let through');
  const moving = movingWidth(cell.width, style, { species, cut: infill.cut }, air, shop);
  const length = panelLength(cell, style, shop.panels.allowance);
  // The rabbet must not bind between the frame's back lips in the wettest weeks. Down to the increment, so that panels
  // of several widths are rabbeted at one setting of the fence.
  const allowance = shortest(shop.panels.allowance, floorTo(shop.doors.increment, moving.movement.clearance));
  const { rabbet, workings } = panelRabbet(infill.thickness, style, allowance, shop);
  const strips = gluedUp(length.value, moving.width.value, shop);
  return weighed(
    {
      mark: `P${cell.mark}`,
      role: 'panel',
      stock: infill.stock,
      length,
      width: moving.width,
      thickness: infill.thickness,
      shoulder: undefined,
      place: cell.place,
      make: { kind: 'solid-panel', rabbet, glueUp: strips.glueUp, movement: moving.movement },
      workings: [...moving.workings, ...workings, ...strips.workings],
    },
    materials.densityOf(infill.stock),
  );
}

const panelLength = (cell: Cell, style: FrameStyle, allowance: Length): LengthWorking =>
  work(PANEL_LENGTH, { h: cell.height.value, D: style.grooveDepth, a: allowance });

const PANEL_LENGTH = sumOf('panel-length', [1, 'h'], [2, 'D'], [-2, 'a']);
const PANEL_WIDTH = sumOf('panel-width', [1, 'w'], [2, 'D'], [-2, 'a']);

/** How many strips, all of one width, make the blank that the panel is cut from; allowances are common practice. */
function gluedUp(
  length: Length,
  width: Length,
  shop: Shop,
): { readonly glueUp: PanelGlueUp; readonly workings: readonly Working[] } {
  const { trimAllowance, stripWidthMax, stripAllowance } = shop.panels;
  const blankLength = work(BLANK_LENGTH, { panel: length, trim: trimAllowance });
  const blankWidth = work(BLANK_WIDTH, { B: width, trim: trimAllowance });
  const strips = fact(STRIPS, { blank: blankWidth.value, widest: stripWidthMax });
  const count = strips.value.value;
  const jointed = sharedUp(blankWidth.value, count, shop.doors.increment);
  const stripWidth = work(STRIP_WIDTH, { strip: jointed, joint: stripAllowance });
  return {
    glueUp: {
      strips: count,
      stripWidth: stripWidth.value,
      blankLength: blankLength.value,
      blankWidth: blankWidth.value,
    },
    workings: [blankLength, blankWidth, strips, stripWidth],
  };
}

const BLANK_LENGTH = sumOf('blank-length', [1, 'panel'], [1, 'trim']);
const BLANK_WIDTH = sumOf('blank-width', [1, 'B'], [1, 'trim']);
const STRIPS: Fact<'blank' | 'widest'> = { of: 'strips', unit: 'count', formula: timesNeeded('blank', 'widest') };
const STRIP_WIDTH = sumOf('strip-width', [1, 'strip'], [1, 'joint']);

/** The least multiple of the increment of which `count` make up the total. */
function sharedUp(total: Length, count: number, increment: Length): Length {
  const { each, rest } = share(total, count, increment);
  return rest === 0 ? each : plus(each, increment);
}
