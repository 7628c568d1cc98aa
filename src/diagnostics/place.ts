/** Where in what the user handed in, or in the packet, something is. */
export type Place =
  | { readonly kind: 'cell'; readonly sheet: string; readonly cell: string }
  | { readonly kind: 'sheet'; readonly sheet: string }
  | { readonly kind: 'file'; readonly file: string }
  | { readonly kind: 'part'; readonly code: string }
  | { readonly kind: 'template'; readonly file: string; readonly line: number };

/** Where a record of the workbook came from: its row, and the column letter of each field that was filled in. */
export type Source = {
  readonly sheet: string;
  readonly row: number;
  readonly columns: { readonly [field: string]: string };
};

/** The cell of a record's field; the first column of its row where the field's column is not in the sheet. */
export const cellOf = (source: Source, field: string): Place => ({
  kind: 'cell',
  sheet: source.sheet,
  cell: `${source.columns[field] ?? Object.values(source.columns)[0] ?? 'A'}${source.row}`,
});
