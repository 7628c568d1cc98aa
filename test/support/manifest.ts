import { barcodeFor } from '../../src/codes/barcode.ts';
import type { Manifest } from '../../src/render/packet.ts';
import { printLength } from '../../src/units/print-length.ts';
import { length as read } from './length.ts';

/** A job as a station reads it, drawn small: doors of two stiles, two rails and a panel. Invented. */
export type SmallJob = {
  readonly number?: string;
  readonly name?: string;
  readonly revision?: string;
  readonly language?: 'en' | 'es';
  /** One door for each cabinet named. */
  readonly cabinets?: readonly string[];
  /** Height of every door: what a revision changes. */
  readonly height?: string;
  readonly customer?: string;
};

export function aManifest(job: SmallJob = {}): Manifest {
  const number = job.number ?? 'K7';
  const doors = (job.cabinets ?? ['B1', 'B2', 'B3', 'B4']).map(cabinet => door(number, cabinet, job.height ?? '30'));
  const parts = doors.flatMap(each => partsOf(number, each, job.height ?? '30'));
  return {
    schemaVersion: 1,
    program: 'stilebook test',
    job: {
      number,
      name: job.name ?? 'Harbour Street kitchen',
      customer: job.customer ?? '',
      revision: job.revision ?? 'A',
      units: 'inch',
      language: job.language ?? 'en',
      dueDate: null,
      inputHash: 'none',
    },
    doors,
    parts,
    operations: OPERATIONS.map(row => operation(number, row, parts, doors)),
    cutPlans: [
      {
        stock: 'Maple plywood',
        kind: 'sheet',
        bins: 1,
        bound: 1,
        offcuts: [
          { code: 'OFF-1', barcode: barcodeFor(number, 'OFF-1'), length: length('60'), width: length('20') },
          { code: 'OFF-2', barcode: barcodeFor(number, 'OFF-2'), length: length('32'), width: length('14') },
          { code: 'OFF-3', barcode: barcodeFor(number, 'OFF-3'), length: length('28'), width: length('9') },
          { code: 'OFF-4', barcode: barcodeFor(number, 'OFF-4'), length: length('9'), width: length('28') },
        ],
      },
    ],
    batches: [
      { number: 1, doors: doors.slice(0, 2).map(each => each.code) },
      { number: 2, doors: doors.slice(2).map(each => each.code) },
    ].filter(batch => batch.doors.length > 0),
    schedule: scheduleOf(doors.map(each => each.code)),
    shopping: [],
    diagnostics: [],
  };
}

const length = (text: string) => {
  const value = read(text);
  return { nm: value, text: printLength(value, { units: 'inch', increment: read('1/64') }) };
};

function door(number: string, cabinet: string, height: string): Manifest['doors'][number] {
  const code = `${cabinet}.A.1L`;
  return {
    code,
    barcode: barcodeFor(number, code),
    cabinet,
    label: 'A',
    room: 'Kitchen',
    copy: 1,
    leaf: 'single',
    front: 'door',
    hand: 'left',
    mounting: 'overlay',
    style: 'Plain',
    width: length('15 3/8'),
    height: length(height),
    thickness: length('3/4'),
    massKg: 4.2,
    hinges: [],
    gaps: { left: length('0'), right: length('0'), top: length('0'), bottom: length('0'), between: null },
    route: OPERATIONS.filter(row => row.on === 'door').map(row => row.id),
  };
}

function partsOf(number: string, { code: doorCode }: Manifest['doors'][number], height: string): Manifest['parts'] {
  const rows = [
    ['SL', 'stile-left', 'left stile', 'stile', height, '2'],
    ['SR', 'stile-right', 'right stile', 'stile', height, '2'],
    ['RT', 'rail-top', 'top rail', 'rail', '12 1/8', '2'],
    ['RB', 'rail-bottom', 'bottom rail', 'rail', '12 1/8', '2'],
    ['P1', 'panel', 'panel', 'panel', '26 5/8', '12'],
  ] as const;
  return rows.map(([suffix, role, name, on, long, wide]) => {
    const code = `${doorCode}-${suffix}`;
    return {
      code,
      barcode: barcodeFor(number, code),
      door: doorCode,
      role,
      name,
      stock: on === 'panel' ? 'Maple plywood' : 'Maple 4/4',
      length: length(long),
      width: length(wide),
      thickness: length(on === 'panel' ? '1/2' : '3/4'),
      route: OPERATIONS.filter(row => row.on === on || (row.on === 'frame' && on !== 'panel')).map(row => row.id),
      cutFrom: null,
      rough: on === 'panel' ? { length: length('27'), width: length('12 1/4') } : null,
    };
  });
}

type Row = {
  readonly id: string;
  readonly name: string;
  readonly station: string;
  readonly on: 'frame' | 'stile' | 'rail' | 'panel' | 'door';
  readonly minutes: number;
  readonly wait?: number;
  readonly facing?: string;
};

const OPERATIONS: readonly Row[] = [
  { id: 'crosscut-rough', name: 'Crosscut to rough length', station: 'saw', on: 'frame', minutes: 1 },
  { id: 'rip-rough', name: 'Rip to rough width', station: 'saw', on: 'frame', minutes: 1 },
  { id: 'rest', name: 'Rest', station: 'rack', on: 'frame', minutes: 0, wait: 2880 },
  { id: 'joint-edge', name: 'Joint one edge', station: 'jointer', on: 'frame', minutes: 1 },
  { id: 'cut-length', name: 'Cut to length', station: 'saw', on: 'frame', minutes: 1, facing: 'Tag up' },
  {
    id: 'groove',
    name: 'Groove the inside edge',
    station: 'router',
    on: 'frame',
    minutes: 2,
    facing: 'Tag up, inside edge to the bit',
  },
  { id: 'cope', name: 'Cope the rail ends', station: 'router', on: 'rail', minutes: 2, facing: 'Tag down' },
  { id: 'cut-panel', name: 'Cut panels to size', station: 'saw', on: 'panel', minutes: 3 },
  { id: 'rabbet-panel', name: 'Rabbet the back', station: 'router', on: 'panel', minutes: 2 },
  { id: 'dry-fit', name: 'Dry fit', station: 'bench', on: 'door', minutes: 4 },
  { id: 'glue-up', name: 'Glue up', station: 'clamps', on: 'door', minutes: 10 },
  { id: 'cure', name: 'Cure', station: 'clamps', on: 'door', minutes: 0, wait: 120 },
  { id: 'flush-sand', name: 'Flush sand', station: 'sander', on: 'door', minutes: 6 },
  { id: 'hang', name: 'Hang', station: 'site', on: 'door', minutes: 8 },
];

/** An operation a day, all doors at once, from a Monday on. */
const scheduleOf = (doors: readonly string[]): Manifest['schedule'] => {
  const at = (day: number) => ({ day, date: null });
  const work = OPERATIONS.filter(row => row.minutes > 0);
  return {
    limits: { people: 1, clamps: 12, sprayPlaces: 4, rackSlots: 20 },
    hours: { startsAt: '08:00', hoursPerDay: 8, weekdays: [1, 2, 3, 4, 5], daysOff: ['2026-03-17'] },
    ends: { day: work.length - 1, date: '2026-03-20' },
    tasks: work.map((row, day) => ({
      id: row.id,
      operation: row.id,
      doors,
      people: 1,
      helperAlone: false,
      takes: { clamps: 0, sprayPlaces: 0, rackSlots: 0 },
      work: 8 * 3600,
      wait: 0,
      after: work.slice(Math.max(0, day - 1), day).map(before => before.id),
      starts: at(day),
      ends: at(day),
    })),
  };
};

const STATION_NAMES: { readonly [station: string]: string } = {
  saw: 'Table saw',
  rack: 'Rack',
  jointer: 'Jointer',
  router: 'Router table',
  bench: 'Bench',
  clamps: 'Clamps',
  sander: 'Sander',
  site: 'On site',
};

function operation(
  number: string,
  row: Row,
  parts: Manifest['parts'],
  doors: Manifest['doors'],
): Manifest['operations'][number] {
  const pieces = [...parts, ...doors].filter(each => each.route.includes(row.id)).map(each => each.code);
  const code = `${row.id}-1`;
  return {
    id: row.id,
    name: row.name,
    station: row.station,
    stationName: STATION_NAMES[row.station] ?? row.station,
    minutes: { setup: row.minutes === 0 ? 0 : 5, pieces: row.minutes * pieces.length },
    waitMinutes: row.wait ?? 0,
    reminders: [{ id: 'general', text: 'Local rules and the machine’s manual come first.', pieces: [] }],
    setups: [
      {
        code,
        barcode: barcodeFor(number, code),
        facing: row.facing ?? '',
        settings: [{ of: 'fence', name: 'Fence', value: length('2 1/4'), sets: 'fence' }],
        pieces,
        reminders: [
          {
            id: 'push-block',
            text: 'Push block: the fence is closer than 6 in to the blade.',
            pieces: pieces.slice(0, 2),
          },
        ],
      },
    ],
  };
}
