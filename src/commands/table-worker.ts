import { parentPort, workerData } from 'node:worker_threads';
import { type Table, tableWorkbook } from '../render/table-workbook.ts';

// The thread of `table-workbook.ts`: one table, one workbook, and it ends.
parentPort?.postMessage(await tableWorkbook(workerData as Table));
