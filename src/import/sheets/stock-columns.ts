import type { Columns } from '../columns.ts';

export const STOCK_KINDS = {
  board: ['boards', 'lumber', 'solid', 'tabla'],
  sheet: ['sheets', 'plywood', 'panel', 'tablero'],
} as const;

export const PRICED_BY = {
  'board foot': ['bf', 'bd ft', 'board feet', 'foot'],
  sheet: ['sheets'],
  piece: ['each', 'board', 'pc'],
} as const;

export const GRAINS = { length: ['long', 'lengthwise', 'yes', 'along'], none: ['no', 'any', 'free'] } as const;

/** One row of Stock is one size of a board or sheet. Rows of one name are sizes of one stock. */
export const STOCK = {
  name: {
    name: 'Stock',
    also: ['Name', 'Material', 'Stock name'],
    explains: 'The name that Styles refers to. Rows of one name are sizes of one stock.',
    needed: true,
  },
  kind: {
    name: 'Kind',
    also: ['Type', 'Board or sheet'],
    explains: 'Solid wood, or a sheet.',
    choices: Object.keys(STOCK_KINDS),
    needed: true,
  },
  species: {
    name: 'Species',
    also: ['Wood', 'Especie'],
    explains: 'For its mass and its movement: hard maple, red oak. Empty: taken from the name.',
  },
  thickness: {
    name: 'Thickness',
    also: ['T', 'Thick', 'Grosor', 'Espesor'],
    explains: 'As bought for boards: 4/4. As measured for sheets: 0.47.',
    needed: true,
  },
  width: { name: 'Width', also: ['W', 'Ancho'], explains: 'Across the grain.' },
  length: { name: 'Length', also: ['L', 'Largo'], explains: 'Along the grain.' },
  onHand: {
    name: 'On hand',
    also: ['In stock', 'Have', 'Pieces', 'Qty', 'Quantity', 'Existencia'],
    explains: 'How many of this size lie in the rack. They are used first.',
  },
  buy: {
    name: 'Buy',
    also: ['Can buy', 'Can be bought', 'Comprar'],
    explains: 'Whether more can be bought.',
    choices: ['yes', 'no'],
  },
  price: { name: 'Price', also: ['Cost', 'Precio'], explains: 'Of one of what Priced by says.' },
  pricedBy: {
    name: 'Priced by',
    also: ['Price per', 'Per', 'Price unit'],
    explains: 'What the price is for. Empty: a board foot of boards, a whole sheet.',
    choices: Object.keys(PRICED_BY),
  },
  grain: {
    name: 'Grain',
    also: ['Grain direction', 'Veta'],
    explains: 'Of a sheet: along its length, or none, so that pieces may be turned.',
    choices: Object.keys(GRAINS),
  },
  density: {
    name: 'Density',
    also: ['Density kg/m3', 'Densidad'],
    explains: 'In kg/m³, or with its unit: 44 lb/ft³. Empty: taken from the species.',
  },
  defects: {
    name: 'Defects',
    also: ['Knots', 'Defect', 'Defectos'],
    explains: 'Knots and splits to cut around, from one end: 12-16; 40-43.',
  },
} as const satisfies Columns<string>;
