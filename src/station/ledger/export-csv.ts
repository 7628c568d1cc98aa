import type { KeptEvent } from '../floor/event.ts';
import { allEvents, type Ledger } from './ledger.ts';

const HEADINGS = [
  'seq',
  'server time',
  'device time',
  'job',
  'revision',
  'station',
  'device',
  'what',
  'operation',
  'pieces',
  'vouched for',
  'reason',
  'key',
];

/** All events as a table, a line an event, in ledger order. Every text is safe to open in a spreadsheet program. */
export async function* exportCsv(ledger: Ledger): AsyncGenerator<string> {
  // The mark tells spreadsheet programs that the letters are Unicode.
  yield `\uFEFF${line(HEADINGS)}`;
  for await (const page of allEvents(ledger)) yield page.map(event => line(cellsOf(event))).join('');
}

function cellsOf(event: KeptEvent): readonly string[] {
  const { what } = event;
  return [
    String(event.seq),
    event.serverTime,
    event.deviceTime,
    event.job,
    event.revision,
    event.station,
    event.device,
    what.kind,
    what.kind === 'done' ? what.operation : '',
    what.pieces.map(codeOf).join(' '),
    what.kind === 'done' ? what.skipped.map(each => `${codeOf(each.piece)}:${each.operation}`).join(' ') : '',
    what.kind === 'undone' ? what.of : what.reason,
    event.key,
  ];
}

const codeOf = ({ code, remake }: { readonly code: string; readonly remake: number }): string =>
  remake === 0 ? code : `${code}+${remake}`;

const line = (cells: readonly string[]): string => `${cells.map(cellOf).join(',')}\r\n`;

/**
 * A cell that begins with one of these would be run as a formula: an apostrophe before it makes it text. Inside a
 * quoted cell too, since programs take the quotes off first. (OWASP, "CSV Injection".)
 */
const cellOf = (text: string): string => `"${(/^[=+\-@\t\r]/.test(text) ? `'${text}` : text).replaceAll('"', '""')}"`;
