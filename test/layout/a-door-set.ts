import type {
  Door,
  DoorSet,
  Hinge,
  Joint,
  LengthWorking,
  Make,
  Part,
  Pull,
  Role,
} from '../../src/calculate/door-set.ts';
import { barcodeFor } from '../../src/codes/barcode.ts';
import type { DoorCode, PartCode } from '../../src/codes/codes.ts';
import { area } from '../../src/units/area.ts';
import { type Length, ZERO } from '../../src/units/length.ts';
import { kg } from '../../src/units/mass.ts';
import { aSource } from '../support/a-job.ts';
import { length } from '../support/length.ts';

/** A door that was worked out by hand: sizes as a cutting list has them, nothing calculated here. Invented. */
export type Sizes = {
  readonly code: string;
  readonly width: string;
  readonly height: string;
  readonly hinge?: 'left' | 'right';
  readonly hingesFromTop?: readonly string[];
  readonly parts: readonly (readonly [role: Role, length: string, width: string, make: Make, stock?: string])[];
  readonly joint?: Partial<Joint>;
  readonly changes?: Partial<Door>;
};

export function doorSetOf(...doors: readonly Sizes[]): DoorSet {
  return { doors: doors.map(doorOf), parts: doors.flatMap(partsOf) };
}

/** 14 3/8 × 30 opening with 1/2 in overlays: 15 3/8 × 31, 2 in members, rails 15 3/8 − 4 + 3/4 = 12 1/8. */
export const plainDoor = (changes: Partial<Sizes> = {}): Sizes => ({
  code: 'B1.1',
  width: '15 3/8',
  height: '31',
  hinge: 'left',
  hingesFromTop: ['3 1/2', '27 1/2'],
  parts: [
    ['stile-left', '31', '2', STILE],
    ['stile-right', '31', '2', STILE],
    ['rail-top', '12 1/8', '2', RAIL],
    ['rail-bottom', '12 1/8', '2', RAIL],
    ['panel', '27 11/16', '12 1/16', PLY, 'Maple ply 1/2'],
  ],
  ...changes,
});

/** 23 × 41, two by two panels: rails 23 − 4 + 3/4 = 19 3/4, middle stiles (41 − 6) / 2 + 3/4 = 18 1/4. */
export const gridDoor = (changes: Partial<Sizes> = {}): Sizes => ({
  code: 'P2.1',
  width: '23',
  height: '41',
  hinge: 'left',
  hingesFromTop: ['3 1/2', '20 1/2', '37 1/2'],
  parts: [
    ['stile-left', '41', '2', STILE],
    ['stile-right', '41', '2', STILE],
    ['rail-top', '19 3/4', '2', RAIL],
    ['rail-middle', '19 3/4', '2', MIDDLE_RAIL],
    ['rail-bottom', '19 3/4', '2', RAIL],
    ['stile-middle', '18 1/4', '2', MIDDLE_STILE],
    ['stile-middle', '18 1/4', '2', MIDDLE_STILE],
    ['panel', '18 3/16', '9 3/16', PLY, 'Maple ply 1/2'],
    ['panel', '18 3/16', '9 3/16', PLY, 'Maple ply 1/2'],
    ['panel', '18 3/16', '9 3/16', PLY, 'Maple ply 1/2'],
    ['panel', '18 3/16', '9 3/16', PLY, 'Maple ply 1/2'],
  ],
  ...changes,
});

/** The plain door with a panel of cherry, 12 in wide, glued up from four strips. */
export const solidDoor = (changes: Partial<Sizes> = {}): Sizes =>
  plainDoor({
    code: 'W3.1',
    parts: [...plainDoor().parts.slice(0, 4), ['panel', '27 11/16', '12', SOLID, 'Cherry 4/4']],
    joint: { infillKind: 'solid' },
    ...changes,
  });

export const glassDoor = (changes: Partial<Sizes> = {}): Sizes =>
  plainDoor({
    code: 'W2.1',
    parts: [...plainDoor().parts.slice(0, 4), ['glass', '27 5/8', '12', { kind: 'glass' }]],
    joint: { infillKind: 'glass' },
    ...changes,
  });

export const slabDoor = (changes: Partial<Sizes> = {}): Sizes => {
  const { width = '16', height = '6' } = changes;
  return {
    code: 'D1.1',
    width,
    height,
    parts: [['slab', height, width, { kind: 'slab' }, 'Maple ply 3/4']],
    ...changes,
  };
};

export const STILE: Make = { kind: 'stile', groovedEdges: 1, horn: ZERO };
export const RAIL: Make = { kind: 'rail', groovedEdges: 1 };
export const MIDDLE_RAIL: Make = { kind: 'rail', groovedEdges: 2 };
export const MIDDLE_STILE: Make = { kind: 'middle-stile', groovedEdges: 2 };
/** 0.47 in ply for a 1/4 in groove with 0.004 in of play: 0.47 − 0.25 + 0.004 = 0.224 deep, 0.246 left. */
export const PLY: Make = {
  kind: 'plywood-panel',
  rabbet: { depth: length('0.224'), width: length('3/8'), tongue: length('0.246') },
};
export const SOLID: Make = {
  kind: 'solid-panel',
  rabbet: { depth: length('0.254'), width: length('3/8'), tongue: length('0.246') },
  glueUp: { strips: 4, stripWidth: length('3 1/2'), blankLength: length('28 3/16'), blankWidth: length('12 1/2') },
  movement: {
    species: 'black cherry',
    cut: 'flat-sawn',
    made: 8,
    driest: 5,
    wettest: 12,
    shrinks: length('0.089'),
    swells: length('0.119'),
    engagement: length('1/8'),
    clearance: length('1/32'),
  },
};

export const JOINT: Joint = {
  frameThickness: length('3/4'),
  grooveDepth: length('3/8'),
  grooveWidth: length('1/4'),
  faceToGroove: length('1/4'),
  tongueLength: length('3/8'),
  stileWidth: length('2'),
  infillKind: 'plywood',
  infillThickness: length('0.47'),
  rabbet: undefined,
  backProjection: length('1/32'),
  edgeAllowance: length('1/32'),
};

function doorOf(sizes: Sizes): Door {
  const framed = sizes.parts.some(([role]) => role === 'stile-left');
  return {
    code: sizes.code as DoorCode,
    barcode: barcodeFor('J-101', sizes.code),
    cabinet: sizes.code.split('.')[0] ?? '',
    label: '',
    room: 'Kitchen',
    copy: 1,
    leaf: 'single',
    front: 'door',
    hingeSide: sizes.hinge,
    mounting: 'overlay',
    style: framed ? 'Plain' : 'Slab',
    build: framed ? 'frame' : 'slab',
    opening: { width: length(sizes.width), height: length(sizes.height) },
    width: known(length(sizes.width)),
    height: known(length(sizes.height)),
    thickness: length('3/4'),
    gaps: { left: ZERO, right: ZERO, top: ZERO, bottom: ZERO, between: undefined },
    diagonal: { length: length('34 5/8'), tolerance: length('1/16') },
    sights: [],
    joint: framed ? { ...JOINT, ...sizes.joint } : undefined,
    hinges: (sizes.hingesFromTop ?? []).map(aHinge),
    pull: undefined,
    mass: kg(3),
    finishArea: area(length('31'), length('31')),
    edgeEasing: length('1/8'),
    parts: sizes.parts.map(([role], at) => partCode(sizes.code, role, at)),
    workings: [],
    note: '',
    from: aSource('Cabinets', 2),
    ...sizes.changes,
  };
}

const partsOf = (sizes: Sizes): readonly Part[] =>
  sizes.parts.map(([role, long, wide, make, stock = 'Maple 4/4'], at) => {
    const code = partCode(sizes.code, role, at);
    const coped = make.kind === 'rail' || make.kind === 'middle-stile';
    return {
      code,
      barcode: barcodeFor('J-101', code),
      door: sizes.code as DoorCode,
      role,
      stock: make.kind === 'glass' ? undefined : stock,
      length: known(length(long)),
      width: known(length(wide)),
      thickness: make.kind === 'solid-panel' ? length('1/2') : (sizes.joint?.frameThickness ?? length('3/4')),
      shoulder: coped ? known((length(long) - length('3/4')) as Length) : undefined,
      place: { left: ZERO, bottom: ZERO, width: length(wide), height: length(long) },
      make,
      mass: kg(0.5),
      workings: [],
    };
  });

const partCode = (door: string, role: Role, at: number): PartCode => `${door}-${role.toUpperCase()}${at}` as PartCode;

const known = (value: Length): LengthWorking => ({
  kind: 'length',
  of: 'known',
  terms: [{ count: 1, symbol: 'x' }],
  given: { x: value },
  sharedBy: 1,
  roundedTo: undefined,
  rest: ZERO,
  value,
});

const aHinge = (fromTop: string): Hinge => ({
  fromTop: length(fromTop),
  fromEdge: length('21.5 mm'),
  cupDiameter: length('35 mm'),
  cupDepth: length('12.5 mm'),
  shifted: ZERO,
});

export const aPull = (end: Pull['end'], ...holes: readonly (readonly [left: string, bottom: string])[]): Pull => ({
  end,
  runs: 'upright',
  holes: holes.map(([left, bottom]) => ({ fromLeft: length(left), fromBottom: length(bottom) })),
  diameter: length('5 mm'),
});
