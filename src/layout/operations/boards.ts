import { FLATTENING_ALLOWANCE, JOINTER_PASS } from '../../trade/machining.ts';
import type { Shop } from '../../trade/shop.ts';
import { type Length, minus, plus } from '../../units/length.ts';
import type { Piece, Work } from '../work.ts';
import { BENCH, checkOf, type MachineSetting, type Pass, passOf, set } from './pass.ts';

/** Board to rough length: the stop is set to the blank; the part's own length comes later. */
export const crosscutRough = (piece: Piece, { shop }: Work): Pass => {
  const { rough } = sizes(piece, shop);
  return passOf(piece, rough, { ...BENCH, settings: [set('rough-length', rough.length, 'stop', 'blade-to-stop')] });
};

/** Section of a board to rough width. */
export const ripRough = (piece: Piece, { shop }: Work): Pass => {
  const { rough } = sizes(piece, shop);
  return passOf(piece, rough, { ...BENCH, settings: [set('rough-width', rough.width, 'fence', 'blade-to-fence')] });
};

/** Strips lie on stickers and move as they want to before they are made straight. */
export const rest = (piece: Piece, { shop }: Work): Pass => passOf(piece, sizes(piece, shop).rough, BENCH);

/** Both faces flat, to the part's thickness; strips of a solid panel keep a little for the flattening of the whole. */
export function planeThickness(piece: Piece, { shop }: Work): Pass {
  const { rough, thickness } = sizes(piece, shop);
  const planed = keepsAllowance(piece) ? plus(thickness, FLATTENING_ALLOWANCE) : thickness;
  return passOf(piece, rough, {
    ...BENCH,
    settings: [set('planed-thickness', planed, 'height', 'table')],
    check: checkOf('planed-thickness', planed, shop),
  });
}

/** One straight edge to go against the rip fence; two on a strip, which is glued on both. */
export function jointEdge(piece: Piece, { shop }: Work): Pass {
  const machine: MachineSetting = {
    ...BENCH,
    settings: [set('depth-of-cut', JOINTER_PASS, 'depth', 'outfeed-table')],
    notes: isStrip(piece) ? ['joint-both-edges', 'number-the-strips'] : [],
  };
  return passOf(piece, sizes(piece, shop).rough, machine, [isStrip(piece) ? 'both-edges' : 'one-edge']);
}

/** Strips to the final width: stiles and rails of one width at one setting of the fence. */
export function ripWidth(piece: Piece, { shop }: Work): Pass {
  const { rough, final } = sizes(piece, shop);
  return passOf(piece, rough, {
    ...BENCH,
    settings: [set('final-width', final.width, 'fence', 'blade-to-fence')],
    orientation: { face: 'either', edge: 'jointed' },
    check: checkOf('final-width', final.width, shop),
  });
}

/** Stiles and rails to length against the stop; a rail's length has its tongues in it. */
export function cutLength(piece: Piece, { shop }: Work): Pass {
  const { rough, final } = sizes(piece, shop);
  const before = { length: rough.length, width: final.width };
  return passOf(piece, before, {
    ...BENCH,
    settings: [set('final-length', final.length, 'stop', 'blade-to-stop')],
    orientation: { face: 'either', edge: 'jointed' },
    notes: ['square-one-end-first'],
    check: checkOf('final-length', final.length, shop),
  });
}

/** Ripped off the jointed edge of the blank one after the other, the edge jointed again between two, then to length. */
export function cutStops(piece: Piece, { shop }: Work): Pass {
  const { rough, final } = sizes(piece, shop);
  return passOf(piece, rough, {
    ...BENCH,
    settings: [
      set('final-width', final.width, 'fence', 'blade-to-fence'),
      set('final-length', final.length, 'stop', 'blade-to-stop'),
    ],
    orientation: { face: 'either', edge: 'jointed' },
    notes: ['rip-stops-from-wide-blank'],
    check: checkOf('final-length', final.length, shop),
  });
}

/** A piece from a board as it leaves the board, and as the saw brings it to size. */
function sizes(piece: Piece, shop: Shop): { readonly rough: Size; readonly final: Size; readonly thickness: Length } {
  switch (piece.kind) {
    case 'blank':
      return {
        rough: piece.blank,
        final: { length: piece.blank.length, width: minus(piece.blank.width, shop.rough.widthAllowance) },
        thickness: piece.part.thickness,
      };
    case 'part': {
      const final = { length: piece.part.length.value, width: piece.part.width.value };
      return { rough: piece.blank ?? final, final, thickness: piece.part.thickness };
    }
    case 'door':
      throw new Error(`${piece.door.code} is no piece of a board`);
  }
}

type Size = { readonly length: Length; readonly width: Length };

const isStrip = (piece: Piece): boolean => piece.kind === 'blank' && piece.blank.purpose === 'strip';

/** Strips are flattened once more as a panel, and what the panel's rabbet is tried on goes the same way. */
const keepsAllowance = (piece: Piece): boolean => piece.kind === 'blank' && piece.part.make.kind === 'solid-panel';
