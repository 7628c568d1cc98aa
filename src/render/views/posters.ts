import { POSTER_ACTIONS, posterBarcode } from '../../codes/poster.ts';
import type { Draft, View } from '../draft.ts';
import { inRows } from '../order.ts';

/** posters.hbs: what is scanned from the wall, two posters to a row. */
export type PostersView = { readonly rows: readonly (readonly Poster[])[] };
export type Poster = { readonly kind: string; readonly name: string; readonly barcode: string };

export function posters(draft: Draft): View<PostersView> | undefined {
  const { operations } = draft.plan;
  if (operations.length === 0) return undefined;
  const stations = [...new Set(operations.map(operation => operation.station))].map(station => ({
    kind: draft.say('posters.station'),
    name: draft.say(`station.${station}`),
    barcode: posterBarcode({ kind: 'station', station }),
  }));
  const actions = POSTER_ACTIONS.map(action => ({
    kind: draft.say('posters.action'),
    name: draft.say(`action.${action}`),
    barcode: posterBarcode({ kind: 'action', action }),
  }));
  return { data: { rows: inRows([...stations, ...actions], 2) }, figures: new Map() };
}
