import { type Diagnosed, problem } from '../diagnostics/diagnostic.ts';
import type { Problems } from '../diagnostics/problems.ts';
import { apart, LIMITS, type Limits } from './apart.ts';
import type { Workbook } from './workbook.ts';
import { sniff } from './xlsx/sniff.ts';

/** Without pictures, a workbook of thousands of openings has less than one. */
const BYTES_MAX = 25_000_000;
/**
 * Reads the bytes of an .xlsx file into plain cells; undefined, with a diagnosis, where they are no such file, or one
 * that is damaged, locked, or larger than a job can be. Time and memory are bounded whatever the bytes are.
 */
export async function readXlsx(
  bytes: Uint8Array,
  file: string,
  limits: Limits = LIMITS,
): Promise<Diagnosed<Workbook | undefined>> {
  if (bytes.length > BYTES_MAX) {
    return refuse(file, 'file-too-large', { size: megabytes(bytes.length), limit: megabytes(BYTES_MAX) });
  }
  const unfit = sniff(bytes);
  if (unfit !== undefined) return { value: undefined, diagnostics: [unfit.diagnose(file)] };
  const became = await apart({ task: 'read', bytes, file }, limits);
  switch (became.kind) {
    case 'done':
      return became.answer;
    case 'too-late':
      return refuse(file, 'file-takes-too-long', { seconds: limits.seconds });
    case 'too-much':
      return refuse(file, 'file-takes-too-much-memory', {});
  }
}

const refuse = <C extends keyof Problems>(file: string, code: C, facts: Problems[C]): Diagnosed<undefined> => ({
  value: undefined,
  diagnostics: [problem(code, { kind: 'file', file }, facts)],
});

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1_000_000)} MB`;
