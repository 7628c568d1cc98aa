import type { Columns } from '../columns.ts';

export const STEP_KINDS = {
  sand: ['sanding', 'lijar'],
  stain: ['tint', 'dye', 'tinte'],
  seal: ['sealer', 'sellador'],
  topcoat: ['top coat', 'top', 'finish', 'acabado'],
  wait: ['dry', 'cure', 'esperar'],
} as const;

/** One row of Finish is one step, in the order in which they are done. */
export const FINISH = {
  name: { name: 'Step', also: ['Name', 'Finish step', 'Paso'], explains: 'What the step is called.', needed: true },
  kind: {
    name: 'Kind',
    also: ['Type', 'Clase'],
    explains: 'What is done.',
    choices: Object.keys(STEP_KINDS),
    needed: true,
  },
  mix: { name: 'Mix', also: ['Ratio', 'Parts', 'Mezcla'], explains: 'In parts: 2:1. Empty where nothing is mixed.' },
  components: {
    name: 'Components',
    also: ['Component', 'Product', 'Products', 'Componentes'],
    explains: 'What is mixed, in the order of Mix: stain base; clear base.',
  },
  additive: { name: 'Additive', also: ['Additive name', 'Aditivo'], explains: 'What is added to the mix.' },
  additivePercent: {
    name: 'Additive %',
    also: ['Additive percent', 'Aditivo %'],
    explains: 'How much of it, in percent of the mix.',
  },
  coats: { name: 'Coats', also: ['Number of coats', 'Manos', 'Capas'], explains: 'How many coats, alike.' },
  spreadRate: {
    name: 'Spread rate',
    also: ['Coverage', 'Spread', 'Rendimiento'],
    explains: 'What one coat covers, from the can’s label: 350 ft²/gal, 9 m²/l.',
  },
  transfer: {
    name: 'Transfer',
    also: ['Transfer efficiency', 'Transferencia'],
    explains:
      'Percent that stays on the door. Empty: 100 for stain, which is wiped; Spray transfer of Shop for the rest.',
  },
  grit: { name: 'Grit', also: ['Abrasive', 'Sandpaper', 'Grano'], explains: 'Of the abrasive.' },
  wait: {
    name: 'Wait hours',
    also: ['Wait', 'Dry time', 'Recoat', 'Espera'],
    explains: 'After each coat, until the next: 2, 90 min, 1 day.',
  },
  price: { name: 'Price', also: ['Price per litre', 'Cost', 'Precio'], explains: 'What it costs: 52/gal, 14/l.' },
} as const satisfies Columns<string>;
