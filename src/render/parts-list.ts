import type { Part } from '../calculate/door-set.ts';
import type { Draft } from './draft.ts';

/** Rows below their headings; widths in figures. */
export type Table = {
  readonly title: string;
  readonly columns: readonly { readonly header: string; readonly width: number }[];
  readonly rows: readonly (readonly (string | number)[])[];
};

/** The parts as a table: a row for each piece, in the order of the doors. Lengths as they are printed and in millimetres. */
export const partsTable = (draft: Draft): Table => ({
  title: draft.say('parts.title'),
  columns: HEADS.map((head, index) => ({ header: draft.say(`parts.${head}`), width: WIDTHS[index] ?? 12 })),
  rows: partRows(draft),
});

/** As a text file that spreadsheets open: nothing in it runs as a formula, whatever a cabinet is called. */
export const csvOf = ({ columns, rows }: Table): string =>
  `\ufeff${[columns.map(({ header }) => header), ...rows].map(row => row.map(csvCell).join(',')).join('\r\n')}\r\n`;

function partRows(draft: Draft): Table['rows'] {
  const cutFrom = cutFromOf(draft);
  return draft.doorSet.parts.map(part => {
    const door = draft.doors.get(part.door);
    return [
      part.code,
      part.barcode,
      part.door,
      door?.cabinet ?? '',
      door?.room ?? '',
      draft.say(`role.${part.role}`),
      part.stock ?? '',
      draft.size(part.length.value),
      draft.size(part.width.value),
      draft.size(part.thickness),
      millimetres(part.length.value),
      millimetres(part.width.value),
      millimetres(part.thickness),
      cutFrom.get(part.code) ?? '',
    ];
  });
}

/** Which board or sheet each part comes from. */
function cutFromOf({ plan, blanks }: Draft): ReadonlyMap<Part['code'], string> {
  const from = new Map<Part['code'], string>();
  for (const bin of plan.cutPlans.flatMap(cutPlan => cutPlan.bins)) {
    for (const { blank } of bin.pieces) {
      for (const part of blanks.get(blank)?.parts ?? []) if (!from.has(part)) from.set(part, bin.code);
    }
  }
  return from;
}

const millimetres = (length: number): number => Math.round(length / 1000) / 1000;

/** A leading sign would make a spreadsheet take the words for a formula: an apostrophe says that they are words. */
function csvCell(value: string | number): string {
  if (typeof value === 'number') return `${value}`;
  const safe = /^[\s]*[=+\-@\u2212]|^[\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

const HEADS = [
  'code',
  'barcode',
  'door',
  'cabinet',
  'room',
  'role',
  'stock',
  'length',
  'width',
  'thickness',
  'length-mm',
  'width-mm',
  'thickness-mm',
  'cut-from',
] as const;
const WIDTHS: readonly number[] = [18, 14, 14, 12, 14, 14, 20, 11, 11, 11, 11, 11, 11, 12];
