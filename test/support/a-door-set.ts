import type { Door, DoorSet, LengthWorking, Part } from '../../src/calculate/door-set.ts';
import type { Barcode, DoorCode, PartCode } from '../../src/codes/codes.ts';
import { area } from '../../src/units/area.ts';
import { kg } from '../../src/units/mass.ts';
import { aSource } from './a-job.ts';
import { length } from './length.ts';

/** A length that needed no working. */
export const given = (of: string, text: string): LengthWorking => ({
  kind: 'length',
  of,
  terms: [],
  given: {},
  sharedBy: 1,
  roundedTo: undefined,
  rest: length('0'),
  value: length(text),
});

/** A plain door of 15 × 30 in, for tests of what comes after the calculation. Invented; what counts goes into `changes`. */
export const aDoor = (code: string, changes: Partial<Door> = {}): Door => ({
  code: code as DoorCode,
  barcode: `0${code}` as Barcode,
  cabinet: code,
  label: '',
  room: 'Kitchen',
  copy: 1,
  leaf: 'single',
  front: 'door',
  hingeSide: 'left',
  mounting: 'overlay',
  style: 'Plain',
  build: 'frame',
  opening: { width: length('14'), height: length('29') },
  width: given('W', '15'),
  height: given('H', '30'),
  thickness: length('3/4'),
  gaps: { left: length('1/2'), right: length('1/2'), top: length('1/2'), bottom: length('1/2'), between: undefined },
  diagonal: { length: length('33.5'), tolerance: length('1/16') },
  sights: [],
  joint: {
    frameThickness: length('3/4'),
    grooveDepth: length('3/8'),
    grooveWidth: length('1/4'),
    faceToGroove: length('1/4'),
    tongueLength: length('3/8'),
    stileWidth: length('2'),
    infillKind: 'plywood',
    infillThickness: length('0.47'),
    rabbet: undefined,
    backProjection: length('0'),
    edgeAllowance: length('1/32'),
  },
  hinges: [aHinge('3 1/2'), aHinge('26 1/2')],
  pull: undefined,
  mass: kg(3),
  finishArea: squareFeet(10),
  edgeEasing: length('1/8'),
  parts: [],
  workings: [],
  note: '',
  from: aSource('Cabinets', 2),
  ...changes,
});

export const aPart = (code: string, changes: Partial<Part> = {}): Part => ({
  code: code as PartCode,
  barcode: `0${code}` as Barcode,
  door: (code.split('-')[0] ?? code) as DoorCode,
  role: 'rail-top',
  stock: 'Maple 4/4',
  length: given('rail', '11 3/4'),
  width: given('rail width', '2'),
  thickness: length('3/4'),
  shoulder: given('shoulder', '11'),
  place: { left: length('2'), bottom: length('0'), width: length('11'), height: length('2') },
  make: { kind: 'rail', groovedEdges: 1 },
  mass: kg(0.2),
  workings: [],
  ...changes,
});

export const aDoorSet = (doors: readonly Door[], parts: readonly Part[] = []): DoorSet => ({ doors, parts });

export const squareFeet = (count: number) => (count * area(length('12'), length('12'))) as Door['finishArea'];

const aHinge = (fromTop: string): Door['hinges'][number] => ({
  fromTop: length(fromTop),
  fromEdge: length('21.5 mm'),
  cupDiameter: length('35 mm'),
  cupDepth: length('12.5 mm'),
  shifted: length('0'),
});
