import { parentPort } from 'node:worker_threads';
import type { Diagnosed } from '../diagnostics/diagnostic.ts';
import { markUp } from './mark-up.ts';
import type { Mark, MarkWords } from './marks.ts';
import { readCells } from './read-xlsx-cells.ts';
import { type Table, tableWorkbook } from './table-workbook.ts';
import type { Workbook } from './workbook.ts';

/** Work with the spreadsheet library, which is done in this thread. */
export type Request =
  | { readonly task: 'read'; readonly bytes: Uint8Array; readonly file: string }
  | { readonly task: 'mark'; readonly bytes: Uint8Array; readonly marks: readonly Mark[]; readonly words: MarkWords }
  | { readonly task: 'table'; readonly table: Table };

/** What comes of each; a workbook that cannot be marked is undefined. */
export type Answers = {
  readonly read: Diagnosed<Workbook | undefined>;
  readonly mark: Uint8Array | undefined;
  readonly table: Uint8Array;
};

function answer(request: Request): Promise<Answers[Request['task']]> {
  switch (request.task) {
    case 'read':
      return readCells(request.bytes, request.file);
    case 'mark':
      return markUp(request.bytes, request.marks, request.words);
    case 'table':
      return tableWorkbook(request.table);
  }
}

parentPort?.on('message', (request: Request) => {
  void answer(request).then(found => parentPort?.postMessage(found));
});
