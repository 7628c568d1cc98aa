import { Worker } from 'node:worker_threads';
import type { WriteTable } from '../render/table-workbook.ts';

/** Writes a table as a workbook in a thread of its own, while this one prints the pages. */
export const tableWorkbookApart: WriteTable = async table => {
  if (import.meta.url.endsWith('.ts')) {
    // From source there is no compiled thread.
    const { tableWorkbook } = await import('../render/table-workbook.ts');
    return tableWorkbook(table);
  }
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./table-worker.js', import.meta.url), { workerData: table });
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error('the parts workbook was not written')));
  });
};
