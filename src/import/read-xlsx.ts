import { type Diagnosed, problem } from '../diagnostics/diagnostic.ts';
import { sheetsOf } from './read-xlsx-cells.ts';
import type { Workbook } from './workbook.ts';

/** Reads the bytes of an .xlsx file into plain cells; undefined, with a diagnosis, where they are no such file. */
export async function readXlsx(bytes: Uint8Array, file: string): Promise<Diagnosed<Workbook | undefined>> {
  try {
    return { value: { file, sheets: await sheetsOf(bytes) }, diagnostics: [] };
  } catch {
    return {
      value: undefined,
      diagnostics: [problem('file-damaged', { kind: 'file', file }, { part: 'xl/workbook.xml' })],
    };
  }
}
