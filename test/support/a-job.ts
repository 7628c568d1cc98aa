import type { Source } from '../../src/diagnostics/place.ts';
import type { FaceFrame, FrameStyle, Grid, Job, Mounting, Opening, SlabStyle, Stock } from '../../src/import/job.ts';
import type { Shop } from '../../src/trade/shop.ts';
import { shopDefaults } from '../../src/trade/shop-defaults.ts';
import { ZERO } from '../../src/units/length.ts';
import { length } from './length.ts';

/**
 * A job as the import would hand it on, of a few openings of every kind: overlay and inset, single and pair, unequal
 * overlays, a tall door of three panels, a grid, a slab, a drawer front, a false front, an end panel, glass, a solid
 * panel. Invented. What a test is about goes into `changes`.
 */
export const aJob = (changes: Partial<Job> = {}): Job => ({
  number: 'J-101',
  name: 'Built-in',
  customer: 'A customer',
  note: '',
  units: 'inch',
  dueDate: '2026-12-18',
  paper: 'letter',
  language: 'en',
  openings: OPENINGS,
  styles: [aFrameStyle(), ...OTHER_STYLES],
  stock: STOCK,
  shop: aShop(),
  finish: [],
  hardware: [],
  defaults: [],
  ...changes,
});

/** A shop as it comes, but for the planner: it takes its first plan, since tests of other things need no better one. */
export const aShop = (): Shop => {
  const shop = shopDefaults('inch', 'letter');
  return { ...shop, planning: { ...shop.planning, seconds: 0 } };
};

/** A single door with overlays of 1/2 in, hinged on the left, in the plain style, at row 2 of Cabinets. */
export const anOpening = (changes: Partial<Opening> = {}): Opening => ({
  cabinet: 'B1',
  label: '',
  room: 'Kitchen',
  quantity: 1,
  kind: 'door',
  width: length('14 3/8'),
  height: length('30'),
  mounting: overlay('1/2'),
  hanging: { kind: 'single', hingeSide: 'left' },
  style: 'Plain',
  grid: aGrid(1, 1),
  faceFrame: FREE,
  pull: undefined,
  note: '',
  from: aSource('Cabinets', 2),
  ...changes,
});

/** 2 in members of 3/4 in maple, 3/8 in deep grooves, 1/2 in plywood rabbeted into them. */
export const aFrameStyle = (changes: Partial<FrameStyle> = {}): FrameStyle => ({
  build: 'frame',
  name: 'Plain',
  stileWidth: length('2'),
  topRail: length('2'),
  bottomRail: length('2'),
  middleRail: length('2'),
  middleStile: length('2'),
  frameThickness: length('3/4'),
  grooveDepth: length('3/8'),
  grooveWidth: length('1/4'),
  faceToGroove: length('1/4'),
  tongueLength: length('3/8'),
  horn: ZERO,
  edgeEasing: length('1/8'),
  frameStock: 'Maple 4/4',
  infill: { kind: 'plywood', stock: 'Maple ply 1/2', thickness: length('0.47') },
  from: aSource('Styles', 2),
  ...changes,
});

export const aSlabStyle = (changes: Partial<SlabStyle> = {}): SlabStyle => ({
  build: 'slab',
  name: 'Slab',
  thickness: length('23/32'),
  edgeEasing: length('1/16'),
  stock: 'Maple ply 3/4',
  from: aSource('Styles', 3),
  ...changes,
});

export const aBoardStock = (changes: Partial<Stock> = {}): Stock => ({
  name: 'Maple 4/4',
  kind: 'board',
  species: 'hard maple',
  thickness: length('1'),
  grain: 'length',
  density: undefined,
  sizes: [
    {
      width: length('6'),
      length: length('96'),
      onHand: 0,
      buy: true,
      price: undefined,
      defects: [],
      from: aSource('Stock', 2),
    },
  ],
  from: aSource('Stock', 2),
  ...changes,
});

export const aSheetStock = (changes: Partial<Stock> = {}): Stock => ({
  ...aBoardStock(),
  name: 'Maple ply 1/2',
  kind: 'sheet',
  thickness: length('0.47'),
  sizes: [
    {
      width: length('48'),
      length: length('96'),
      onHand: 0,
      buy: true,
      price: undefined,
      defects: [],
      from: aSource('Stock', 3),
    },
  ],
  from: aSource('Stock', 3),
  ...changes,
});

export const aGrid = (panelsHigh: number, panelsWide: number, ...middleRailHeights: readonly string[]): Grid => ({
  panelsHigh,
  panelsWide,
  middleRailHeights: middleRailHeights.map(length),
});

/** The same overlay on all sides, or left, right, top, bottom. */
export const overlay = (left: string, right = left, top = left, bottom = top): Mounting => ({
  kind: 'overlay',
  overlay: { left: length(left), right: length(right), top: length(top), bottom: length(bottom) },
});

export const inset = (left: string, right = left, top = left, bottom = top): Mounting => ({
  kind: 'inset',
  clearance: { left: length(left), right: length(right), top: length(top), bottom: length(bottom) },
});

/** An opening whose face frame the workbook does not describe. */
export const FREE: FaceFrame = {
  left: undefined,
  right: undefined,
  top: undefined,
  bottom: undefined,
  rightNeighbour: undefined,
  topNeighbour: undefined,
};

/** A row in which every field has a column of its own. */
export const aSource = (sheet: string, row: number): Source => ({ sheet, row, columns: COLUMNS[sheet] ?? {} });

const lettered = (fields: string): { readonly [field: string]: string } =>
  Object.fromEntries(fields.split(/\s+/).map((field, at) => [field, 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'.charAt(at)]));

/** The fields of each sheet, in the order of its columns. */
const COLUMNS: { readonly [sheet: string]: { readonly [field: string]: string } } = {
  Cabinets: lettered(
    `cabinet label room quantity kind width height mounting overlayLeft overlayRight overlayTop overlayBottom leaves
     hingeSide style panelsHigh panelsWide middleRailHeights frameLeft frameRight frameTop frameBottom rightNeighbour
     topNeighbour pull note`,
  ),
  Styles: lettered(
    `name build stileWidth topRail bottomRail middleRail middleStile frameThickness grooveDepth grooveWidth faceToGroove
     tongueLength horn frameStock panelStock panelKind panelThickness panelCut edgeEasing`,
  ),
  Stock: lettered('name kind species thickness width length onHand buy price pricedBy grain density defects'),
};

const OTHER_STYLES = [
  aSlabStyle(),
  aFrameStyle({
    name: 'Solid',
    frameThickness: length('13/16'),
    bottomRail: length('3'),
    infill: { kind: 'solid', stock: 'Cherry 4/4', thickness: length('1/2'), cut: 'flat-sawn' },
    from: aSource('Styles', 4),
  }),
  aFrameStyle({
    name: 'Glass',
    infill: { kind: 'glass', thickness: length('1/8') },
    from: aSource('Styles', 5),
  }),
];

const STOCK = [
  aBoardStock(),
  aSheetStock(),
  aSheetStock({ name: 'Maple ply 3/4', thickness: length('23/32'), from: aSource('Stock', 4) }),
  aBoardStock({ name: 'Cherry 4/4', species: 'black cherry', from: aSource('Stock', 5) }),
];

const fixed = { kind: 'fixed' } as const;
const pair = { kind: 'pair', gap: length('1/8') } as const;
const hungRight = { kind: 'single', hingeSide: 'right' } as const;

const OPENINGS: readonly Opening[] = [
  { cabinet: 'B1', quantity: 2 },
  { cabinet: 'B2', label: 'A', width: length('29 5/16'), hanging: pair },
  { cabinet: 'B2', label: 'Drawer', kind: 'drawer-front' as const, height: length('5'), style: 'Slab', hanging: fixed },
  { cabinet: 'B3', mounting: inset('3/32'), hanging: hungRight },
  { cabinet: 'B4', mounting: overlay('1/2', '1 1/4', '1/2', '3/4'), hanging: pair, width: length('33') },
  { cabinet: 'W1', style: 'Slab', hanging: hungRight, pull: 'bottom' as const },
  { cabinet: 'W2', style: 'Glass', height: length('36') },
  { cabinet: 'W3', style: 'Solid', height: length('36'), hanging: hungRight },
  { cabinet: 'P1', height: length('84'), grid: aGrid(3, 1, '30', '57') },
  { cabinet: 'P2', width: length('22'), height: length('40'), grid: aGrid(2, 2) },
  { cabinet: 'S1', kind: 'false-front' as const, height: length('6'), hanging: fixed },
  { cabinet: 'E1', kind: 'end-panel' as const, width: length('23'), mounting: overlay('0'), hanging: fixed },
].map((changes, at) => anOpening({ ...changes, from: aSource('Cabinets', at + 2) }));
