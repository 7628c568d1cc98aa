import type { DoorSet, Part } from '../../calculate/door-set.ts';
import type { Shop } from '../../trade/shop.ts';
import { addAreas, area, timesArea } from '../../units/area.ts';
import type { Length } from '../../units/length.ts';
import { priceOf } from '../../units/money.ts';
import type { ShoppingLine } from '../shop-plan.ts';

type Pane = { readonly width: Length; readonly height: Length; readonly count: number };

/** The glazier's list: panes by thickness, equal ones together, largest first. */
export function glass(doorSet: DoorSet, shop: Shop): readonly ShoppingLine[] {
  const panes = doorSet.parts.filter(part => part.make.kind === 'glass');
  const thicknesses = [...new Set(panes.map(part => part.thickness))].sort((a, b) => a - b);
  return thicknesses.map(thickness =>
    lineFor(
      thickness,
      panes.filter(part => part.thickness === thickness),
      shop,
    ),
  );
}

function lineFor(thickness: Length, parts: readonly Part[], shop: Shop): ShoppingLine {
  const panes = alike(parts);
  const surface = addAreas(panes.map(pane => timesArea(pane.count, area(pane.width, pane.height))));
  const price = shop.buying.glassPrice;
  return {
    kind: 'glass',
    item: 'glass',
    unit: 'piece',
    needed: parts.length,
    onHand: 0,
    buy: parts.length,
    detail: { kind: 'panes', thickness, panes },
    amount: price && priceOf(surface, price),
  };
}

function alike(parts: readonly Part[]): readonly Pane[] {
  const panes = new Map<string, Pane>();
  for (const { width, length } of parts) {
    const key = `${width.value} ${length.value}`;
    panes.set(key, { width: width.value, height: length.value, count: (panes.get(key)?.count ?? 0) + 1 });
  }
  return [...panes.values()].sort((a, b) => b.height - a.height || b.width - a.width);
}
