import type { Severity } from '../problems.ts';

/** What can be wrong with the workbook itself: the file, its sheets, its cells, and what they say. */
export type ImportProblems = FileProblems & SheetProblems & CellProblems & SettingProblems & MeaningProblems;

type Nothing = { readonly [fact: string]: never };
/** `nearest` is the known name that was probably meant; empty where none is near. */
type Unknown = { readonly typed: string; readonly nearest: string; readonly known: string };

type FileProblems = {
  'file-empty': Nothing;
  'file-too-large': { readonly size: string; readonly limit: string };
  'file-is-old-workbook': Nothing;
  'file-has-password': Nothing;
  'file-is-no-workbook': { readonly looks: 'web-page' | 'pdf' | 'text' | 'other-zip' | 'unknown' };
  'file-damaged': { readonly part: string };
  'file-unpacks-too-large': { readonly limit: string };
  'file-has-foreign-entities': { readonly part: string };
  'file-takes-too-long': { readonly seconds: number };
  'file-takes-too-much-memory': Nothing;
  'sheet-too-large': { readonly of: 'rows' | 'cells' | 'columns'; readonly limit: number };
  'text-not-unicode': Nothing;
  'quote-not-closed': Nothing;
};

type SheetProblems = {
  'sheet-missing': { readonly sheet: string; readonly seen: string };
  'sheet-unknown': { readonly sheet: string; readonly nearest: string };
  'sheet-guessed': { readonly sheet: string; readonly as: string };
  'sheet-twice': { readonly sheet: string; readonly other: string };
  'sheet-hidden': Nothing;
  'headings-missing': { readonly wanted: string };
  'column-missing': { readonly column: string; readonly seen: string };
  'column-unknown': { readonly heading: string; readonly nearest: string };
  'column-twice': { readonly column: string; readonly other: string };
  'rows-hidden': { readonly rows: string };
  'example-not-counted': Nothing;
  'no-openings': Nothing;
};

/** What can be wrong with one cell, whatever its column. */
export type CellProblems = {
  'cell-empty': { readonly column: string };
  'cell-is-error': { readonly column: string; readonly error: string };
  'cell-unfinished': { readonly column: string };
  'cell-merged': { readonly column: string; readonly area: string };
  'cell-is-date': { readonly column: string; readonly date: string; readonly typed: string };
  'length-unreadable': { readonly column: string; readonly typed: string };
  'length-not-positive': { readonly column: string; readonly typed: string };
  'length-negative': { readonly column: string; readonly typed: string };
  'number-unreadable': { readonly column: string; readonly typed: string };
  'number-out-of-range': {
    readonly column: string;
    readonly typed: string;
    readonly from: number;
    readonly to: number;
  };
  'number-not-whole': { readonly column: string; readonly typed: string };
  'choice-unknown': { readonly column: string } & Unknown;
  'date-unreadable': { readonly column: string; readonly typed: string };
  'duration-unreadable': { readonly column: string; readonly typed: string };
  'volume-unreadable': { readonly column: string; readonly typed: string };
  'money-unreadable': { readonly column: string; readonly typed: string };
  'form-unreadable': { readonly column: string; readonly typed: string; readonly form: string };
  'text-too-long': { readonly column: string; readonly limit: number };
  'job-number-unsafe': { readonly column: string; readonly typed: string };
  'characters-removed': { readonly column: string; readonly kept: string };
};

type SettingProblems = {
  'setting-unknown': { readonly typed: string; readonly nearest: string };
  'setting-twice': { readonly setting: string; readonly other: string };
};

type MeaningProblems = {
  'hinge-side-missing': { readonly cabinet: string };
  'hinge-side-unused': { readonly cabinet: string };
  'opening-twice': { readonly cabinet: string; readonly label: string; readonly other: string };
  'style-not-listed': { readonly cabinet: string } & Unknown;
  'style-missing': { readonly cabinet: string; readonly known: string };
  'style-twice': { readonly style: string; readonly other: string };
  'stock-unknown': { readonly column: string } & Unknown;
  'stock-missing': { readonly column: string; readonly style: string; readonly known: string };
  'stock-is-other-kind': { readonly column: string; readonly stock: string; readonly is: 'board' | 'sheet' };
  'stock-disagrees': { readonly column: string; readonly stock: string; readonly other: string };
  'neighbour-not-listed': { readonly column: string } & Unknown;
  'middle-rail-count': { readonly cabinet: string; readonly panels: number; readonly given: number };
  'middle-rails-out-of-order': { readonly cabinet: string };
  'mix-parts-differ': { readonly step: string; readonly parts: number; readonly components: number };
};

export const importSeverity: { readonly [C in keyof ImportProblems]: Severity } = {
  'file-empty': 'error',
  'file-too-large': 'error',
  'file-is-old-workbook': 'error',
  'file-has-password': 'error',
  'file-is-no-workbook': 'error',
  'file-damaged': 'error',
  'file-unpacks-too-large': 'error',
  'file-has-foreign-entities': 'error',
  'file-takes-too-long': 'error',
  'file-takes-too-much-memory': 'error',
  'sheet-too-large': 'error',
  'text-not-unicode': 'error',
  'quote-not-closed': 'error',
  'sheet-missing': 'error',
  'sheet-unknown': 'note',
  'sheet-guessed': 'note',
  'sheet-twice': 'error',
  'sheet-hidden': 'note',
  'headings-missing': 'error',
  'column-missing': 'error',
  'column-unknown': 'note',
  'column-twice': 'error',
  'rows-hidden': 'note',
  'example-not-counted': 'note',
  'no-openings': 'error',
  'cell-empty': 'error',
  'cell-is-error': 'error',
  'cell-unfinished': 'error',
  'cell-merged': 'error',
  'cell-is-date': 'error',
  'length-unreadable': 'error',
  'length-not-positive': 'error',
  'length-negative': 'error',
  'number-unreadable': 'error',
  'number-out-of-range': 'error',
  'number-not-whole': 'error',
  'choice-unknown': 'error',
  'date-unreadable': 'error',
  'duration-unreadable': 'error',
  'volume-unreadable': 'error',
  'money-unreadable': 'error',
  'form-unreadable': 'error',
  'text-too-long': 'error',
  'characters-removed': 'warning',
  'setting-unknown': 'warning',
  'setting-twice': 'error',
  'job-number-unsafe': 'error',
  'hinge-side-missing': 'error',
  'hinge-side-unused': 'warning',
  'opening-twice': 'error',
  'style-not-listed': 'error',
  'style-missing': 'error',
  'style-twice': 'error',
  'stock-unknown': 'error',
  'stock-missing': 'error',
  'stock-is-other-kind': 'error',
  'stock-disagrees': 'error',
  'neighbour-not-listed': 'error',
  'middle-rail-count': 'error',
  'middle-rails-out-of-order': 'error',
  'mix-parts-differ': 'error',
};
