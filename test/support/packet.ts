import { readFile } from 'node:fs/promises';
import { calculate } from '../../src/calculate/index.ts';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { importJob } from '../../src/import/index.ts';
import type { Job } from '../../src/import/job.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';
import { tableWorkbook } from '../../src/import/table-workbook.ts';
import { layOut } from '../../src/layout/index.ts';
import { loadSolver } from '../../src/layout/solver.ts';
import { packagedFonts, packagedTemplates, packagedWords } from '../../src/packaged.ts';
import { type Draft, draft, type RenderInput } from '../../src/render/draft.ts';
import { prepare, type Template } from '../../src/render/fill.ts';
import type { RenderAssets } from '../../src/render/index.ts';
import { print } from '../../src/render/print.ts';
import type { SheetName } from '../../src/render/sheet-names.ts';
import { openSymbols } from '../../src/render/symbols.ts';
import { FONTS } from './typeset.ts';

/** A job taken through calculation and layout, as the rendering gets it. */
export async function laidOut(job: Job): Promise<RenderInput> {
  const doorSet = calculate(job);
  const plan = layOut(job, doorSet.value, await loadSolver());
  return {
    job,
    doorSet: doorSet.value,
    plan: plan.value,
    diagnostics: [...doorSet.diagnostics, ...plan.diagnostics],
    revision: { letter: 'A', inputHash: '0'.repeat(64), changes: undefined },
    program: '0.0.0',
  };
}

/** The job of a demo workbook. */
export async function demoJob(name: 'small' | 'kitchen'): Promise<Job> {
  const read = await readXlsx(await readFile(new URL(`../../fixtures/demo/${name}.xlsx`, import.meta.url)), name);
  if (read.value === undefined) throw new Error(`${name} is no workbook`);
  return importJob(read.value).value;
}

export const assets = (language: 'en' | 'es', templates: readonly Template[] = packagedTemplates()): RenderAssets => ({
  templates,
  words: packagedWords(language),
  fonts: packagedFonts(),
  writeTable: tableWorkbook,
});

export const drafted = (input: RenderInput): Draft => draft(input, packagedWords(input.job.language), FONTS.measure);

/** Some sheets of a job as pages, before they are bound. */
export function sheetsOf(input: RenderInput, names: readonly SheetName[]) {
  const words = packagedWords(input.job.language);
  const fill = prepare(packagedTemplates(), words);
  const ready = drafted(input);
  const diagnostics: Diagnostic[] = [];
  const complain = (found: Diagnostic) => void diagnostics.push(found);
  const press = { drafted: ready, fill, fonts: FONTS, symbols: openSymbols(), complain };
  const { inner, front } = print({ sheets: names }, press);
  const pages = Array.from(inner, ({ page }) => page);
  return { value: [...front, ...pages], diagnostics };
}
