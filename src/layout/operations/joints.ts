import type { Joint } from '../../calculate/door-set.ts';
import type { Shop } from '../../trade/shop.ts';
import { minus } from '../../units/length.ts';
import type { RunName, SetupNote } from '../shop-plan.ts';
import type { Piece, Work } from '../work.ts';
import { BENCH, checkOf, type MachineSetting, type Pass, passOf, set } from './pass.ts';

/** Marks and tags on the back of each frame part, so that from here on everybody knows what is up. */
export const inspect = (piece: Piece): Pass => passOf(piece, sizeOf(piece), BENCH);

/** The first bit: a groove in every edge that faces a panel. */
export function groove(piece: Piece, { shop }: Work): Pass {
  const both = groovedEdges(piece) === 2;
  const machine = grooveSetting(jointOf(piece), shop);
  const notes: readonly SetupNote[] = [
    ...(both ? (['groove-both-edges'] as const) : []),
    ...(piece.kind === 'blank' ? (['leave-spares-long'] as const) : []),
  ];
  return passOf(piece, sizeOf(piece), { ...machine, notes: [...machine.notes, ...notes] }, [
    both ? 'both-edges' : 'inside-edge',
  ]);
}

/**
 * The show face lies on the table, so that the groove's front wall stands `L` behind it whatever the stock's thickness
 * turned out to be: the bit's cutting edge is set at `L` over the table, and a frame of 13/16 in shares the setting
 * with one of 3/4 in.
 */
export const grooveSetting = (joint: Joint, shop: Shop): MachineSetting => ({
  settings: [
    set('groove-height', joint.faceToGroove, 'height', 'table'),
    set('groove-depth', joint.grooveDepth, 'fence', 'fence-face'),
    set('groove-width', joint.grooveWidth, 'tool', 'cutter'),
  ],
  orientation: { face: 'show-down', edge: 'inside' },
  notes: ['test-pieces-first'],
  adjustment: undefined,
  check: checkOf('groove-height', joint.faceToGroove, shop),
});

/** The second bit: the stub tongue that fits the groove, on both ends of all that stands between stiles or rails. */
export function cope(piece: Piece, { shop }: Work): Pass {
  const upright = piece.kind === 'part' && piece.part.make.kind === 'middle-stile';
  const runs: readonly RunName[] = upright ? ['top-end', 'bottom-end'] : ['left-end', 'right-end'];
  const pass = passOf(piece, sizeOf(piece), copeSetting(jointOf(piece), shop), runs);
  const shoulder = piece.kind === 'part' ? piece.part.shoulder : undefined;
  if (shoulder === undefined) return pass;
  return { ...pass, piece: { ...pass.piece, figures: [{ of: 'shoulder', length: shoulder.value }] } };
}

/**
 * Show face down here too, on the sled: the tongue's front cheek stands `L` over the sled's base, flush with the
 * groove's front wall. The fence stands so that the shoulder falls `T` behind the rail's end.
 */
export const copeSetting = (joint: Joint, shop: Shop): MachineSetting => ({
  settings: [
    set('tongue-height', joint.faceToGroove, 'height', 'sled-base'),
    set('tongue-length', joint.tongueLength, 'fence', 'fence-face'),
    set('tongue-thickness', joint.grooveWidth, 'tool', 'cutter'),
  ],
  orientation: { face: 'show-down', edge: 'either' },
  notes: ['test-pieces-first', COPE_NOTE[shop.router.order]],
  adjustment: undefined,
  check: checkOf('tongue-length', joint.tongueLength, shop),
});

/**
 * A glass frame is grooved and coped like the others, which keeps one joint for the whole job, and glued up; then the
 * groove's back lip is cut away all round, which leaves a rabbet as deep as the wood behind the groove's front wall.
 * The bearing runs on the front lip, so the width is the groove's depth. Bits leave round corners for the chisel.
 */
export function rabbetGlass(piece: Piece, { shop }: Work): Pass {
  const joint = jointOf(piece);
  const depth = minus(joint.frameThickness, joint.faceToGroove);
  return passOf(
    piece,
    sizeOf(piece),
    {
      settings: [
        set('glass-rabbet-depth', depth, 'height', 'table'),
        set('glass-rabbet-width', joint.grooveDepth, 'tool', 'cutter'),
      ],
      orientation: { face: 'show-up', edge: 'inside' },
      notes: ['square-corners-by-hand'],
      adjustment: undefined,
      check: checkOf('glass-rabbet-depth', depth, shop),
    },
    ['around'],
  );
}

function groovedEdges(piece: Piece): 1 | 2 {
  const make = piece.kind === 'part' ? piece.part.make : undefined;
  switch (make?.kind) {
    case 'stile':
    case 'rail':
    case 'middle-stile':
      return make.groovedEdges;
    default:
      return 1;
  }
}

function jointOf(piece: Piece): Joint {
  if (piece.door.joint === undefined) throw new Error(`${piece.door.code} has no frame`);
  return piece.door.joint;
}

/** Frame parts come from the saw at their final size; a spare is still long. */
function sizeOf(piece: Piece): Pick<Pass['piece'], 'length' | 'width'> {
  switch (piece.kind) {
    case 'blank':
      return { length: piece.blank.length, width: piece.blank.width };
    case 'part':
      return { length: piece.part.length.value, width: piece.part.width.value };
    case 'door':
      return { length: piece.door.height.value, width: piece.door.width.value };
  }
}

const COPE_NOTE: { readonly [Order in Shop['router']['order']]: SetupNote } = {
  'groove-first': 'shaped-backer-behind-cope',
  'cope-first': 'cope-before-groove',
};
