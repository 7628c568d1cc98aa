import { join, parse } from 'node:path';
import type { DoorSet } from '../calculate/door-set.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { inOrder } from '../diagnostics/print.ts';
import { markedCopy } from '../import/marked-copy.ts';
import { MARK_WORDS, marksOf } from '../import/marks.ts';
import type { Workbook } from '../import/workbook.ts';
import type { Order, Result } from '../inbox/ports.ts';
import { changesSince, type Listing } from '../inbox/revisions.ts';
import { loadSolver } from '../layout/solver.ts';
import { machine } from '../machine.ts';
import { programVersion } from '../packaged.ts';
import { type Built, buildPacket, type Planned } from '../pipeline.ts';
import { type Manifest, manifestSchema, type Revision } from '../render/packet.ts';
import { printLength } from '../units/print-length.ts';
import { assetsFor } from './assets.ts';
import { packetFiles } from './packet-files.ts';
import { errorsIn, foundAsData, PLAIN_TONGUE, type Tongue, tongueOf } from './telling.ts';
import { readWorkbook } from './workbook-file.ts';

/** Builds what was dropped: a packet, or a copy of the workbook with its findings marked. */
export async function buildDropped(order: Order, templates: string | undefined): Promise<Result> {
  const { value: workbook, diagnostics } = await readWorkbook(order.name, order.bytes);
  if (workbook === undefined) return toMend(order, '', undefined, diagnostics, PLAIN_TONGUE);
  const earlier = order.earlier && (await readManifest(order.earlier.folder));
  const built = await buildPacket(workbook, {
    solver: await loadSolver(),
    assets: job => assetsFor(job.language, templates),
    revision: planned => revisionOf(order, earlier, planned),
    program: programVersion(),
    options: {},
  });
  const found = [...diagnostics, ...built.diagnostics];
  if (built.kind === 'refused') return toMend(order, built.job.number, workbook, found, tongueOf(built.job));
  return packetOf(built, found);
}

const packetOf = ({ job, doorSet, packet }: Built, found: readonly Diagnostic[]): Result => ({
  kind: 'packet',
  job: job.number,
  files: packetFiles(packet),
  doors: doorSet.doors.length,
  parts: doorSet.parts.length,
  pages: packet.pages.packet,
  warnings: found.filter(({ severity }) => severity === 'warning').length,
});

async function toMend(
  { bytes, name }: Order,
  job: string,
  workbook: Workbook | undefined,
  found: readonly Diagnostic[],
  tongue: Tongue,
): Promise<Result> {
  const marks = marksOf(found, tongue.language, length => printLength(length, tongue.lengths));
  const copy = await markedCopy(bytes, workbook, marks, MARK_WORDS[tongue.language]);
  const files = copy === undefined ? [] : [{ name: `${parse(name).name.slice(0, 50)} to mend.xlsx`, bytes: copy }];
  const findings = foundAsData(found, tongue).map(({ at, what, mend }) => `${at}: ${what} ${mend}`);
  return { kind: 'to-mend', job, files, findings: findings.slice(0, Math.max(errorsIn(inOrder(found)), 1)) };
}

/** The cover says what changed since the revision before. */
const revisionOf = (
  { revision, inputHash, earlier }: Order,
  manifest: Manifest | undefined,
  { doorSet }: Planned,
): Revision => ({
  letter: revision,
  inputHash,
  changes:
    earlier === undefined || manifest === undefined
      ? undefined
      : changesSince(earlier.letter, listedIn(manifest), listedOf(doorSet)),
});

async function readManifest(folder: string): Promise<Manifest | undefined> {
  try {
    return manifestSchema.parse(
      JSON.parse(new TextDecoder().decode(await machine.read(join(folder, 'manifest.json')))),
    );
  } catch {
    // A packet that somebody took away or changed: there is nothing to compare with.
    return undefined;
  }
}

const listedIn = ({ doors, parts }: Manifest): Listing =>
  new Map([
    ...doors.map(
      each =>
        [
          each.code,
          facts(each.width.nm, each.height.nm, each.thickness.nm, each.hand, each.mounting, each.style),
        ] as const,
    ),
    ...parts.map(each => [each.code, facts(each.length.nm, each.width.nm, each.thickness.nm, each.stock)] as const),
  ]);

const listedOf = ({ doors, parts }: DoorSet): Listing =>
  new Map<string, string>([
    ...doors.map(
      each =>
        [
          each.code,
          facts(each.width.value, each.height.value, each.thickness, each.hingeSide ?? null, each.mounting, each.style),
        ] as const,
    ),
    ...parts.map(
      each => [each.code, facts(each.length.value, each.width.value, each.thickness, each.stock ?? null)] as const,
    ),
  ]);

const facts = (...all: readonly (number | string | null)[]): string => JSON.stringify(all);
