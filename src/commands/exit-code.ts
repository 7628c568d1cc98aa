import { FolderHoldsOtherFiles } from '../machine.ts';

/** 0 done, 1 the workbook needs mending and nothing was built, 2 wrong usage, 3 the machine failed. */
export type ExitCode = 0 | 1 | 2 | 3;

/** What a person is told when the machine refuses: one sentence, and no trace of the program's inside. */
export function tellRefusal(refused: unknown): void {
  process.stderr.write(`stilebook: ${sentence(refused)}\n`);
}

export function exitCodeOf(refused: unknown): ExitCode {
  if (refused instanceof FolderHoldsOtherFiles || codeOf(refused) === 'ENOENT') return 2;
  if (codeOf(refused) !== undefined) return 3;
  throw refused;
}

function sentence(refused: unknown): string {
  if (refused instanceof FolderHoldsOtherFiles)
    return `${refused.folder} holds other files (${refused.others.slice(0, 3).join(', ')}). Name an empty or a new folder with --out.`;
  const path = refused instanceof Error && 'path' in refused ? String(refused.path) : 'it';
  switch (codeOf(refused)) {
    case 'ENOENT':
      return `there is no ${path}.`;
    case 'EISDIR':
      return `${path} is a folder, not a file.`;
    case 'ENOSPC':
      return 'the disk is full. Nothing was written.';
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return `no permission for ${path}. Nothing was written.`;
    default:
      return refused instanceof Error ? refused.message : String(refused);
  }
}

const codeOf = (refused: unknown): string | undefined =>
  refused instanceof Error && 'code' in refused && typeof refused.code === 'string' ? refused.code : undefined;
