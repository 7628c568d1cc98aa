import type { Order, Reading, Result, Workbooks } from '../../src/inbox/ports.ts';

const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
const bytes = (written: string): Uint8Array => new TextEncoder().encode(written);

/**
 * Workbooks as plain text, for tests of filing: the first word is the job; `half` at the end is a copy that has not
 * ended, `bad` one to mend, `noise` at the start no workbook at all. A packet says which workbook it was made of.
 */
export const plainWorkbooks = (builders = 2, pauseMs = 0): Workbooks => ({
  builders,
  read: async given => readingOf(text(given)),
  build: async order => {
    if (pauseMs > 0) await new Promise(resolve => setTimeout(resolve, pauseMs));
    return resultOf(order);
  },
  close: async () => undefined,
});

function readingOf(written: string): Reading {
  if (written.endsWith('half') || written === '') return { kind: 'half' };
  return written.startsWith('noise') ? { kind: 'unreadable' } : { kind: 'workbook', job: written.split(' ')[0] ?? '' };
}

function resultOf({ bytes: given, revision, earlier }: Order): Result {
  const written = text(given);
  const job = written.startsWith('noise') ? '' : (written.split(' ')[0] ?? '');
  if (job === '' || written.endsWith('bad') || written.endsWith('half')) {
    return {
      kind: 'to-mend',
      job,
      files: [{ name: 'marked.xlsx', bytes: bytes(`marked ${written}`) }],
      findings: [`<${written}>`],
    };
  }
  const packet = `packet of ${written}, revision ${revision}, since ${earlier?.letter ?? 'none'}`;
  const files = ['packet.pdf', 'tags.pdf', 'manifest.json'].map(name => ({ name, bytes: bytes(`${name}: ${packet}`) }));
  return { kind: 'packet', job, files, doors: 1, parts: 6, pages: 2, warnings: 0 };
}
