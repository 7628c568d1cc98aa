import { jobMark } from '../../codes/barcode.ts';
import { checks } from '../../codes/check-character.ts';
import type { Manifest } from '../../render/packet.ts';
import { type Book, bookOf, compareRevisions } from './book.ts';

/** The packets that a station knows, by job number. */
export type Shelf = { readonly jobs: ReadonlyMap<string, ShelvedJob> };

export type ShelvedJob = {
  /** How the symbols of its tags begin. */
  readonly mark: string;
  /** The latest revision: what the floor works to. */
  readonly book: Book;
  /** Revisions before it, the latest first: what old tags were printed from. */
  readonly earlier: readonly Book[];
  readonly targets: ReadonlyMap<string, Target>;
};

/** What a symbol of a job stands for. */
export type Target = { readonly kind: 'piece' | 'setup' | 'offcut'; readonly code: string };

export function shelve(manifests: readonly Manifest[]): Shelf {
  const books = new Map<string, Book[]>();
  for (const manifest of manifests) {
    const book = bookOf(manifest);
    books.set(book.job, [...(books.get(book.job) ?? []), book]);
  }
  return { jobs: new Map([...books].flatMap(([job, revisions]) => shelvedJob(job, revisions))) };
}

/** How a symbol is written: anything else that somebody types is a code in plain letters. */
export const isSymbol = (text: string): boolean => /^[0-9A-Z]{11}$/.test(text) && checks(text);

/** As a scanner or a hurried hand leaves it: blanks around and inside, small letters. */
export const tidyCode = (typed: string): string => typed.replaceAll(/\s+/g, '').toUpperCase();

/** The jobs that `code` may be of: by its job mark where it is a symbol, by the code itself where it is typed. */
export function jobsOf(shelf: Shelf, code: string): readonly ShelvedJob[] {
  const all = [...shelf.jobs.values()];
  if (isSymbol(code)) return all.filter(({ mark }) => code.startsWith(mark));
  const { base } = splitRemake(code);
  return all.filter(job => [job.book, ...job.earlier].some(book => book.pieces.has(base)));
}

/** A remake's code is that of the piece which it replaces, and its number: `B7.A.1L-SL+1`. */
export const remakeCode = (code: string, remake: number): string => (remake === 0 ? code : `${code}+${remake}`);

export function splitRemake(code: string): { readonly base: string; readonly remake: number } {
  const [, base = code, remake = '0'] = /^(.*)\+([1-9]\d{0,3})$/.exec(code) ?? [];
  return { base, remake: Number(remake) };
}

function shelvedJob(job: string, revisions: readonly Book[]): readonly (readonly [string, ShelvedJob])[] {
  const [book, ...earlier] = [...revisions].sort((a, b) => compareRevisions(b.revision, a.revision));
  if (book === undefined) return [];
  // The current revision comes last, so that it has the word where two revisions speak of one symbol.
  const targets = new Map([...earlier, book].flatMap(targetsOf));
  return [[job, { mark: jobMark(job), book, earlier, targets }]];
}

const targetsOf = ({ pieces, manifest }: Book): readonly (readonly [string, Target])[] => [
  ...[...pieces.values()].map(({ barcode, code }) => [barcode, { kind: 'piece', code }] as const),
  ...manifest.operations.flatMap(operation =>
    operation.setups.map(({ barcode, code }) => [barcode, { kind: 'setup', code }] as const),
  ),
  ...manifest.cutPlans.flatMap(plan =>
    plan.offcuts.map(({ barcode, code }) => [barcode, { kind: 'offcut', code }] as const),
  ),
];
