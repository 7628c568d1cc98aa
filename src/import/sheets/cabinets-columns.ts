import type { Columns } from '../columns.ts';

/** What the front of an opening is, and the other words for it. */
export const KINDS = {
  door: ['doors', 'pair', 'puerta'],
  'drawer front': ['drawer', 'drawers', 'frente de cajón', 'cajón'],
  'false front': ['false', 'dummy', 'fixed front', 'frente falso'],
  'end panel': ['end', 'applied panel', 'applied end panel', 'panel', 'panel lateral'],
} as const;

export const MOUNTINGS = {
  overlay: ['over', 'lay on', 'partial overlay', 'full overlay', 'superpuesta'],
  inset: ['in', 'flush', 'embutida'],
} as const;

export const LEAVES = {
  '1': ['one', 'single', 'una'],
  '2': ['two', 'pair', 'double', 'dos', 'par'],
} as const;

export const HINGE_SIDES = {
  left: ['l', 'lh', 'left hand', 'izquierda', 'izq', 'i'],
  right: ['r', 'rh', 'right hand', 'derecha', 'der', 'd'],
  pair: ['both', 'left and right', 'l and r', 'lr', 'par', 'ambos'],
  none: ['no', 'n/a', '-', 'ninguno'],
} as const;

export const PULLS = {
  top: ['upper', 'arriba'],
  bottom: ['lower', 'abajo'],
  middle: ['center', 'centre', 'medio', 'centro'],
  none: ['no', '-', 'ninguno'],
} as const;

/** The name of the blank workbook's example: a row that has it is not part of any job. */
export const EXAMPLE_CABINET = 'Example';

/** One row of Cabinets is one opening with its door, pair or other front. */
export const CABINETS = {
  cabinet: {
    name: 'Cabinet',
    also: ['Cab', 'Cabinet number', 'Cabinet no', 'Unit', 'Box', 'Gabinete'],
    explains: 'The cabinet’s name, as it stands on the plan. It becomes part of every code.',
    needed: true,
  },
  label: {
    name: 'Opening',
    also: ['Opening label', 'Label', 'Abertura'],
    explains: 'Tells the openings of one cabinet apart: A, B, D1. Empty where there is only one.',
  },
  room: {
    name: 'Room',
    also: ['Location', 'Area', 'Cuarto', 'Habitación'],
    explains: 'Where it hangs. Doors are hung and drawn by rooms.',
  },
  quantity: {
    name: 'Quantity',
    also: ['Qty', 'Count', 'How many', 'Pcs', 'Cantidad'],
    explains: 'How many openings are just like this one.',
  },
  kind: {
    name: 'Kind',
    also: ['Front', 'Type', 'Clase', 'Tipo'],
    explains: 'A door; or a front that hangs on nothing.',
    choices: Object.keys(KINDS),
  },
  width: {
    name: 'Opening width',
    also: ['W', 'Width', 'Opening W', 'Ancho', 'Ancho de abertura'],
    explains: 'Of the opening in the face frame, not of the door: 14 3/8, 14.375, 365 mm.',
    needed: true,
  },
  height: {
    name: 'Opening height',
    also: ['H', 'Height', 'Opening H', 'Alto', 'Alto de abertura'],
    explains: 'Of the opening in the face frame, not of the door.',
    needed: true,
  },
  mounting: {
    name: 'Mounting',
    also: ['Mount', 'Overlay or inset', 'Montaje'],
    explains: 'Over the face frame, or inside the opening.',
    choices: Object.keys(MOUNTINGS),
  },
  overlayLeft: {
    name: 'Overlay left',
    also: ['Left overlay', 'OL', 'Overlay L'],
    explains: 'Where it is another one than Overlay of the job.',
  },
  overlayRight: {
    name: 'Overlay right',
    also: ['Right overlay', 'OR', 'Overlay R'],
    explains: 'Where it is another one than Overlay of the job.',
  },
  overlayTop: {
    name: 'Overlay top',
    also: ['Top overlay', 'OT', 'Overlay T'],
    explains: 'Where it is another one than Overlay of the job.',
  },
  overlayBottom: {
    name: 'Overlay bottom',
    also: ['Bottom overlay', 'OB', 'Overlay B'],
    explains: 'Where it is another one than Overlay of the job.',
  },
  leaves: {
    name: 'Leaves',
    also: ['Leaf', 'Doors', 'Leaves in opening', 'Hojas'],
    explains: '1, or 2 for a pair.',
    choices: Object.keys(LEAVES),
  },
  hingeSide: {
    name: 'Hinge side',
    also: ['Hinge', 'Hinges', 'Hinged', 'Hand', 'Swing', 'Bisagras', 'Lado de bisagras'],
    explains: 'Seen from the front. A single leaf must have one; a pair has both.',
    choices: Object.keys(HINGE_SIDES),
  },
  style: { name: 'Style', also: ['Door style', 'Estilo'], explains: 'A name from Styles.' },
  panelsHigh: {
    name: 'Panels high',
    also: ['Panels tall', 'Panels down', 'Paneles de alto'],
    explains: 'Panels one above the other, with middle rails between them.',
  },
  panelsWide: {
    name: 'Panels wide',
    also: ['Panels across', 'Paneles de ancho'],
    explains: 'Panels side by side, with middle stiles between them.',
  },
  middleRailHeights: {
    name: 'Middle rail heights',
    also: ['Middle rail height', 'Mid rail heights', 'Mid rail height'],
    explains: 'Centres above the door’s bottom edge, from the bottom up: 30; 58. Empty for equal panels.',
  },
  frameLeft: {
    name: 'Frame left',
    also: ['Face frame left', 'Left frame'],
    explains: 'Width of the face frame’s member there, to check that doors and reveals fit on it.',
  },
  frameRight: {
    name: 'Frame right',
    also: ['Face frame right', 'Right frame'],
    explains: 'Width of the face frame’s member there.',
  },
  frameTop: {
    name: 'Frame top',
    also: ['Face frame top', 'Top frame'],
    explains: 'Width of the face frame’s member there.',
  },
  frameBottom: {
    name: 'Frame bottom',
    also: ['Face frame bottom', 'Bottom frame'],
    explains: 'Width of the face frame’s member there.',
  },
  rightNeighbour: {
    name: 'Right neighbour',
    also: ['Right neighbor', 'Neighbour right', 'Neighbor right'],
    explains: 'The opening that shares the member on the right: B2, or B2/A.',
  },
  topNeighbour: {
    name: 'Top neighbour',
    also: ['Top neighbor', 'Neighbour top', 'Neighbor top', 'Neighbour above'],
    explains: 'The opening that shares the member above: B2/D.',
  },
  pull: {
    name: 'Pull',
    also: ['Pull at', 'Pull end', 'Handle', 'Knob', 'Tirador'],
    explains: 'Which end of the door its pull is at. Empty: a door is not bored, a drawer front in its middle.',
    choices: Object.keys(PULLS),
  },
  note: {
    name: 'Note',
    also: ['Notes', 'Remark', 'Remarks', 'Comment', 'Comments', 'Nota', 'Notas'],
    explains: 'Printed with the door.',
  },
} as const satisfies Columns<string>;
