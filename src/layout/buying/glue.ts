import type { Door, DoorSet, Part } from '../../calculate/door-set.ts';
import type { Shop } from '../../trade/shop.ts';
import { type Area, addAreas, area, timesArea } from '../../units/area.ts';
import { plus, times } from '../../units/length.ts';
import { litres, type Volume } from '../../units/mass.ts';
import { priceOf } from '../../units/money.ts';
import type { ShoppingLine } from '../shop-plan.ts';
import { boughtVolume, cansFor } from './containers.ts';

/** Glue for every joint of every door, at the shop's spread rate, by the bottle. */
export function glue(doorSet: DoorSet, shop: Shop): readonly ShoppingLine[] {
  const volume = (glueArea(doorSet) * shop.gluing.litresPerSquareMetre * 0.001) as Volume;
  if (volume === 0) return [];
  const containers = cansFor(volume, shop.buying.glueContainers);
  const bottles = boughtVolume(containers);
  return [
    {
      kind: 'glue',
      item: 'glue',
      unit: 'litre',
      needed: litres(volume),
      onHand: 0,
      buy: litres(bottles),
      detail: { kind: 'volume', volume, containers },
      amount: shop.buying.gluePrice && priceOf(litres(bottles), shop.buying.gluePrice),
    },
  ];
}

/** All the surface that gets glue, one side of each joint. */
export function glueArea(doorSet: DoorSet): Area {
  const doors = new Map(doorSet.doors.map(door => [door.code, door]));
  return addAreas(doorSet.parts.map(part => jointArea(part, doors.get(part.door))));
}

function jointArea(part: Part, door: Door | undefined): Area {
  const { make } = part;
  switch (make.kind) {
    case 'rail':
    case 'middle-stile':
      return copedEnds(part, door);
    case 'solid-panel':
      // The strips are jointed edge to edge; the panel itself is never glued into its frame.
      return timesArea(make.glueUp.strips - 1, area(make.glueUp.blankLength, part.thickness));
    case 'plywood-panel':
      return grooveBottom(part, door);
    case 'stile':
    case 'slab':
    case 'glass':
    case 'glass-stop':
      return NONE;
  }
}

/** The end of a coped piece, unrolled: its thickness and both cheeks of the tongue, across its width. */
function copedEnds(part: Part, door: Door | undefined): Area {
  if (door?.joint === undefined) return NONE;
  return timesArea(2, area(part.width.value, plus(part.thickness, times(2, door.joint.tongueLength))));
}

/** A plywood panel is glued in all round: a bead as wide as the groove along its edge. */
function grooveBottom(part: Part, door: Door | undefined): Area {
  if (door?.joint === undefined) return NONE;
  return area(times(2, plus(part.length.value, part.width.value)), door.joint.grooveWidth);
}

const NONE = 0 as Area;
