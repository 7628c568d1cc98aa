import { OPERATION_MINUTES } from '../trade/minutes.ts';
import { shopDefaults } from '../trade/shop-defaults.ts';
import type { Length } from '../units/length.ts';
import type { Units } from '../units/read-length.ts';
import type { Columns } from './columns.ts';
import type { SettingValue } from './job.ts';
import { READ_ME } from './own-sheets.ts';
import type { Setting } from './setting.ts';
import { CABINETS, EXAMPLE_CABINET } from './sheets/cabinets-columns.ts';
import { FINISH } from './sheets/finish-columns.ts';
import { HARDWARE } from './sheets/hardware-columns.ts';
import { JOB_FACTS } from './sheets/job.ts';
import { MINUTES_SETTINGS, SETTINGS } from './sheets/shop.ts';
import { STOCK } from './sheets/stock-columns.ts';
import { STYLES } from './sheets/styles-columns.ts';
import { standardStyle } from './standard.ts';
import { writtenLength } from './written-length.ts';

/** A sheet of the blank workbook, before any library draws it. */
export type BlankSheet = {
  readonly name: string;
  readonly columns: readonly BlankColumn[];
  /** Lines above the headings: what an empty cell means. */
  readonly above: readonly (readonly string[])[];
  readonly rows: readonly (readonly string[])[];
};

export type BlankColumn = {
  readonly name: string;
  readonly explains: string;
  readonly width: number;
  /** What may be chosen from, as a spreadsheet's formula. */
  readonly list?: string;
  readonly isGrey?: true;
};

/** The sheets of a blank workbook in their order. */
export const blankSheets = (units: Units): readonly BlankSheet[] => [
  readMe(units),
  tableSheet('Cabinets', CABINETS, usualOpening(units), [EXAMPLE[units]], { style: 'Styles!$A$3:$A$60' }),
  jobSheet(units),
  tableSheet('Styles', STYLES, usualStyle(units), [], { frameStock: STOCK_NAMES, panelStock: STOCK_NAMES }),
  tableSheet('Stock', STOCK, { width: 'Shop', length: 'Shop', onHand: '0', buy: 'yes', grain: 'length' }, [], {}),
  shopSheet(units),
  tableSheet('Finish', FINISH, { coats: '1', transfer: 'Shop' }, [], {}),
  tableSheet('Hardware', HARDWARE, { use: 'other', per: 'door', count: '1', pack: '1', onHand: '0' }, [], {}),
];

const STOCK_NAMES = 'Stock!$A$3:$A$60';

type Cells<Field extends string> = { readonly [F in Field]?: string };

const EXAMPLE: { readonly [U in Units]: Cells<keyof typeof CABINETS> } = {
  inch: {
    cabinet: EXAMPLE_CABINET,
    label: 'A',
    room: 'Kitchen',
    width: '14 3/8',
    height: '30',
    hingeSide: 'left',
    note: 'Not counted.',
  },
  mm: {
    cabinet: EXAMPLE_CABINET,
    label: 'A',
    room: 'Kitchen',
    width: '365',
    height: '762',
    hingeSide: 'left',
    note: 'Not counted.',
  },
};

function tableSheet<Field extends string>(
  name: string,
  columns: Columns<Field>,
  usual: Cells<Field>,
  rows: readonly Cells<Field>[],
  lists: Cells<Field>,
): BlankSheet {
  const fields = Object.keys(columns) as Field[];
  const line = (cells: Cells<Field>) => fields.map(field => cells[field] ?? '');
  const [, ...rest] = line(usual);
  return {
    name,
    columns: fields.map(field => ({ ...columnOf(columns[field]), ...listOf(lists[field]) })),
    above: [['Left empty:', ...rest]],
    rows: rows.map(line),
  };
}

const columnOf = ({ name, explains, choices }: Columns<string>[string]): BlankColumn => ({
  name,
  explains,
  // Headings break between their words, so that a whole row fits a sheet of paper.
  width: name === 'Note' ? 24 : Math.max(9, ...name.split(' ').map(word => word.length + 2)),
  ...(choices === undefined ? {} : listOf(`"${choices.join(',')}"`)),
});

const listOf = (list: string | undefined): { readonly list?: string } => (list === undefined ? {} : { list });

function usualOpening(units: Units): Cells<keyof typeof CABINETS> {
  const overlay = writtenLength(shopDefaults(units, 'letter').doors.overlay, units);
  return {
    ...{ quantity: '1', kind: 'door', mounting: 'overlay', leaves: '1', panelsHigh: '1', panelsWide: '1' },
    ...{ overlayLeft: overlay, overlayRight: overlay, overlayTop: overlay, overlayBottom: overlay },
  };
}

function usualStyle(units: Units): Cells<keyof typeof STYLES> {
  const standard = standardStyle(units);
  const text = (length: Length) => writtenLength(length, units);
  const width = text(standard.stileWidth);
  return {
    ...{ build: 'frame', panelKind: 'plywood', panelCut: 'flat-sawn', tongueLength: text(standard.grooveDepth) },
    ...{ stileWidth: width, topRail: width, bottomRail: width, middleRail: width, middleStile: width },
    frameThickness: text(standard.frameThickness),
    grooveDepth: text(standard.grooveDepth),
    grooveWidth: text(standard.grooveWidth),
    faceToGroove: text(standard.faceToGroove),
    horn: text(standard.horn),
    edgeEasing: text(shopDefaults(units, 'letter').panels.edgeEasing),
  };
}

const FACT_COLUMNS: readonly BlankColumn[] = [
  { name: 'Name', explains: '', width: 26 },
  { name: 'Value', explains: 'Fill in what is other than usual.', width: 24 },
  { name: 'Left empty', explains: '', width: 24, isGrey: true },
  { name: 'Written like', explains: '', width: 28, isGrey: true },
  { name: 'What it is', explains: '', width: 84, isGrey: true },
];

/** The job's own facts; its units are filled in, because all lengths hang on them. */
function jobSheet(units: Units): BlankSheet {
  const usual: { readonly [name: string]: string } = {
    number: 'the file’s name',
    paper: units === 'inch' ? 'letter' : 'A4',
    language: 'en',
  };
  const written: { readonly [name: string]: string } = {
    units: 'inch, mm',
    paper: 'letter, A4',
    language: 'en, es',
    dueDate: '2026-03-31',
  };
  const facts = Object.entries(JOB_FACTS).map(([key, { name, explains }]) => [
    name,
    key === 'units' ? units : '',
    usual[key] ?? '',
    written[key] ?? '',
    explains,
  ]);
  const doors = SETTINGS.filter(({ name }) => OF_THE_JOB.includes(name)).map(setting => settingRow(setting, units));
  return { name: 'Job', columns: FACT_COLUMNS, above: [], rows: [...facts, ...doors] };
}

/** Settings of the shop that often change from job to job. Each may stand in Job, and there it holds for that job. */
const OF_THE_JOB: readonly string[] = ['Overlay', 'Pair gap', 'Inset clearance'];

function shopSheet(units: Units): BlankSheet {
  const settings = [...SETTINGS, ...MINUTES_SETTINGS];
  return { name: 'Shop', columns: FACT_COLUMNS, above: [], rows: settings.map(setting => settingRow(setting, units)) };
}

function settingRow(setting: Setting, units: Units): readonly string[] {
  const value = setting.value(USUAL[units]);
  return [setting.name, '', value === undefined ? '' : valueText(value, units), setting.form, setting.explains];
}

/** Minutes of an operation are the trade's own until the workbook sets them. */
const USUAL = {
  inch: withMinutes('inch'),
  mm: withMinutes('mm'),
};

function withMinutes(units: Units) {
  const shop = shopDefaults(units, units === 'inch' ? 'letter' : 'A4');
  return { ...shop, work: { ...shop.work, minutes: OPERATION_MINUTES } };
}

const valueText = (value: SettingValue, units: Units): string =>
  value.kind === 'length' ? writtenLength(value.length, units) : value.text;

/** Tells a person who has never seen the workbook what to do with it. */
const readMe = (units: Units): BlankSheet => ({
  name: READ_ME,
  columns: [{ name: 'How to fill in this workbook', explains: '', width: 90 }],
  above: [],
  rows: [
    'Fill in Cabinets: one row for each opening, with the size of the opening and not of the door.',
    `Lengths are in ${units === 'inch' ? 'inches: 14 3/8, 14.375 or 365 mm' : 'millimetres: 365, 36.5 cm or 14 3/8"'}.`,
    'Everything else may stay empty. What is taken then stands in grey, and the packet prints it.',
    'Point at a heading to read what its column is for.',
    'Job: the job’s number, name and customer. Shop: your saw, router, bits, people and hours.',
    'Styles and Stock: how doors are made, and of what. Empty: a plain frame of hard maple with a plywood panel.',
    'Finish and Hardware: what is brushed, sprayed and screwed on.',
    'The row Example in Cabinets is not counted.',
    'Save the file, and drop it in the shop’s folder.',
  ].map(line => [line]),
});
