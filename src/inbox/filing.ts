import { mkdir } from 'node:fs/promises';
import { basename, extname, join, parse, relative } from 'node:path';
import type { Host, WholeFile } from '../host.ts';
import { readDropped, takeAway } from './dropped.ts';
import { digestOf, type Filed, type FiledRecord, RECORD, type Shelf } from './filed.ts';
import type { News, Result, Workbooks } from './ports.ts';
import type { Action, Event } from './step.ts';

/** Does what the inbox decided, and tells how it ended. What the machine refuses leaves the file where it is. */
export async function perform(action: Action, around: Around): Promise<Event> {
  const { name } = action;
  try {
    const bytes = await readDropped(join(around.root, name), action.stamp);
    if (bytes === undefined) return { kind: 'failed', name };
    const inputHash = digestOf(bytes);
    const known = around.shelf.find(inputHash);
    if (known !== undefined) return await fileAgain(name, known, around);
    return action.kind === 'read'
      ? await read(action, bytes, inputHash, around)
      : await build(action, bytes, inputHash, around);
  } catch (refused) {
    around.tell({ kind: 'failed', name, reason: reasonOf(refused) });
    return { kind: 'failed', name };
  }
}

/** What filing needs around it. */
export type Around = {
  readonly root: string;
  readonly host: Host;
  readonly workbooks: Workbooks;
  readonly shelf: Shelf;
  readonly tell: (news: News) => void;
};

export const reasonOf = (refused: unknown): string => (refused instanceof Error ? refused.message : String(refused));

/** The very same bytes were filed before, perhaps under another name, perhaps just before a crash. */
async function fileAgain(name: string, known: Filed, { root, tell }: Around): Promise<Event> {
  await takeAway(root, name, known.inputHash);
  tell({ kind: 'known', name, folder: relative(root, known.folder) });
  return { kind: 'filed', name };
}

async function read(
  action: Extract<Action, { kind: 'read' }>,
  bytes: Uint8Array,
  inputHash: string,
  { workbooks }: Around,
): Promise<Event> {
  const { name } = action;
  const reading = await workbooks.read(bytes, name);
  if (reading.kind === 'half' && action.patient) return { kind: 'half', name };
  // What names no job is nobody's next revision: only the very same bytes wait for it.
  const job = reading.kind === 'workbook' ? reading.job : '';
  return { kind: 'read', name, job, line: job === '' ? `file ${inputHash}` : `job ${job.toLowerCase()}` };
}

async function build(
  action: Extract<Action, { kind: 'build' }>,
  bytes: Uint8Array,
  inputHash: string,
  around: Around,
): Promise<Event> {
  const { name, job } = action;
  const { root, host, workbooks, shelf, tell } = around;
  const started = host.now().getTime();
  const next = await shelf.nextOf(job);
  const result = await workbooks.build({ bytes, name, inputHash, revision: next.letter, earlier: shelf.lastOf(job) });
  const folder = result.kind === 'packet' ? next.folder : join(root, 'to-mend', folderFor(name, inputHash));
  const record = recordOf(result, { name, inputHash, revision: next.letter, filedAt: host.now().toISOString() });
  const files: readonly WholeFile[] = [
    ...result.files,
    { name: nameBeside(name, result.files), bytes },
    { name: RECORD, bytes: new TextEncoder().encode(`${JSON.stringify(record, null, 1)}\n`) },
  ];
  await mkdir(join(folder, '..'), { recursive: true });
  await host.writeFolder(folder, files);
  shelf.add({ ...record, folder });
  await takeAway(root, name, inputHash);
  const seconds = (host.now().getTime() - started) / 1000;
  tell(newsOf(record, relative(root, folder), seconds));
  return { kind: 'filed', name };
}

function recordOf(result: Result, of: Pick<FiledRecord, 'name' | 'inputHash' | 'revision' | 'filedAt'>): FiledRecord {
  if (result.kind === 'packet') {
    const { doors, parts, pages, warnings } = result;
    return { ...of, kind: 'packet', job: result.job, doors, parts, pages, warnings, findings: [] };
  }
  const nothing = { doors: 0, parts: 0, pages: 0, warnings: 0 };
  return { ...of, ...nothing, kind: 'to-mend', job: result.job, revision: '', findings: [...result.findings] };
}

const newsOf = (record: FiledRecord, folder: string, seconds: number): News => {
  const { name, job, revision, doors, warnings } = record;
  return record.kind === 'packet'
    ? { kind: 'packet', name, job, revision, folder, doors, warnings, seconds }
    : { kind: 'to-mend', name, job, folder, problems: record.findings.length };
};

/** One folder for each workbook that comes back, known by its name and its bytes. */
const folderFor = (name: string, inputHash: string): string =>
  `${
    parse(name)
      .name.replace(/^[.\s]+|[.\s]+$/g, '')
      .slice(0, 50)
      .trim() || 'workbook'
  }-${inputHash.slice(0, 8)}`;

/** The workbook keeps its name, unless a file of the packet has it. */
function nameBeside(name: string, files: readonly WholeFile[]): string {
  const isTaken = [...files.map(file => file.name), RECORD].some(each => each.toLowerCase() === name.toLowerCase());
  return isTaken ? `workbook ${basename(name, extname(name)).slice(0, 50)}${extname(name)}` : name;
}
