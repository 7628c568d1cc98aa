import type { Diagnosed, Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { Units } from '../../units/read-length.ts';
import { choice, count, name } from '../cells.ts';
import type { DefaultUsed, Hardware } from '../job.ts';
import { money } from '../quantities.ts';
import { textUsed } from '../standard.ts';
import { needed, optional, otherwise, readEntry, readTable } from '../table.ts';
import type { Sheet } from '../workbook.ts';
import { HARDWARE, PER, USES } from './hardware-columns.ts';

const READINGS = {
  item: needed(name),
  use: otherwise('other', choice(USES)),
  per: otherwise('door', choice(PER)),
  count: otherwise(1, count(1, 1000)),
  pack: otherwise(1, count(1, 10_000)),
  onHand: otherwise(0, count(0, 100_000)),
  price: optional(money),
};

export type HardwareRead = { readonly items: readonly Hardware[]; readonly defaults: readonly DefaultUsed[] };

/** The hardware in the order of its rows. A row that does not read is reported and left out. */
export function readHardware(sheet: Sheet, units: Units): Diagnosed<HardwareRead> {
  const table = readTable(sheet, HARDWARE, units);
  const diagnostics: Diagnostic[] = [...table.diagnostics];
  const items: Hardware[] = [];
  for (const entry of table.value) {
    const row = readEntry(entry, HARDWARE, READINGS);
    diagnostics.push(...row.diagnostics);
    if (row.value !== undefined) items.push({ ...row.value, from: entry.from });
  }
  // A sheet with nothing under its headings says as little as none.
  return { value: table.value.length === 0 ? STANDARD_HARDWARE : { items, defaults: [] }, diagnostics };
}

const usual = { count: 1, pack: 1, onHand: 0, price: undefined, from: { sheet: 'Hardware', row: 1, columns: {} } };

/** What a workbook without a Hardware sheet is taken to want. Common practice. */
export const STANDARD_HARDWARE: HardwareRead = {
  items: [
    { ...usual, item: 'Concealed hinge', use: 'hinge', per: 'hinge' },
    { ...usual, item: 'Pull', use: 'pull', per: 'pull' },
    { ...usual, item: 'Bumper', use: 'bumper', per: 'door', count: 2 },
  ],
  defaults: [textUsed('Hardware', HARDWARE.item.name, 'a hinge for each, a pull for each, 2 bumpers a door')],
};
