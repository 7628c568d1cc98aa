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
  const grooves = { w: sight.value, D: style.grooveDepth };
  const wetter = { ...coefficients(wood.species), M2: air.wettest.value.value, M1: air.made.value.value };
  const drier = { ...coefficients(wood.species), M2: air.made.value.value, M1: air.driest.value.value };
  const { room, panel } = MOVES[wood.cut];
  const swellRoom = lengthFact('swell-room', room, { ...grooves, ...wetter }, Math.ceil);
  const width = cutWidth(sight, style, swellRoom.value.value, shop);
  const swells = lengthFact('panel-swells', panel, { B: width.value, ...wetter }, Math.round);
  const shrinks = lengthFact('panel-shrinks', panel, { B: width.value, ...drier }, Math.round);
  const cut = { ...grooves, B: width.value, swells: swells.value.value, shrinks: shrinks.value.value };
  const engagement = workShared(ENGAGEMENT, EACH_EDGE, cut);
  const clearance = workShared(CLEARANCE, EACH_EDGE, cut);
  return {
    width,
    movement: {
      species: wood.species.name,
      cut: wood.cut,
      made: air.made.value.value,
      driest: air.driest.value.value,
      wettest: air.wettest.value.value,
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

function cutWidth(sight: LengthWorking, style: FrameStyle, room: Length, shop: Shop): LengthWorking {
  const { allowance } = shop.panels;
  const toIncrement = { by: 1, to: shop.doors.increment };
  const grooves = { w: sight.value, D: style.grooveDepth };
  return room >= times(2, allowance)
    ? workShared(WITH_SWELL, toIncrement, { ...grooves, swell: room })
    : workShared(WITH_ALLOWANCE, toIncrement, { ...grooves, a: allowance });
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
const coefficients = ({ tangential, radial }: Species) => ({ C_T: tangential, C_R: radial });
