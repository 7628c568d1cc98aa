import type { FrameStyle, GrainCut } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import type { Species } from '../trade/species.ts';
import { type Length, nm, times } from '../units/length.ts';
import type { FactWorking, LengthWorking, Movement, Working } from './door-set.ts';
import {
  atLeastZero,
  constant,
  difference,
  type Formula,
  input,
  lengthFact,
  lengthInput,
  product,
  sum,
} from './formula.ts';
import type { Moistures } from './moisture.ts';
import type { Worked } from './worked.ts';
import { workShared } from './working.ts';

/** The width of a solid panel across its grain, and what the seasons do to it. */
export type MovingWidth = {
  readonly width: LengthWorking;
  readonly movement: Movement;
  readonly workings: readonly Working[];
};

/**
 * A solid panel is cut so that in the wettest weeks it still does not bottom in the groove: room is left for what a
 * panel as wide as the grooves are apart would swell, and never less than the usual allowance on each edge. Then it is
 * looked at in the driest weeks, lying in the middle of its frame. The stiles' own movement is left out, as is usual.
 */
export function movingWidth(
  sight: LengthWorking,
  style: FrameStyle,
  wood: { readonly species: Species; readonly cut: GrainCut },
  air: Moistures,
  shop: Shop,
): MovingWidth {
  const grooves = sum(lengthInput('w', sight.value), product(constant(2), lengthInput('D', style.grooveDepth)));
  const room = moves('swell-room', grooves, wood, [air.wettest, air.made], Math.ceil);
  const width = cutWidth(sight, style, room.length, shop);
  const panel = lengthInput('B', width.value);
  const swells = moves('panel-swells', panel, wood, [air.wettest, air.made], Math.round);
  const shrinks = moves('panel-shrinks', panel, wood, [air.made, air.driest], Math.round);
  const engagement = eachEdge(
    'engagement',
    [1, 'B', width.value],
    [-1, 'shrinks', shrinks.length],
    [-1, 'w', sight.value],
  );
  const clearance = eachEdge(
    'clearance',
    [1, 'w', sight.value],
    [2, 'D', style.grooveDepth],
    [-1, 'B', width.value],
    [-1, 'swells', swells.length],
  );
  return {
    width,
    movement: {
      species: wood.species.name,
      cut: wood.cut,
      made: air.made.value.value,
      driest: air.driest.value.value,
      wettest: air.wettest.value.value,
      shrinks: shrinks.length,
      swells: swells.length,
      engagement: engagement.value,
      clearance: clearance.value,
    },
    workings: [air.made, air.driest, air.wettest, room.working, swells.working, shrinks.working, engagement, clearance],
  };
}

function cutWidth(sight: LengthWorking, style: FrameStyle, room: Length, shop: Shop): LengthWorking {
  const { allowance } = shop.panels;
  const taken = room >= times(2, allowance) ? ([-1, 'swell', room] as const) : ([-2, 'a', allowance] as const);
  return workShared(
    'panel-width',
    { by: 1, to: shop.doors.increment },
    [1, 'w', sight.value],
    [2, 'D', style.grooveDepth],
    taken,
  );
}

/**
 * ΔB = B · C · (M2 − M1), C for each percent of moisture: Wood Handbook (FPL-GTR-190, 2010), eq. 13–2. A change the
 * other way counts as none: a house that is never drier than the shop shrinks nothing.
 */
function moves(
  of: Worked,
  across: Formula,
  wood: { readonly species: Species; readonly cut: GrainCut },
  [wetter, drier]: readonly [FactWorking, FactWorking],
  round: (nanometres: number) => number,
): { readonly length: Length; readonly working: FactWorking } {
  const formula = atLeastZero(product(across, coefficient(wood), rise(wetter, drier)));
  const length = nm(round(formula.value * 1e9));
  return { length, working: lengthFact(of, formula, length) };
}

const coefficient = ({ species, cut }: { readonly species: Species; readonly cut: GrainCut }): Formula =>
  cut === 'flat-sawn' ? input('C_T', 'ratio', species.tangential) : input('C_R', 'ratio', species.radial);

const rise = (wetter: FactWorking, drier: FactWorking): Formula =>
  difference(input('M2', '%', wetter.value.value), input('M1', '%', drier.value.value));

const eachEdge = (of: Worked, ...terms: Parameters<typeof workShared>[2][]): LengthWorking =>
  workShared(of, { by: 2, to: nm(1) }, ...terms);
