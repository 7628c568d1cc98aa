import { basename, extname, resolve } from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { CutPlan } from '../layout/shop-plan.ts';
import type { Solver } from '../layout/solver.ts';
import { machine } from '../machine.ts';
import { programVersion } from '../packaged.ts';
import { type Built, buildPacket } from '../pipeline.ts';
import type { SheetName } from '../render/sheet-names.ts';
import { assetsFor } from './assets.ts';
import type { ExitCode } from './exit-code.ts';
import { packetFiles } from './packet-files.ts';
import {
  count,
  errorsIn,
  foundAsData,
  PLAIN_TONGUE,
  type Tongue,
  tellFound,
  tellJson,
  tellLine,
  tongueOf,
} from './telling.ts';
import type { Opened } from './workbook-file.ts';

export type PacketOptions = {
  readonly out?: string;
  readonly revision: string;
  /** Folder of the shop's own templates and words. */
  readonly templates?: string;
  /** Only these sheets of the packet. */
  readonly only?: readonly SheetName[];
  /** Only the tags of these codes. */
  readonly tags?: readonly string[];
  readonly json?: boolean;
};

/** `stilebook packet FILE`: builds the packet and writes its folder whole, or says what has to be mended first. */
export async function packet(file: string, opened: Opened, solver: Solver, options: PacketOptions): Promise<ExitCode> {
  if (opened.kind === 'unreadable') return refuse(opened.diagnostics, PLAIN_TONGUE, options);
  const built = await buildPacket(opened.workbook, {
    solver,
    assets: job => assetsFor(job.language, options.templates),
    revision: () => ({ letter: options.revision, inputHash: opened.inputHash, changes: undefined }),
    program: programVersion(),
    options: { only: options.only, tagsOf: options.tags },
  });
  const diagnostics = [...opened.diagnostics, ...built.diagnostics];
  if (built.kind === 'refused') return refuse(diagnostics, tongueOf(built.job), options);
  const folder = resolve(options.out ?? basename(file, extname(file)));
  await machine.writeFolder(folder, packetFiles(built.packet));
  if (options.json === true)
    tellJson({ built: true, folder, ...made(built), diagnostics: foundAsData(diagnostics, tongueOf(built.job)) });
  else {
    tellFound(diagnostics, tongueOf(built.job));
    for (const line of madeInWords(built, folder)) tellLine(line);
  }
  return 0;
}

function refuse(diagnostics: readonly Diagnostic[], tongue: Tongue, options: PacketOptions): ExitCode {
  if (options.json === true) tellJson({ built: false, diagnostics: foundAsData(diagnostics, tongue) });
  else {
    tellFound(diagnostics, tongue);
    tellLine(`Nothing was built: ${count(errorsIn(diagnostics), 'problem')} to mend.`);
  }
  return 1;
}

const made = ({ doorSet, plan, packet, diagnostics }: Built) => ({
  doors: doorSet.doors.length,
  parts: doorSet.parts.length,
  pages: packet.pages,
  boards: binsOf(plan.cutPlans, 'board'),
  sheets: binsOf(plan.cutPlans, 'sheet'),
  warnings: diagnostics.filter(({ severity }) => severity === 'warning').length,
});

function madeInWords(built: Built, folder: string): readonly string[] {
  const { doors, parts, pages, boards, sheets, warnings } = made(built);
  return [
    `Packet of job ${built.job.number}: ${count(doors, 'door')}, ${count(parts, 'part')}; ${count(boards, 'board')} and ${count(sheets, 'sheet')} to cut; ${count(warnings, 'warning')}.`,
    `  ${folder}`,
    `  packet.pdf ${count(pages.packet, 'page')}, tags.pdf ${count(pages.tags, 'page')}, parts.xlsx, parts.csv, remnants.csv, manifest.json`,
  ];
}

const binsOf = (plans: readonly CutPlan[], kind: CutPlan['kind']): number =>
  plans.filter(plan => plan.kind === kind).reduce((sum, { bins }) => sum + bins.length, 0);
