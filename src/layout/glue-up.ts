import type { Door } from '../calculate/door-set.ts';
import type { Shop } from '../trade/shop.ts';
import type { GlueUpBatch } from './shop-plan.ts';

/**
 * Doors that go into clamps together: as many as the shop's clamps hold. Those that take the most clamps come first,
 * while hands are fresh, and smaller ones fill what clamps are left. A door that takes more clamps than there are
 * stands alone (the checks say so). Doors without a frame are not glued.
 */
export function planBatches(doors: readonly Door[], shop: Shop): readonly GlueUpBatch[] {
  const batches: { doors: Door[]; clamps: number }[] = [];
  // First batch that may still have room for a door of so many clamps: with it, the search stays short.
  const open = new Map<number, number>();
  for (const door of doors.filter(each => each.build === 'frame').sort(largestFirst(shop))) {
    const clamps = clampsFor(door, shop);
    let at = open.get(clamps) ?? 0;
    while (at < batches.length && (batches[at]?.clamps ?? 0) + clamps > shop.gluing.clamps) at += 1;
    open.set(clamps, at);
    const batch = batches[at];
    if (batch === undefined) batches.push({ doors: [door], clamps });
    else {
      batch.doors.push(door);
      batch.clamps += clamps;
    }
  }
  return batches.map(({ doors: held, clamps }, at) => ({ number: at + 1, doors: held.map(door => door.code), clamps }));
}

/**
 * One clamp across each rail line, and two more along the stiles of a tall door (common practice). A middle rail counts
 * once, however many panels wide the door is.
 */
export const clampsFor = (door: Door, shop: Shop): number =>
  railLines(door) + (door.height.value > shop.gluing.tallFrom ? 2 : 0);

/** Top, bottom, and one middle rail between each two rows of panels. */
const railLines = (door: Door): number => 1 + Math.max(1, ...door.sights.map(sight => sight.row));

const largestFirst = (shop: Shop) => (a: Door, b: Door) =>
  clampsFor(b, shop) - clampsFor(a, shop) || b.height.value - a.height.value || (a.code < b.code ? -1 : 1);
