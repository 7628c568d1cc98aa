import type { Shop } from '../../trade/shop.ts';
import type { OperationId, Station } from '../shop-plan.ts';
import type { Piece, Work } from '../work.ts';
import { crosscutRough, cutLength, cutStops, jointEdge, planeThickness, rest, ripRough, ripWidth } from './boards.ts';
import {
  atTheBench,
  boreHinges,
  cutHorns,
  drillPulls,
  dryFit,
  easeEdges,
  fitGlass,
  glueUp,
  inRoom,
  takeDown,
} from './doors.ts';
import { cope, groove, inspect, rabbetGlass } from './joints.ts';
import {
  breakSheet,
  curePanel,
  cutPanel,
  flattenPanel,
  gluePanel,
  rabbetPanel,
  ripPanel,
  sandPanel,
} from './panels.ts';
import type { Pass } from './pass.ts';
import type { Order } from './setups.ts';

/** The station of an operation; a shop may rabbet its panels at the saw or at the router table. */
export function stationOf(id: OperationId, shop: Shop): Station {
  const { station } = RULES[id];
  return typeof station === 'string' ? station : station(shop);
}

/** Where an operation is done, in which order its set-ups are made, and what a piece asks of it. */
type Rule = {
  readonly station: Station | ((shop: Shop) => Station);
  readonly order: Order;
  readonly passes: (piece: Piece, work: Work) => Pass | readonly Pass[];
};

const rule = (station: Rule['station'], order: Order, passes: Rule['passes']): Rule => ({ station, order, passes });

export const RULES: { readonly [Id in OperationId]: Rule } = {
  'crosscut-rough': rule('saw', 'setting', crosscutRough),
  'rip-rough': rule('saw', 'setting', ripRough),
  rest: rule('rack', 'longest', rest),
  'plane-thickness': rule('planer', 'setting', planeThickness),
  'joint-edge': rule('jointer', 'longest', jointEdge),
  'rip-width': rule('saw', 'setting', ripWidth),
  'cut-length': rule('saw', 'setting', cutLength),
  inspect: rule('bench', 'cabinet', inspect),
  groove: rule('router', 'longest', groove),
  cope: rule('router', 'longest', cope),
  'break-sheet': rule('saw', 'group', breakSheet),
  'glue-panel': rule('clamps', 'longest', gluePanel),
  'cure-panel': rule('rack', 'longest', curePanel),
  'flatten-panel': rule('planer', 'setting', flattenPanel),
  'rip-panel': rule('saw', 'setting', ripPanel),
  'cut-panel': rule('saw', 'setting', cutPanel),
  'rabbet-panel': rule(shop => (shop.router.rabbetBy === 'saw' ? 'saw' : 'router'), 'longest', rabbetPanel),
  'sand-panel': rule('sander', 'longest', sandPanel),
  'cut-stops': rule('saw', 'setting', cutStops),
  'dry-fit': rule('bench', 'cabinet', dryFit),
  'glue-up': rule('clamps', 'group', glueUp),
  cure: rule('rack', 'cabinet', atTheBench),
  'cut-horns': rule('saw', 'setting', cutHorns),
  'rabbet-glass': rule('router', 'longest', rabbetGlass),
  'flush-sand': rule('sander', 'cabinet', atTheBench),
  'bore-hinges': rule('drill', 'setting', boreHinges),
  'hang-and-fit': rule('site', 'cabinet', inRoom),
  'take-down': rule('site', 'cabinet', takeDown),
  'ease-edges': rule('router', 'setting', easeEdges),
  finish: rule('spray', 'cabinet', atTheBench),
  'cure-finish': rule('rack', 'cabinet', atTheBench),
  'fit-glass': rule('bench', 'cabinet', fitGlass),
  'drill-pulls': rule('drill', 'setting', drillPulls),
  hang: rule('site', 'cabinet', inRoom),
};
