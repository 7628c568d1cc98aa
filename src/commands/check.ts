import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Solver } from '../layout/solver.ts';
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
import type { Opened } from './workbook-file.ts';

/** `stilebook check FILE`: everything that is wrong with a workbook, and nothing built. */
export function check(file: string, opened: Opened, solver: Solver, options: { readonly json?: boolean }): ExitCode {
  const { diagnostics, tongue } = findIn(opened, solver);
  const errors = errorsIn(diagnostics);
  if (options.json === true) tellJson({ sound: errors === 0, diagnostics: foundAsData(diagnostics, tongue) });
  else {
    tellFound(diagnostics, tongue);
    tellLine(errors === 0 ? `${file} is ready to build.` : `${file}: ${count(errors, 'problem')} to mend.`);
  }
  return errors === 0 ? 0 : 1;
}

function findIn(
  opened: Opened,
  solver: Solver,
): { readonly diagnostics: readonly Diagnostic[]; readonly tongue: Tongue } {
  if (opened.kind === 'unreadable') return { diagnostics: opened.diagnostics, tongue: PLAIN_TONGUE };
  const planned = planJob(opened.workbook, solver);
  return { diagnostics: [...opened.diagnostics, ...planned.diagnostics], tongue: tongueOf(planned.job) };
}
