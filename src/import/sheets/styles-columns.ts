import type { Columns } from '../columns.ts';

export const BUILDS = { frame: ['frame and panel', 'five piece'], slab: ['flat', 'solid'] } as const;

export const PANEL_KINDS = {
  plywood: ['ply', 'sheet', 'mdf'],
  solid: ['wood', 'solid wood'],
  glass: ['glazed', 'pane'],
} as const;

export const PANEL_CUTS = {
  'flat-sawn': ['flat', 'plain', 'plain sawn'],
  'quarter-sawn': ['quarter', 'quartered', 'rift'],
} as const;

/** One row of Styles is one way of making a door. */
export const STYLES = {
  name: {
    name: 'Style',
    also: ['Name', 'Style name', 'Door style', 'Estilo'],
    explains: 'The name that Cabinets refers to.',
    needed: true,
  },
  build: {
    name: 'Build',
    also: ['Construction', 'Construcción'],
    explains: 'A frame with something in it, or a slab: one piece of sheet.',
    choices: Object.keys(BUILDS),
  },
  stileWidth: { name: 'Stile width', also: ['Stile', 'Stiles', 'S', 'Montante'], explains: 'Width of the two stiles.' },
  topRail: {
    name: 'Top rail',
    also: ['Top rail width', 'Rail', 'Rail width', 'Rails'],
    explains: 'Width of the top rail. Empty: as wide as the stiles.',
  },
  bottomRail: {
    name: 'Bottom rail',
    also: ['Bottom rail width'],
    explains: 'Width of the bottom rail. Empty: as wide as the top rail.',
  },
  middleRail: {
    name: 'Middle rail',
    also: ['Middle rail width', 'Mid rail'],
    explains: 'Width of middle rails. Empty: as wide as the top rail.',
  },
  middleStile: {
    name: 'Middle stile',
    also: ['Middle stile width', 'Mid stile'],
    explains: 'Width of middle stiles. Empty: as wide as the stiles.',
  },
  frameThickness: {
    name: 'Frame thickness',
    also: ['Thickness', 'Door thickness', 'F', 'Grosor'],
    explains: 'Finished thickness of the frame; of a slab, that of its sheet.',
  },
  grooveDepth: { name: 'Groove depth', also: ['D'], explains: 'Depth of the groove on the inside edges.' },
  grooveWidth: { name: 'Groove width', also: ['Groove', 'G'], explains: 'Width of that groove.' },
  faceToGroove: {
    name: 'Face to groove',
    also: ['Face to groove wall', 'L'],
    explains: 'From the show face to the groove’s front wall.',
  },
  tongueLength: {
    name: 'Tongue length',
    also: ['Tongue', 'Tenon', 'Tenon length', 'T'],
    explains: 'Of the stub tongue on a rail’s end. Empty: as long as the groove is deep, as matched bits cut it.',
  },
  horn: {
    name: 'Horn',
    also: ['Horns', 'Horn length'],
    explains: 'Left long on each end of a stile, and cut off after glue-up.',
  },
  frameStock: {
    name: 'Frame stock',
    also: ['Frame material', 'Stile stock', 'Frame wood'],
    explains: 'A board from Stock.',
  },
  panelStock: {
    name: 'Panel stock',
    also: ['Panel material', 'Panel wood', 'Slab stock'],
    explains: 'A sheet from Stock, for a plywood panel or a slab; a board for a solid panel.',
  },
  panelKind: {
    name: 'Panel kind',
    also: ['Panel', 'Panel type'],
    explains: 'What fills the frame.',
    choices: Object.keys(PANEL_KINDS),
  },
  panelThickness: {
    name: 'Panel thickness',
    also: ['Panel measured', 'Measured panel thickness'],
    explains: 'As measured. Empty: that of its stock; of a solid panel, flush with the frame’s back.',
  },
  panelCut: {
    name: 'Panel cut',
    also: ['Panel grain', 'Cut'],
    explains: 'How the boards of a solid panel were sawn; it moves by that.',
    choices: Object.keys(PANEL_CUTS),
  },
  edgeEasing: {
    name: 'Edge easing',
    also: ['Easing', 'Roundover', 'Edge'],
    explains: 'Radius to which the door’s edges are eased.',
  },
} as const satisfies Columns<string>;
