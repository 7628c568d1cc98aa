import type { Columns } from '../columns.ts';

export const USES = {
  hinge: ['hinges', 'bisagra'],
  pull: ['pulls', 'knob', 'handle', 'tirador'],
  bumper: ['bumpers', 'tope'],
  screw: ['screws', 'tornillo'],
  other: ['otro'],
} as const;

export const PER = {
  door: ['leaf', 'each door', 'puerta'],
  hinge: ['each hinge', 'bisagra'],
  pull: ['each pull', 'tirador'],
  job: ['trabajo'],
} as const;

/** One row of Hardware is one item to buy. */
export const HARDWARE = {
  item: {
    name: 'Item',
    also: ['Hardware', 'Name', 'Description', 'Artículo'],
    explains: 'What it is called.',
    needed: true,
  },
  use: { name: 'Use', also: ['Kind', 'Type', 'Uso'], explains: 'What it is for.', choices: Object.keys(USES) },
  per: {
    name: 'Per',
    also: ['For each', 'Each', 'Por'],
    explains: 'What each of them needs it.',
    choices: Object.keys(PER),
  },
  count: { name: 'Count', also: ['Quantity', 'Qty', 'How many', 'Cantidad'], explains: 'How many for each.' },
  pack: { name: 'Pack', also: ['Pack size', 'In a pack', 'Paquete'], explains: 'How many come in a pack.' },
  onHand: { name: 'On hand', also: ['In stock', 'Have', 'Existencia'], explains: 'How many are there already.' },
  price: { name: 'Price', also: ['Cost', 'Pack price', 'Precio'], explains: 'Of a pack.' },
} as const satisfies Columns<string>;
