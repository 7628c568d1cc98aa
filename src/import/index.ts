import { type Diagnosed, type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import type { Job } from './job.ts';
import { resolveOpenings } from './references.ts';
import { findSheets } from './sheet-names.ts';
import { readCabinets } from './sheets/cabinets.ts';
import { readFinish, standardFinish } from './sheets/finish.ts';
import { readHardware, STANDARD_HARDWARE } from './sheets/hardware.ts';
import { readJobFacts } from './sheets/job.ts';
import { readStock } from './sheets/stock.ts';
import { readStyles } from './sheets/styles.ts';
import type { Sheet, Workbook } from './workbook.ts';

/**
 * Reads a job out of a workbook. Never throws for what a person wrote: a row that does not read is reported at its
 * cells and left out, and the rest goes on, so that all problems come in one go.
 */
export function importJob(workbook: Workbook): Diagnosed<Job> {
  const sheets = findSheets(workbook);
  const { Cabinets, Job, Shop, Styles, Stock, Finish, Hardware } = sheets.value;
  const facts = readJobFacts(workbook.file, Job, Shop);
  const { own, shop } = facts.value;
  const stock = Stock === undefined ? NO_STOCK : readStock(Stock, shop, own.units);
  const styles = readStyles(Styles, { stock: stock.value, shop, units: own.units });
  const cabinets = Cabinets === undefined ? NO_OPENINGS : readCabinets(Cabinets, shop, own.units);
  const openings = resolveOpenings(cabinets.value, styles.value);
  const finish = Finish === undefined ? found(standardFinish(shop, own.units)) : readFinish(Finish, shop, own.units);
  const hardware = Hardware === undefined ? found(STANDARD_HARDWARE) : readHardware(Hardware, own.units);
  const diagnostics = [sheets, facts, stock, styles, cabinets, openings, finish, hardware].flatMap(
    each => each.diagnostics,
  );
  const value: Job = {
    ...own,
    openings: openings.value,
    styles: styles.value.items,
    stock: [...stock.value.items, ...styles.value.standardStock],
    shop,
    finish: finish.value.steps,
    hardware: hardware.value.items,
    defaults: [facts, stock, styles, finish, hardware].flatMap(each => each.value.defaults),
  };
  return { value, diagnostics: [...diagnostics, ...emptiness(Cabinets, value, diagnostics)] };
}

const found = <T>(value: T): Diagnosed<T> => ({ value, diagnostics: [] });
const NO_STOCK = found({ items: [], named: [], defaults: [] });
const NO_OPENINGS = found({ items: [], named: [], unread: [] });

/** A workbook without openings makes nothing; where errors left them out, those have been said. */
const emptiness = (
  sheet: Sheet | undefined,
  { openings }: Job,
  diagnostics: readonly Diagnostic[],
): readonly Diagnostic[] =>
  sheet === undefined || openings.length > 0 || diagnostics.some(({ severity }) => severity === 'error')
    ? []
    : [problem('no-openings', { kind: 'sheet', sheet: sheet.name }, {})];
