import type { FrameStyle, GrainCut } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import type { Species } from '../trade/species.ts';
import { type Length, nm, times } from '../units/length.ts';
import type { LengthWorking, Movement, Working } from './door-set.ts';
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
import { sumOf, workShared } from './working.ts';

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
  const [w, D] = [sight.value, style.grooveDepth];
  const { tangential: C_T, radial: C_R } = wood.species;
  const [driest, made, wettest] = [air.driest.value.value, air.made.value.value, air.wettest.value.value];
  const { room, panel } = MOVES[wood.cut];
  const swellRoom = lengthFact('swell-room', room, { w, D, C_T, C_R, M2: wettest, M1: made }, Math.ceil);
  const width = cutWidth(w, D, swellRoom.value.value, shop);
  const B = width.value;
  const swells = lengthFact('panel-swells', panel, { B, C_T, C_R, M2: wettest, M1: made }, Math.round);
  const shrinks = lengthFact('panel-shrinks', panel, { B, C_T, C_R, M2: made, M1: driest }, Math.round);
  const cut = { w, D, B, swells: swells.value.value, shrinks: shrinks.value.value };
  const engagement = workShared(ENGAGEMENT, EACH_EDGE, cut);
  const clearance = workShared(CLEARANCE, EACH_EDGE, cut);
  return {
    width,
    movement: {
      species: wood.species.name,
      cut: wood.cut,
      made,
      driest,
      wettest,
      shrinks: shrinks.value.value,
      swells: swells.value.value,
      engagement: engagement.value,
      clearance: clearance.value,
    },
    workings: [air.made, air.driest, air.wettest, swellRoom, swells, shrinks, engagement, clearance],
  };
}

const EACH_EDGE = { by: 2, to: nm(1) };
const ENGAGEMENT = sumOf('engagement', [1, 'B'], [-1, 'shrinks'], [-1, 'w']);
const CLEARANCE = sumOf('clearance', [1, 'w'], [2, 'D'], [-1, 'B'], [-1, 'swells']);

function cutWidth(w: Length, D: Length, room: Length, shop: Shop): LengthWorking {
  const { allowance } = shop.panels;
  const toIncrement = { by: 1, to: shop.doors.increment };
  return room >= times(2, allowance)
    ? workShared(WITH_SWELL, toIncrement, { w, D, swell: room })
    : workShared(WITH_ALLOWANCE, toIncrement, { w, D, a: allowance });
}

const WITH_SWELL = sumOf('panel-width', [1, 'w'], [2, 'D'], [-1, 'swell']);
const WITH_ALLOWANCE = sumOf('panel-width', [1, 'w'], [2, 'D'], [-2, 'a']);

/**
 * ΔB = B · C · (M2 − M1), C for each percent of moisture: Wood Handbook (FPL-GTR-190, 2010), eq. 13–2. A change the
 * other way counts as none: a house that is never drier than the shop shrinks nothing.
 */
const moves = <Across extends string, C extends string>(across: Formula<Across>, coefficient: Formula<C>) =>
  atLeastZero(product<Across | C | 'M1' | 'M2'>(across, coefficient, difference(input('M2', '%'), input('M1', '%'))));

const GROOVES = sum(lengthInput('w'), product(constant(2), lengthInput('D')));
const movesBy = <C extends string>(coefficient: Formula<C>) => ({
  room: moves(GROOVES, coefficient),
  panel: moves(lengthInput('B'), coefficient),
});

const MOVES = { 'flat-sawn': movesBy(input('C_T', 'ratio')), 'quarter-sawn': movesBy(input('C_R', 'ratio')) };
