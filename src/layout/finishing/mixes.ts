import type { Door } from '../../calculate/door-set.ts';
import { type Diagnosed, problem } from '../../diagnostics/diagnostic.ts';
import { cellOf } from '../../diagnostics/place.ts';
import type { FinishStep } from '../../import/job.ts';
import type { Shop } from '../../trade/shop.ts';
import { type Area, addAreas } from '../../units/area.ts';
import { inMinutes } from '../../units/duration.ts';
import { litres, type Volume } from '../../units/mass.ts';
import type { Mix } from '../shop-plan.ts';
import { additiveFor, coatVolume, shareOut } from './mixing.ts';

/**
 * The doors of one coat in their order, as many to a filling as fit the pot and are coated before the mix goes off.
 * A door that is too large for the pot alone stands alone, and is reported.
 */
export function mixes(
  doors: readonly Door[],
  step: FinishStep,
  minutesPerDoor: number,
  limits: Shop['finishing'],
): Diagnosed<readonly Mix[]> {
  if (potful(addAreas(doors.map(door => door.finishArea)), step) === 0) return { value: [], diagnostics: [] };
  const inTime =
    minutesPerDoor > 0 ? Math.max(1, Math.floor(inMinutes(limits.potLife) / minutesPerDoor)) : doors.length;
  const fits = (surface: Area): boolean => potful(surface, step) <= limits.potVolume;
  const tooLarge = doors.filter(door => !fits(door.finishArea));
  return {
    value: fillings(doors, inTime, fits).map(filling => mixFor(filling, step)),
    diagnostics: tooLarge.map(door =>
      problem('pot-too-small', cellOf(step.from, 'name'), {
        step: step.name,
        door: door.code,
        litres: litres(potful(door.finishArea, step)),
        pot: litres(limits.potVolume),
      }),
    ),
  };
}

/** One after the other while they fit. */
function fillings(
  doors: readonly Door[],
  most: number,
  fits: (surface: Area) => boolean,
): readonly (readonly Door[])[] {
  const all: Door[][] = [];
  let surface = 0 as Area;
  for (const door of doors) {
    const last = all.at(-1);
    const more = addAreas([surface, door.finishArea]);
    const room = last !== undefined && last.length < most && fits(more);
    if (room) last.push(door);
    else all.push([door]);
    surface = room ? more : door.finishArea;
  }
  return all;
}

/** What stands in the pot for such a surface: the mix, and the additive on top. */
function potful(surface: Area, step: FinishStep): Volume {
  const mix = coatVolume(surface, step);
  return (mix + (step.additive ? additiveFor(mix, step.additive) : 0)) as Volume;
}

function mixFor(doors: readonly Door[], step: FinishStep): Mix {
  const volume = coatVolume(addAreas(doors.map(door => door.finishArea)), step);
  return {
    doors: doors.map(door => door.code),
    volume,
    components: shareOut(volume, step).map(each => each.volume),
    additive: step.additive && additiveFor(volume, step.additive),
  };
}
