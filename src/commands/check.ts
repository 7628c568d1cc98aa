import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { loadSolver } from '../layout/solver.ts';
import { planJob } from '../pipeline.ts';
import type { ExitCode } from './exit-code.ts';
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
import { openWorkbook } from './workbook-file.ts';

/** `stilebook check FILE`: everything that is wrong with a workbook, and nothing built. */
export async function check(file: string, options: { readonly json?: boolean }): Promise<ExitCode> {
  const { diagnostics, tongue } = await findIn(file);
  const errors = errorsIn(diagnostics);
  if (options.json === true) tellJson({ sound: errors === 0, diagnostics: foundAsData(diagnostics, tongue) });
  else {
    tellFound(diagnostics, tongue);
    tellLine(errors === 0 ? `${file} is ready to build.` : `${file}: ${count(errors, 'problem')} to mend.`);
  }
  return errors === 0 ? 0 : 1;
}

async function findIn(file: string): Promise<{ readonly diagnostics: readonly Diagnostic[]; readonly tongue: Tongue }> {
  const opened = await openWorkbook(file);
  if (opened.kind === 'unreadable') return { diagnostics: opened.diagnostics, tongue: PLAIN_TONGUE };
  const planned = planJob(opened.workbook, await loadSolver());
  return { diagnostics: [...opened.diagnostics, ...planned.diagnostics], tongue: tongueOf(planned.job) };
}
