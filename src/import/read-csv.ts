import { type Diagnosed, problem } from '../diagnostics/diagnostic.ts';
import { lettersOf } from './cell-names.ts';
import type { Cell, Row, Workbook } from './workbook.ts';

/** Larger files are not lists of openings. */
const BYTES_MAX = 5_000_000;
const ROWS_MAX = 12_000;
const COLUMNS_MAX = 256;

/**
 * Reads a bare list of openings: UTF-8, cells set off by commas, semicolons or tabs, whichever its first line has most.
 * Every cell is text as it was written. Only a whole cell in quotation marks is taken out of them, so that an inch mark
 * needs no care: `B1,14 3/8",30"`.
 */
export function readCsv(bytes: Uint8Array, file: string): Diagnosed<Workbook | undefined> {
  const at = { kind: 'file', file } as const;
  const refuse = (diagnostic: ReturnType<typeof problem>): Diagnosed<undefined> => ({
    value: undefined,
    diagnostics: [diagnostic],
  });
  if (bytes.length === 0) return refuse(problem('file-empty', at, {}));
  if (bytes.length > BYTES_MAX)
    return refuse(problem('file-too-large', at, { size: megabytes(bytes.length), limit: megabytes(BYTES_MAX) }));
  const text = decoded(bytes);
  if (text === undefined || text.includes('\0')) return refuse(problem('text-not-unicode', at, {}));
  const lines = split(text, separatorOf(text));
  if (lines === undefined) return refuse(problem('quote-not-closed', at, {}));
  const sheet = { name: 'Cabinets', hidden: false, rows: lines.flatMap(rowOf) };
  if (lines.length > ROWS_MAX) return refuse(problem('sheet-too-large', at, { of: 'rows', limit: ROWS_MAX }));
  if (lines.some(line => line.length > COLUMNS_MAX))
    return refuse(problem('sheet-too-large', at, { of: 'columns', limit: COLUMNS_MAX }));
  return { value: { file, sheets: [sheet] }, diagnostics: [] };
}

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1_000_000)} MB`;

function decoded(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** The mark that the first line has most of, outside of quotation marks. */
function separatorOf(text: string): string {
  const bareStart = text.slice(0, 10_000).replace(/"[^"]*"/g, '');
  const first = bareStart.split(/[\r\n]+/).find(line => /[^ ]/.test(line)) ?? '';
  const counts = [',', ';', '\t'].map(mark => ({ mark, count: first.split(mark).length }));
  return counts.reduce((best, each) => (each.count > best.count ? each : best)).mark;
}

/** Lines of cells; undefined where a quotation mark is never closed. */
function split(text: string, separator: string): readonly (readonly string[])[] | undefined {
  const lines: string[][] = [[]];
  let at = 0;
  while (at < text.length) {
    const quoted = /^ *"/.exec(text.slice(at, at + 64));
    const cell = quoted === null ? plainCell(text, at, separator) : quotedCell(text, at + quoted[0].length, separator);
    if (cell === undefined) return undefined;
    lines.at(-1)?.push(cell.text);
    at = cell.end;
    if (text[at] === separator) {
      at += 1;
      if (at === text.length) lines.at(-1)?.push('');
    } else {
      at += text.startsWith('\r\n', at) ? 2 : 1;
      lines.push([]);
    }
  }
  return lines;
}

type Found = { readonly text: string; readonly end: number };

function plainCell(text: string, start: number, separator: string): Found {
  let end = start;
  while (end < text.length && text[end] !== separator && text[end] !== '\n' && text[end] !== '\r') end += 1;
  return { text: text.slice(start, end), end };
}

function quotedCell(text: string, start: number, separator: string): Found | undefined {
  let cell = '';
  let at = start;
  while (at < text.length) {
    const mark = text.indexOf('"', at);
    if (mark === -1) return undefined;
    cell += text.slice(at, mark);
    if (text[mark + 1] !== '"') {
      const rest = plainCell(text, mark + 1, separator);
      return { text: cell + rest.text.trimEnd(), end: rest.end };
    }
    cell += '"';
    at = mark + 2;
  }
  return undefined;
}

function rowOf(line: readonly string[], index: number): readonly Row[] {
  const cells: readonly Cell[] = line.flatMap((text, column) =>
    text.trim() === '' ? [] : [{ column: lettersOf(column + 1), value: { kind: 'text', text } }],
  );
  return cells.length === 0 ? [] : [{ number: index + 1, hidden: false, cells }];
}
