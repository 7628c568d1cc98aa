import { apart, LIMITS } from '../import/apart.ts';
import type { RenderAssets } from '../render/index.ts';

/** No one waits for a table alone, and its deadline is only looked at when pages have been printed. */
const PATIENCE_SECONDS = 600;

/** Writes a table as a workbook in the thread that read the job's, while this one prints the pages. */
export const tableWorkbookApart: RenderAssets['writeTable'] = async table => {
  const became = await apart({ task: 'table', table }, { ...LIMITS, seconds: PATIENCE_SECONDS });
  if (became.kind === 'done') return became.answer;
  // Larger than what is read in a thread: here it may take what memory there is.
  const { tableWorkbook } = await import('../import/table-workbook.ts');
  return tableWorkbook(table);
};
