import { type Diagnosed, type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import { bare, findField, nearest, some } from './columns.ts';
import { READ_ME, TO_MEND } from './own-sheets.ts';
import { CABINETS } from './sheets/cabinets-columns.ts';
import type { Sheet, Workbook } from './workbook.ts';

export type SheetName = 'Cabinets' | 'Job' | 'Styles' | 'Stock' | 'Shop' | 'Finish' | 'Hardware';

/** The sheets that were found, each under our name for it. */
export type Sheets = { readonly [name in SheetName]?: Sheet };

/** Tells the sheets apart by their names. A workbook of one sheet is taken for its openings, whatever its name. */
export function findSheets(workbook: Workbook): Diagnosed<Sheets> {
  const found: { [name in SheetName]?: Sheet } = {};
  const diagnostics: Diagnostic[] = [];
  for (const sheet of workbook.sheets.filter(each => !isOurs(each))) {
    const name = nameOf(sheet);
    const at = { kind: 'sheet', sheet: sheet.name } as const;
    const other = name && found[name];
    if (name === undefined) {
      if (sheet.rows.length > 0) diagnostics.push(unknownSheet(sheet));
    } else if (other !== undefined) {
      diagnostics.push(problem('sheet-twice', at, { sheet: other.name, other: sheet.name }));
    } else {
      found[name] = sheet;
      if (sheet.hidden) diagnostics.push(problem('sheet-hidden', at, {}));
    }
  }
  if (found.Cabinets !== undefined) return { value: found, diagnostics };
  const guessed = workbook.sheets.filter(sheet => nameOf(sheet) === undefined && looksLikeOpenings(sheet));
  const [only, ...others] = guessed;
  if (only !== undefined && others.length === 0) {
    const facts = { sheet: only.name, as: 'Cabinets' };
    const known = diagnostics.filter(({ at }) => !(at.kind === 'sheet' && at.sheet === only.name));
    const guess = problem('sheet-guessed', { kind: 'sheet', sheet: only.name }, facts);
    return { value: { ...found, Cabinets: only }, diagnostics: [...known, guess] };
  }
  const seen = workbook.sheets.length === 0 ? '–' : some(workbook.sheets.map(sheet => sheet.name));
  const missing = problem('sheet-missing', { kind: 'file', file: workbook.file }, { sheet: 'Cabinets', seen });
  return { value: found, diagnostics: [...diagnostics, missing] };
}

/** Sheets that the program itself writes for a person to read. */
const isOurs = (sheet: Sheet): boolean => [bare(READ_ME), bare(TO_MEND)].includes(bare(sheet.name));

const nameOf = (sheet: Sheet): SheetName | undefined =>
  NAMES.find(([name, ...also]) => [name, ...also].some(each => bare(each) === bare(sheet.name)))?.[0];

const NAMES: readonly (readonly [name: SheetName, ...also: string[]])[] = [
  ['Cabinets', 'Cabinet', 'Openings', 'Doors', 'Door list', 'Cabinet list', 'Gabinetes', 'Aberturas', 'Puertas'],
  ['Job', 'Job info', 'Project', 'Trabajo'],
  ['Styles', 'Style', 'Door styles', 'Estilos'],
  ['Stock', 'Materials', 'Lumber', 'Wood', 'Materiales', 'Existencias'],
  ['Shop', 'Settings', 'Shop settings', 'Taller', 'Ajustes'],
  ['Finish', 'Finishing', 'Acabado'],
  ['Hardware', 'Herrajes'],
];

const unknownSheet = (sheet: Sheet): Diagnostic =>
  problem(
    'sheet-unknown',
    { kind: 'sheet', sheet: sheet.name },
    {
      sheet: sheet.name,
      nearest:
        nearest(
          sheet.name,
          NAMES.map(([name]) => name),
        ) ?? '',
    },
  );

/** Has a row with a heading for each column that openings cannot do without. */
const looksLikeOpenings = (sheet: Sheet): boolean =>
  sheet.rows.slice(0, 20).some(row => {
    const fields = row.cells.map(({ value }) =>
      value.kind === 'text' ? findField(value.text, CABINETS)?.field : undefined,
    );
    return (['cabinet', 'width', 'height'] as const).every(field => fields.includes(field));
  });
