import { createHash } from 'node:crypto';
import { basename, extname } from 'node:path';
import type { Diagnosed, Diagnostic } from '../diagnostics/diagnostic.ts';
import { standBy } from '../import/apart.ts';
import { readXlsx } from '../import/read-xlsx.ts';
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

/**
 * Reads a workbook or a bare list of openings, as its name ends. Throws where the machine refuses to read it. A workbook
 * is read in a thread of its own, which starts at once: ask first, and load what comes after it meanwhile.
 */
export async function openWorkbook(file: string): Promise<Opened> {
  if (!isList(file)) standBy();
  const bytes = await machine.read(file);
  const name = basename(file);
  const { value: workbook, diagnostics } = await readWorkbook(name, bytes);
  if (workbook === undefined) return { kind: 'unreadable', diagnostics };
  return { kind: 'workbook', workbook, inputHash: createHash('sha256').update(bytes).digest('hex'), diagnostics };
}

/** Reads bytes as a workbook or a bare list of openings, as the name ends. */
export async function readWorkbook(name: string, bytes: Uint8Array): Promise<Diagnosed<Workbook | undefined>> {
  if (!isList(name)) return readXlsx(bytes, name);
  const { readCsv } = await import('../import/read-csv.ts');
  return readCsv(bytes, name);
}

const isList = (name: string): boolean => extname(name).toLowerCase() === '.csv';
