import type { Answer, Decision, Source } from './answer.ts';
import type { Piece } from './book.ts';
import type { Happening } from './event.ts';
import { keep, type OpenJob, type Tagged, tell } from './open-job.ts';
import { currentCode, factsOf } from './piece-facts.ts';
import { currentRemake } from './route.ts';
import type { Scan } from './scan.ts';
import { remakeCode } from './shelf.ts';

/** A piece is spoiled: after one question it is to be made anew, under a code of its own, from the start of its route. */
export function answerToSpoiled(job: OpenJob, { piece, remake }: Tagged, scan: Scan): Decision {
  const current = currentRemake(job.state, piece.code);
  const facts = factsOf(job.book, piece, remake);
  if (remake > current) return tell({ kind: 'unknown', code: scan.code });
  if (remake < current) return tell({ kind: 'old-tag', piece: facts, code: currentCode(job.state, piece) });
  const pieces = spoiledWith(job, piece).map(({ code }) => ({ code, remake: currentRemake(job.state, code) }));
  const what: Happening = { kind: 'spoiled', pieces, reason: scan.reason };
  if (!scan.agreed.includes('spoil')) return tell({ kind: 'ask-spoil', piece: facts, remakes: remakesOf(what) });
  return keep(job, what, answerSpoiled(job, what));
}

/** What a kept `spoiled` is told as. The first of its pieces is the one that was scanned. */
export function answerSpoiled(job: OpenJob, what: Happening & { readonly kind: 'spoiled' }): Answer {
  const [first] = what.pieces;
  const piece = job.book.pieces.get(first?.code ?? '');
  if (first === undefined || piece === undefined)
    return { kind: 'gone', code: first?.code ?? '', job: job.book.job, revision: job.book.revision };
  return {
    kind: 'spoiled',
    piece: factsOf(job.book, piece, first.remake),
    remakes: remakesOf(what),
    from: sources(job, piece),
  };
}

/** A door takes all its parts with it: once it is glued, none of them comes out again. */
const spoiledWith = ({ book }: OpenJob, piece: Piece): readonly Piece[] =>
  piece.kind === 'part' ? [piece] : [piece, ...(book.partsOfDoor.get(piece.code) ?? [])];

const remakesOf = (what: Happening & { readonly kind: 'spoiled' }): readonly string[] =>
  what.pieces.map(({ code, remake }) => remakeCode(code, remake + 1));

/** Of a part, offcuts of its stock that hold its rough piece, the smallest first; and then the stock itself. */
function sources({ book }: OpenJob, piece: Piece): readonly Source[] {
  const parts = piece.kind === 'part' ? [piece] : (book.partsOfDoor.get(piece.code) ?? []);
  const stocks = new Set(parts.flatMap(({ part }) => part?.stock ?? []));
  const rough = piece.part?.rough;
  const offcuts = book.manifest.cutPlans
    .filter(plan => stocks.has(plan.stock))
    .flatMap(plan => plan.offcuts)
    .filter(each => rough !== null && rough !== undefined && holds(each, rough))
    .sort((a, b) => a.length.nm - b.length.nm || a.width.nm - b.width.nm || (a.code < b.code ? -1 : 1));
  return [
    ...offcuts.slice(0, OFFCUTS_MAX).map(each => ({
      kind: 'offcut' as const,
      code: each.code,
      size: [each.length.text, each.width.text],
    })),
    ...[...stocks].map(stock => ({ kind: 'spare' as const, stock })),
  ];
}

/** As many as somebody will go and look for on the rack. */
const OFFCUTS_MAX = 3;

type Flat = { readonly length: { readonly nm: number }; readonly width: { readonly nm: number } };
const holds = (offcut: Flat, rough: Flat): boolean =>
  offcut.length.nm >= rough.length.nm && offcut.width.nm >= rough.width.nm;
