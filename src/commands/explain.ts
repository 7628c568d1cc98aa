import { calculate } from '../calculate/index.ts';
import { isError } from '../diagnostics/diagnostic.ts';
import { importJob } from '../import/index.ts';
import { packagedWords } from '../packaged.ts';
import { explain as explained, similarCodes } from '../render/explain.ts';
import type { ExitCode } from './exit-code.ts';
import { PLAIN_TONGUE, tellFound, tellJson, tellLine, tongueOf } from './telling.ts';
import type { Opened } from './workbook-file.ts';

/**
 * `stilebook explain FILE CODE`: how every number of a door or part came about. Works on what can be calculated, so
 * that a workbook with a problem elsewhere still explains itself.
 */
export function explain(file: string, opened: Opened, code: string, options: { readonly json?: boolean }): ExitCode {
  if (opened.kind === 'unreadable') {
    tellFound(opened.diagnostics, PLAIN_TONGUE);
    return 1;
  }
  const job = importJob(opened.workbook);
  const doorSet = calculate(job.value);
  const lines = explained(code, { job: job.value, doorSet: doorSet.value }, packagedWords(job.value.language));
  if (lines === undefined) {
    // What cannot be made was left out: the reason may be one of these.
    const found = [...opened.diagnostics, ...job.diagnostics, ...doorSet.diagnostics];
    tellFound(found.filter(isError), tongueOf(job.value));
    const similar = similarCodes(code, doorSet.value);
    process.stderr.write(
      `${file} has no door or part ${code}.${similar.length === 0 ? '' : ` Near it: ${similar.join(', ')}.`}\n`,
    );
    return 1;
  }
  if (options.json === true) tellJson({ code, lines });
  else for (const line of lines) tellLine(line);
  return 0;
}
