/** A workbook as plain cells: what a reader of files hands to the import, whatever the file was. */
export type Workbook = {
  readonly file: string;
  readonly sheets: readonly Sheet[];
};

export type Sheet = {
  readonly name: string;
  readonly hidden: boolean;
  /** Only rows and cells that hold something, in order. */
  readonly rows: readonly Row[];
};

export type Row = { readonly number: number; readonly hidden: boolean; readonly cells: readonly Cell[] };

/** A cell that holds something; `column` is its letter. */
export type Cell = { readonly column: string; readonly value: CellValue };

export type CellValue =
  | { readonly kind: 'text'; readonly text: string }
  /** `format` is what the number format writes beside the number: ` mm`, `%`; empty where it writes nothing. */
  | { readonly kind: 'number'; readonly number: number; readonly format: string }
  /** The parts of the date, in UTC, as the spreadsheet stores it. */
  | { readonly kind: 'date'; readonly year: number; readonly month: number; readonly day: number }
  | { readonly kind: 'truth'; readonly truth: boolean }
  /** `#REF!` and its like. */
  | { readonly kind: 'error'; readonly error: string }
  /** A formula without a stored result. */
  | { readonly kind: 'unfinished' }
  /** Hidden under a merged area (`A2:A3`), whose value stands in the area's first cell. */
  | { readonly kind: 'merged'; readonly area: string };
