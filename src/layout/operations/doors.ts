import type { Door, Hinge, Pull } from '../../calculate/door-set.ts';
import type { Length } from '../../units/length.ts';
import { longest, minus, plus, times } from '../../units/length.ts';
import type { FigureName, PieceFigure, RunName, SetupGroup } from '../shop-plan.ts';
import { hornOf, type Piece, type Work } from '../work.ts';
import { BENCH, checkOf, type MachineSetting, type Pass, passOf, set } from './pass.ts';

/** What nothing is set for: the whole door on the bench, the rack or in the spray booth. */
export const atTheBench = (piece: Piece): Pass => doorPass(piece, BENCH);

/** Dry first: glue sets while one looks for the mistake. */
export const dryFit = (piece: Piece): Pass => doorPass(piece, BENCH, ['once'], diagonalOf(doorOf(piece)));

/** Each batch is what the clamps can hold; the two diagonals of a door tell whether it is square. */
export function glueUp(piece: Piece): Pass {
  const door = doorOf(piece);
  const solid = door.joint?.infillKind === 'solid';
  const pass = doorPass(
    piece,
    { ...BENCH, notes: ['compare-diagonals', ...(solid ? (['panel-stays-loose'] as const) : [])] },
    ['once'],
    diagonalOf(door),
  );
  const batch = piece.kind === 'door' ? piece.batch : undefined;
  return { ...pass, group: batch && { kind: 'batch', name: batch.number.toString() } };
}

/** The stop is set to the finished door: its squared end against it, the second horn falls off. */
export function cutHorns(piece: Piece, work: Work): Pass {
  const { shop } = work;
  const door = doorOf(piece);
  const pass = doorPass(piece, {
    ...BENCH,
    settings: [set('door-height', door.height.value, 'stop', 'blade-to-stop')],
    orientation: { face: 'show-up', edge: 'outside' },
    notes: ['cut-first-horn-by-the-rail'],
    check: checkOf('door-height', door.height.value, shop),
  });
  const length = plus(door.height.value, times(2, hornOf(door, work)));
  return { ...pass, piece: { ...pass.piece, length } };
}

/**
 * Hinge cups are bored from the back with the hinge edge against the fence. A hinge is set by its distance from the
 * nearer end of the door. Left and right hands are mirrored: with the back up and the hinge edge at the fence, the top
 * of a door that hangs on the left points to the left. So one distance, with a stop on each side of the bit, serves
 * top and bottom of both hands.
 */
export const boreHinges = (piece: Piece, { shop }: Work): readonly Pass[] => {
  const door = doorOf(piece);
  return door.hinges.map(hinge => {
    const fromBottom = minus(door.height.value, hinge.fromTop);
    const fromTop = hinge.fromTop <= fromBottom;
    const machine = boringSetting(hinge, fromTop ? hinge.fromTop : fromBottom);
    return doorPass(piece, { ...machine, check: checkOf('cup-depth', hinge.cupDepth, shop) }, [
      stopRun(fromTop, door.hingeSide === 'right'),
    ]);
  });
};

const boringSetting = (hinge: Hinge, fromEnd: Length): MachineSetting => ({
  ...BENCH,
  settings: [
    set('hinge-from-end', fromEnd, 'stop', 'bit-centre-to-stop'),
    set('hinge-from-edge', hinge.fromEdge, 'fence', 'bit-centre-to-fence'),
    set('cup-depth', hinge.cupDepth, 'depth', 'work-face'),
    set('cup-diameter', hinge.cupDiameter, 'tool', 'cutter'),
  ],
  orientation: { face: 'show-down', edge: 'hinge' },
  notes: ['stop-left-and-right'],
});

function stopRun(fromTop: boolean, right: boolean): RunName {
  if (fromTop) return right ? 'top-at-right-stop' : 'top-at-left-stop';
  return right ? 'bottom-at-left-stop' : 'bottom-at-right-stop';
}

/** On site, room by room; the gaps are what the eye will see. */
export const inRoom = (piece: Piece): Pass => ({
  ...doorPass(piece, BENCH, ['once'], gapsOf(doorOf(piece))),
  group: roomOf(piece),
});

export const takeDown = (piece: Piece): Pass => ({ ...doorPass(piece, BENCH), group: roomOf(piece) });

const roomOf = (piece: Piece): SetupGroup => ({ kind: 'room', name: doorOf(piece).room });

/** Every outside edge, show face and back, against the bearing. */
export function easeEdges(piece: Piece): Pass {
  return doorPass(
    piece,
    {
      ...BENCH,
      settings: [set('easing-radius', doorOf(piece).edgeEasing, 'tool', 'cutter')],
    },
    ['around'],
  );
}

/**
 * Pulls are drilled through from the show face, with a backer under the hole. On a hinged door the jig stands on the
 * corner away from the hinge and is turned over for the other hand; on a front without hinges the holes are marked
 * from its own left end, which is the piece's own figure.
 */
export function drillPulls(piece: Piece): readonly Pass[] {
  const door = doorOf(piece);
  if (door.pull === undefined) return [];
  const place = pullPlace(door, door.pull);
  const machine: MachineSetting = {
    ...BENCH,
    settings: [
      ...(place.fromEdge === undefined ? [] : [set('pull-from-edge', place.fromEdge, 'place', 'free-edge')]),
      set('pull-from-end', place.fromEnd, 'place', door.pull.end === 'top' ? 'top-end' : 'bottom-end'),
      ...(place.spacing === undefined ? [] : [set('pull-spacing', place.spacing, 'place', 'first-hole')]),
      set('hole-diameter', door.pull.diameter, 'tool', 'cutter'),
    ],
    orientation: { face: 'show-up', edge: 'either' },
    notes: ['backer-under-door', ...(door.hingeSide === undefined ? [] : (['mirror-for-right-hand'] as const))],
  };
  return [doorPass(piece, machine, [place.run], place.figures)];
}

type PullPlace = {
  readonly fromEdge: Length | undefined;
  readonly fromEnd: Length;
  readonly spacing: Length | undefined;
  readonly run: RunName;
  readonly figures: readonly PieceFigure[];
};

function pullPlace(door: Door, pull: Pull): PullPlace {
  const [near, far] = holesFrom(pull);
  const fromLeft = near.fromLeft;
  const free = door.hingeSide === 'left' ? minus(door.width.value, fromLeft) : fromLeft;
  return {
    fromEdge: door.hingeSide === undefined ? undefined : free,
    fromEnd: pull.end === 'top' ? minus(door.height.value, near.fromBottom) : near.fromBottom,
    spacing: far === undefined ? undefined : apart(near, far),
    run: door.hingeSide === undefined ? 'pull-in-middle' : door.hingeSide === 'left' ? 'pull-on-right' : 'pull-on-left',
    figures: door.hingeSide === undefined ? [{ of: 'pull-from-left', length: fromLeft }] : [],
  };
}

type Hole = Pull['holes'][number];

/** The hole nearest to the end that is measured from, or the left one of two that stand level; and the other. */
function holesFrom(pull: Pull): readonly [Hole, Hole | undefined] {
  const sorted = [...pull.holes].sort(
    (a, b) =>
      (pull.end === 'top' ? b.fromBottom - a.fromBottom : a.fromBottom - b.fromBottom) || a.fromLeft - b.fromLeft,
  );
  const [near, far] = sorted;
  if (near === undefined) throw new Error('a pull has a hole');
  return [near, far];
}

/** Holes stand level or upright, so one of the two differences is nothing. */
const apart = (a: Hole, b: Hole): Length =>
  longest(
    minus(b.fromLeft, a.fromLeft),
    minus(a.fromLeft, b.fromLeft),
    minus(b.fromBottom, a.fromBottom),
    minus(a.fromBottom, b.fromBottom),
  );

/** After the finish: each pane with the stops of its own door. */
export const fitGlass = (piece: Piece): Pass =>
  piece.kind === 'part'
    ? passOf(piece, { length: piece.part.length.value, width: piece.part.width.value }, BENCH)
    : doorPass(piece, BENCH);

const doorPass = (
  piece: Piece,
  machine: MachineSetting,
  runs: readonly RunName[] = ['once'],
  figures: readonly PieceFigure[] = [],
): Pass => {
  const { height, width } = doorOf(piece);
  const pass = passOf(piece, { length: height.value, width: width.value }, machine, runs);
  return { ...pass, piece: { ...pass.piece, figures } };
};

const doorOf = (piece: Piece): Door => piece.door;

const diagonalOf = (door: Door): readonly PieceFigure[] => [{ of: 'diagonal', length: door.diagonal.length }];

const GAPS: readonly (readonly [FigureName, keyof Door['gaps']])[] = [
  ['gap-left', 'left'],
  ['gap-right', 'right'],
  ['gap-top', 'top'],
  ['gap-bottom', 'bottom'],
  ['gap-between', 'between'],
];

function gapsOf(door: Door): readonly PieceFigure[] {
  return GAPS.flatMap(([of, side]) => {
    const length = door.gaps[side];
    return length === undefined ? [] : [{ of, length }];
  });
}
