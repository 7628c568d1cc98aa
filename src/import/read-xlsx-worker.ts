import { parentPort } from 'node:worker_threads';
import { readCells } from './read-xlsx-cells.ts';

/** One workbook to read, and what comes of it. */
export type Request = { readonly bytes: Uint8Array; readonly file: string };

// A thread of its own, so that a workbook which takes too long or too much can be given up, and nothing else with it.
parentPort?.on('message', ({ bytes, file }: Request) => {
  readCells(bytes, file).then(
    read => parentPort?.postMessage(read),
    (failed: unknown) => {
      throw failed;
    },
  );
});
