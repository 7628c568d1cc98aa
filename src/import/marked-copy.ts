import { apart, LIMITS, type Limits } from './apart.ts';
import type { Mark, MarkWords } from './marks.ts';
import type { Workbook } from './workbook.ts';

/**
 * A copy of a workbook with its findings marked in it, for mending and dropping again. Where the workbook itself cannot
 * be copied (a list of openings as text, or a file that would take a library hours), what was read of it is.
 */
export async function markedCopy(
  bytes: Uint8Array,
  workbook: Workbook | undefined,
  marks: readonly Mark[],
  words: MarkWords,
  limits: Limits = LIMITS,
): Promise<Uint8Array | undefined> {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    const became = await apart({ task: 'mark', bytes, marks, words }, limits);
    if (became.kind === 'done' && became.answer !== undefined) return became.answer;
  }
  if (workbook === undefined) return undefined;
  const { markUpCells } = await import('./mark-up.ts');
  return markUpCells(workbook, marks, words);
}
