import { type Diagnosed, type Diagnostic, problem } from '../../diagnostics/diagnostic.ts';
import { cellOf } from '../../diagnostics/place.ts';
import type { Shop } from '../../trade/shop.ts';
import { type Area, squareFeet } from '../../units/area.ts';
import { duration } from '../../units/duration.ts';
import { litres, US_GALLON } from '../../units/mass.ts';
import type { Units } from '../../units/read-length.ts';
import { choice, complain, count, isComplaint, name, number, percent, type Reader, text, writtenIn } from '../cells.ts';
import type { DefaultUsed, FinishStep } from '../job.ts';
import { hoursLong, pricePerVolume } from '../quantities.ts';
import { textUsed } from '../standard.ts';
import { type Entry, needed, optional, otherwise, type ReadRow, readEntry, readTable } from '../table.ts';
import type { Sheet } from '../workbook.ts';
import { FINISH, STEP_KINDS } from './finish-columns.ts';

/** 1 ft²/gal in m²/l. */
const PER_GALLON = 1 / squareFeet(1 as Area) / litres(US_GALLON);

/** `350 ft2/gal` or `9 m2/l`; a bare number is the one or the other as the workbook measures. Kept in m²/l. */
const spreadRate: Reader<number> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const [, figure = '', unit = ''] = SPREAD.exec(written) ?? [];
  const isMetric = unit === '' ? cell.units === 'mm' : unit.toLowerCase().startsWith('m');
  const value = Number(figure) * (isMetric ? 1 : PER_GALLON);
  return value > 0.1 && value < 100
    ? value
    : complain('form-unreadable', { typed: written, form: '350 ft²/gal, or 9 m²/l' });
};
const SPREAD =
  /^(\d+\.?\d*)\s*((?:sq\.? ?ft|ft[²2])\s*(?:\/|per)\s*gal(?:lon)?|m[²2]\s*(?:\/|per)\s*l(?:itre|iter)?)?\.?$/i;

/** `2:1`, in parts; 1 where nothing is mixed. */
const mix: Reader<readonly number[]> = cell => {
  // A spreadsheet takes 2:1 for one minute past two, and the reader of files hands it on as 02:01.
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const parts = written.split(':').map(part => Number(part.trim() || Number.NaN));
  return parts.length <= 6 && parts.every(part => part > 0 && part <= 1000)
    ? parts
    : complain('form-unreadable', { typed: written, form: '2:1' });
};

const components: Reader<readonly string[]> = cell => {
  const written = text(400)(cell);
  return isComplaint(written)
    ? written
    : written
        .split(/[;,:+]/)
        .map(each => each.trim())
        .filter(each => each !== '');
};

const READINGS = {
  name: needed(name),
  kind: needed(choice(STEP_KINDS)),
  mix: optional(mix),
  components: optional(components),
  additive: optional(name),
  additivePercent: otherwise(0, percent(100)),
  coats: otherwise(1, count(1, 20)),
  spreadRate: optional(spreadRate),
  transfer: optional(percent(100)),
  grit: optional(number(20, 5000)),
  wait: otherwise(duration(0), hoursLong),
  price: optional(pricePerVolume),
};

type Row = ReadRow<typeof READINGS>;
type FinishEntry = Entry<keyof typeof FINISH>;
export type FinishRead = { readonly steps: readonly FinishStep[]; readonly defaults: readonly DefaultUsed[] };

/** The steps of the finish in the order of their rows. A row that does not read is reported and left out. */
export function readFinish(sheet: Sheet, shop: Shop, units: Units): Diagnosed<FinishRead> {
  const table = readTable(sheet, FINISH, units);
  const diagnostics: Diagnostic[] = [...table.diagnostics];
  const steps: FinishStep[] = [];
  const defaults: DefaultUsed[] = [];
  for (const entry of table.value) {
    const row = readEntry(entry, FINISH, READINGS);
    diagnostics.push(...row.diagnostics);
    const mixed = row.value && mixOf(row.value, entry);
    diagnostics.push(...(mixed?.diagnostics ?? []));
    if (row.value === undefined || mixed?.value === undefined) continue;
    const step = stepOf(row.value, mixed.value, entry, shop);
    steps.push(step);
    if (row.value.spreadRate === undefined && isLiquid(step)) {
      defaults.push(textUsed('Finish', `${step.name}: ${FINISH.spreadRate.name}`, USUAL_SPREAD[step.kind] ?? ''));
    }
  }
  // A sheet with nothing under its headings says as little as none.
  if (table.value.length === 0) return { value: standardFinish(shop, units), diagnostics };
  return { value: { steps, defaults }, diagnostics };
}

/** What is mixed: as many names as the ratio has numbers. */
function mixOf(row: Row, { from }: FinishEntry): Diagnosed<FinishStep['components'] | undefined> {
  const names =
    row.components ?? (row.mix ?? [1]).map((_, index) => (row.mix === undefined ? row.name : `Part ${index + 1}`));
  const parts = row.mix ?? (names.length === 1 ? [1] : []);
  if (names.length !== parts.length) {
    const facts = { step: row.name, parts: parts.length, components: names.length };
    return { value: undefined, diagnostics: [problem('mix-parts-differ', cellOf(from, 'mix'), facts)] };
  }
  return { value: names.map((each, index) => ({ name: each, parts: parts[index] ?? 1 })), diagnostics: [] };
}

const isLiquid = ({ kind }: FinishStep): boolean => kind !== 'sand' && kind !== 'wait';

/** Wiped stain goes further than sprayed topcoat. Common practice; the can's label rules. */
const USUAL_SPREAD: { readonly [kind in FinishStep['kind']]?: string } = {
  stain: '400 ft²/gal',
  seal: '350 ft²/gal',
  topcoat: '350 ft²/gal',
};

const stepOf = (row: Row, mixed: FinishStep['components'], { from }: FinishEntry, shop: Shop): FinishStep => ({
  name: row.name,
  kind: row.kind,
  components: row.kind === 'sand' || row.kind === 'wait' ? [] : mixed,
  additive: row.additivePercent === 0 ? undefined : { name: row.additive ?? 'Additive', percent: row.additivePercent },
  coats: row.coats,
  squareMetresPerLitre: row.spreadRate ?? Number.parseInt(USUAL_SPREAD[row.kind] ?? '350', 10) * PER_GALLON,
  // Stain is wiped on; what is sprayed loses what the gun throws past the door.
  transfer: row.transfer === undefined ? (row.kind === 'stain' ? 1 : shop.finishing.sprayTransfer) : row.transfer / 100,
  grit: row.grit,
  wait: row.wait,
  price: row.price === undefined ? undefined : { perLitre: row.price },
  from,
});

/** What a workbook without a Finish sheet is taken to want: three coats, sanded before the first and the last. */
export function standardFinish(shop: Shop, units: Units): FinishRead {
  const { steps } = readFinish(STANDARD_FINISH, shop, units).value;
  const told = steps.map(step => `${step.name}${step.coats > 1 ? ` × ${step.coats}` : ''}`);
  return { steps, defaults: [textUsed('Finish', FINISH.name.name, told.join(', '))] };
}

const row = (number: number, ...texts: readonly string[]): Sheet['rows'][number] => ({
  number,
  hidden: false,
  cells: texts.map((each, index) => ({ column: 'ABCDEF'[index] ?? 'Z', value: { kind: 'text', text: each } })),
});

/** Common practice: 150 grit before the first coat, 320 before the last. */
const STANDARD_FINISH: Sheet = {
  name: 'Finish',
  hidden: false,
  rows: [
    row(1, 'Step', 'Kind', 'Coats', 'Grit', 'Wait hours'),
    row(2, 'Sand to 150', 'sand', '1', '150'),
    row(3, 'Topcoat', 'topcoat', '2', '', '2'),
    row(4, 'Sand to 320', 'sand', '1', '320'),
    row(5, 'Last topcoat', 'topcoat', '1', '', '24'),
  ],
};
