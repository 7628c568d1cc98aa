import { createHash } from 'node:crypto';
import { basename, extname } from 'node:path';
import type { Diagnosed, Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Workbook } from '../import/workbook.ts';
import { machine } from '../machine.ts';

/** A file that somebody named: a workbook with the digest of its bytes, or what is wrong with it as a file. */
export type Opened =
  | {
      readonly kind: 'workbook';
      readonly workbook: Workbook;
      readonly inputHash: string;
      readonly diagnostics: readonly Diagnostic[];
    }
  | { readonly kind: 'unreadable'; readonly diagnostics: readonly Diagnostic[] };

/** Reads a workbook or a bare list of openings, as its name ends. Throws where the machine refuses to read it. */
export async function openWorkbook(file: string): Promise<Opened> {
  const bytes = await machine.read(file);
  const name = basename(file);
  const { value: workbook, diagnostics } = await readWorkbook(name, bytes);
  if (workbook === undefined) return { kind: 'unreadable', diagnostics };
  return { kind: 'workbook', workbook, inputHash: createHash('sha256').update(bytes).digest('hex'), diagnostics };
}

/** Reads bytes as a workbook or a bare list of openings, as the name ends. The reader is loaded only when it is wanted: the spreadsheet library is a third of a small job's time. */
export async function readWorkbook(name: string, bytes: Uint8Array): Promise<Diagnosed<Workbook | undefined>> {
  if (extname(name).toLowerCase() === '.csv') {
    const { readCsv } = await import('../import/read-csv.ts');
    return readCsv(bytes, name);
  }
  const { readXlsx } = await import('../import/read-xlsx.ts');
  return readXlsx(bytes, name);
}
