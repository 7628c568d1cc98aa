import { type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import { cellOf } from '../diagnostics/place.ts';
import type { Opening } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import { type Length, minus, nm, share, times } from '../units/length.ts';
import type { BuiltLeaf } from './built-leaf.ts';
import type { Movement } from './door-set.ts';
import { coversJoint, jointsFromTop } from './hinges.ts';
import { openingName } from './opening-name.ts';

/**
 * What must hold of a door that can be made, before wood is cut for it. What is wrong with one leaf of a pair is wrong with
 * its mirror image, and said once.
 */
type Check = (leaf: BuiltLeaf, opening: Opening, shop: Shop) => readonly Diagnostic[];

export const doorFindings: Check = (leaf, opening, shop) => {
  const findings: Diagnostic[] = [];
  for (const check of CHECKS) findings.push(...check(leaf, opening, shop));
  return findings;
};

/** Architectural woodwork standards ask for an intermediate rail in high frames; a panel alone lets them rack. */
const tallFrameHasMiddleRail: Check = ({ build, height }, opening, { doors }) =>
  build === 'slab' || opening.grid.panelsHigh > 1 || height.value <= doors.middleRailFrom
    ? []
    : [
        problem('door-wants-middle-rail', cellOf(opening.from, 'height'), {
          door: openingName(opening),
          height: height.value,
          from: doors.middleRailFrom,
        }),
      ];

/** Said once for the widest-moving panel of a door: the others are cured with it. */
const panelStaysInGroove: Check = (leaf, opening, { panels }) => {
  let worst: { readonly width: Length; readonly movement: Movement } | undefined;
  for (const { make, width } of leaf.pieces) {
    if (make.kind !== 'solid-panel' || make.movement.engagement >= panels.engagement) continue;
    if (worst === undefined || make.movement.engagement < worst.movement.engagement)
      worst = { width: width.value, movement: make.movement };
  }
  return worst === undefined ? [] : [heldBadly(worst.width, worst.movement, opening, panels.engagement)];
};

function heldBadly(width: Length, movement: Movement, opening: Opening, least: Length): Diagnostic {
  const { shrinks, swells, engagement } = movement;
  const facts = { door: openingName(opening), width, shrinks, swells };
  const at = cellOf(opening.from, 'width');
  return engagement <= 0
    ? problem('panel-leaves-groove', at, { ...facts, gap: times(-1, engagement) })
    : problem('panel-barely-held', at, { ...facts, engagement, least });
}

const hingesSuffice: Check = ({ hinges, height, mass }, opening, shop) => {
  const { counts } = shop.hinges;
  const beyond = counts.every(step => height.value > step.heightUpTo) || counts.every(step => mass > step.massUpTo);
  return hinges.length === 0 || !beyond
    ? []
    : [
        problem('door-beyond-hinge-table', cellOf(opening.from, 'height'), {
          door: openingName(opening),
          height: height.value,
          mass,
        }),
      ];
};

/** Two plates must fit between the ends and beside each other. */
const hingesHaveRoom: Check = ({ hinges, height }, opening, shop) => {
  const { plateReach } = shop.hinges;
  const crowded = hinges.some(({ fromTop }, at) => {
    const above = hinges[at - 1]?.fromTop ?? times(-1, plateReach);
    return minus(fromTop, above) < times(2, plateReach);
  });
  return !crowded
    ? []
    : [
        problem('door-too-short-for-hinges', cellOf(opening.from, 'height'), {
          door: openingName(opening),
          height: height.value,
          hinges: hinges.length,
        }),
      ];
};

/** A door sags when it hangs on less than its own width; common practice. */
const hingesFartherApartThanWidth: Check = ({ hinges, width }, opening) => {
  const [first, last] = [hinges[0], hinges.at(-1)];
  if (first === undefined || last === undefined) return [];
  const apart = minus(last.fromTop, first.fromTop);
  return apart > width.value
    ? []
    : [
        problem('hinges-closer-than-width', cellOf(opening.from, 'width'), {
          door: openingName(opening),
          apart,
          width: width.value,
        }),
      ];
};

const hingesClearJoints: Check = ({ hinges, pieces, height }, opening, shop) => {
  const rails = pieces.filter(piece => piece.role === 'rail-middle').map(piece => piece.place);
  const joints = jointsFromTop(rails, height.value);
  const { plateReach, shiftMax } = shop.hinges;
  return hinges
    .filter(({ fromTop }) => coversJoint(fromTop, joints, plateReach))
    .map(({ fromTop }) =>
      problem('hinge-on-rail-joint', cellOf(opening.from, 'height'), { door: openingName(opening), fromTop, shiftMax }),
    );
};

const pullIsOnTheDoor: Check = ({ leaves, width, height }, opening) => {
  const off = leaves[0]?.pull?.holes.find(
    ({ fromLeft, fromBottom }) =>
      fromLeft <= 0 || fromLeft >= width.value || fromBottom <= 0 || fromBottom >= height.value,
  );
  return off === undefined
    ? []
    : [problem('pull-off-the-door', cellOf(opening.from, 'pull'), { door: openingName(opening), ...off })];
};

/** A hole up the stile must have the stile's solid part round it, not the groove. */
const pullClearsGroove: Check = ({ leaves, joint }, opening, { pulls }) => {
  const pull = leaves[0]?.pull;
  if (pull?.runs !== 'upright' || joint === undefined) return [];
  const solid = minus(joint.stileWidth, joint.grooveDepth);
  const half = share(pull.diameter, 2, nm(1)).each;
  return pulls.fromEdge <= minus(solid, half)
    ? []
    : [
        problem('pull-in-groove', cellOf(opening.from, 'pull'), {
          door: openingName(opening),
          fromEdge: pulls.fromEdge,
          solid,
        }),
      ];
};

/** The list that a shop would run down at the drawing. */
const CHECKS: readonly Check[] = [
  tallFrameHasMiddleRail,
  panelStaysInGroove,
  hingesSuffice,
  hingesHaveRoom,
  hingesFartherApartThanWidth,
  hingesClearJoints,
  pullIsOnTheDoor,
  pullClearsGroove,
];
