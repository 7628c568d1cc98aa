import type { Part, Rabbet } from '../../calculate/door-set.ts';
import type { Shop } from '../../trade/shop.ts';
import { INCH, type Length, minus, nm, plus, times } from '../../units/length.ts';
import type { Adjustment } from '../shop-plan.ts';
import type { Piece, Work } from '../work.ts';
import { BENCH, checkOf, type MachineSetting, type Pass, passOf, set } from './pass.ts';

/** Whole sheets to pieces that one person can guide, sheet by sheet; in which order, the sheet's own plan shows. */
export function breakSheet(piece: Piece): Pass {
  const pass = passOf(piece, sizes(piece).before, FACE_UP);
  const sheet = piece.kind === 'blank' ? piece.bin : undefined;
  return { ...pass, group: sheet === undefined ? undefined : { kind: 'sheet', name: sheet } };
}

/** Panels and slabs to width: the fence is set to the final size. */
export function ripPanel(piece: Piece, { shop }: Work): Pass {
  const { before, final } = sizes(piece);
  return passOf(piece, before, {
    ...FACE_UP,
    settings: [set('final-width', final.width, 'fence', 'blade-to-fence')],
    check: checkOf('final-width', final.width, shop),
  });
}

/** Panels and slabs to length, across the grain of the face: that is where a back veneer splinters. */
export function cutPanel(piece: Piece, { shop }: Work): Pass {
  const { before, final } = sizes(piece);
  return passOf(
    piece,
    { length: before.length, width: final.width },
    {
      ...FACE_UP,
      settings: [set('final-length', final.length, 'stop', 'blade-to-stop')],
      check: checkOf('final-length', final.length, shop),
    },
  );
}

/** Strips edge to edge into a blank that is a little larger than the panel. */
export function gluePanel(piece: Piece): Pass {
  const { make } = partOf(piece);
  const pass = passOf(piece, sizes(piece).before, { ...BENCH, notes: ['number-the-strips'] });
  if (make.kind !== 'solid-panel') return pass;
  const strips = { of: 'strip' as const, length: make.glueUp.stripWidth, count: make.glueUp.strips };
  return { ...pass, piece: { ...pass.piece, figures: [strips] } };
}

export const curePanel = (piece: Piece): Pass => passOf(piece, sizes(piece).before, BENCH);

/** The glued-up blank to the panel's thickness, planer or sander set to it. */
export function flattenPanel(piece: Piece, { shop }: Work): Pass {
  const { thickness } = partOf(piece);
  return passOf(piece, sizes(piece).before, {
    ...BENCH,
    settings: [set('planed-thickness', thickness, 'height', 'table')],
    check: checkOf('planed-thickness', thickness, shop),
  });
}

/** The step round the back that leaves a tongue for the groove. */
export function rabbetPanel(piece: Piece, { shop }: Work): Pass {
  const part = partOf(piece);
  const machine = rabbetSetting(part, shop);
  return passOf(piece, sizes(piece).final, machine, [piece.kind === 'part' ? 'four-edges' : 'one-edge']);
}

/**
 * The panel lies on its back, so that what stands above the table is cut away: the cutter's height is the rabbet's
 * depth, and from the fence to the cutter's outer side is its width. The ends come first: what splinters at their
 * corners, the passes along the grain take off.
 */
export function rabbetSetting(part: Part, shop: Shop): MachineSetting {
  const rabbet = rabbetOf(part);
  return {
    settings: [
      set('rabbet-depth', rabbet.depth, 'height', 'table'),
      set('rabbet-width', rabbet.width, 'fence', 'fence-face'),
    ],
    orientation: { face: 'show-up', edge: 'each' },
    notes: ['measure-thickness-first', 'test-pieces-first', 'ends-before-sides'],
    adjustment: adjustmentOf(rabbet, shop),
    // A 64th would let it rattle or bind: what the tongue may be off is the play that it has.
    check: { ...checkOf('rabbet-tongue', rabbet.tongue, shop), tolerance: shop.panels.rabbetFit },
  };
}

/** Only the tongue's thickness matters to the groove: whatever the panel is thicker, the rabbet is deeper. */
function adjustmentOf(rabbet: Rabbet, shop: Shop): Adjustment {
  const planned = plus(rabbet.depth, rabbet.tongue);
  const step = shop.printing.lengths.units === 'mm' ? TENTHS : HUNDREDTHS;
  const measured = READINGS.map(count => plus(planned, times(count, step))).filter(reading => reading > rabbet.tongue);
  return {
    measure: 'panel-thickness',
    setting: 'rabbet-depth',
    planned,
    rows: measured.map(reading => ({ measured: reading, set: minus(reading, rabbet.tongue) })),
  };
}

/** Faces to the grit before assembly: inside the frame no sander reaches the edges. */
export function sandPanel(piece: Piece): Pass {
  const solid = partOf(piece).make.kind === 'solid-panel';
  return passOf(piece, sizes(piece).final, { ...BENCH, notes: solid ? ['prefinish-panel-edges'] : [] });
}

/** What comes off a sheet is of final size at once; a solid panel is sized from the blank that was glued up. */
function sizes(piece: Piece): { readonly before: Size; readonly final: Size } {
  if (piece.kind === 'blank') return { before: piece.blank, final: piece.blank };
  const part = partOf(piece);
  const final = { length: part.length.value, width: part.width.value };
  if (part.make.kind !== 'solid-panel') return { before: final, final };
  return { before: { length: part.make.glueUp.blankLength, width: part.make.glueUp.blankWidth }, final };
}

function partOf(piece: Piece): Part {
  if (piece.kind === 'door') throw new Error(`${piece.door.code} is no panel`);
  return piece.part;
}

function rabbetOf(part: Part): Rabbet {
  const rabbet = part.make.kind === 'plywood-panel' || part.make.kind === 'solid-panel' ? part.make.rabbet : undefined;
  if (rabbet === undefined) throw new Error(`${part.code} has no rabbet`);
  return rabbet;
}

type Size = { readonly length: Length; readonly width: Length };

const FACE_UP: MachineSetting = { ...BENCH, orientation: { face: 'show-up', edge: 'sawn' } };

/** Caliper readings around what was planned: sheets of one delivery differ by about this much. */
const READINGS = [-2, -1, 0, 1, 2];
const HUNDREDTHS = nm(INCH / 100);
const TENTHS = nm(200_000);
