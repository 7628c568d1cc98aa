import { pick } from './chance.ts';
import type { Looking } from './placing.ts';
import type { PieceKind } from './problem.ts';

/** Largest first by one measure or another, with some noise. */
export function shuffled({ problem, chance }: Looking, kinds: readonly number[]): readonly number[] {
  const measure = MEASURES[pick(chance, MEASURES.length)] ?? MEASURES[0];
  const noise = chance() * NOISE;
  const keys = new Float64Array(kinds.length);
  for (let at = 0; at < kinds.length; at += 1) {
    const piece = problem.pieces[kinds[at] ?? 0];
    keys[at] = (piece === undefined ? 0 : measure(piece)) * (1 - noise * chance());
  }
  return kinds.length > FEW ? sorted(kinds, keys) : sortedIn(kinds.slice(), keys);
}

/** So few are put in order faster one by one. */
const FEW = 60;

const sorted = (kinds: readonly number[], keys: Float64Array): readonly number[] =>
  kinds
    .map((kind, at) => ({ kind, key: keys[at] ?? 0 }))
    .sort((one, two) => two.key - one.key || one.kind - two.kind)
    .map(({ kind }) => kind);

function sortedIn(kinds: number[], keys: Float64Array): readonly number[] {
  for (let from = 1; from < kinds.length; from += 1) {
    const kind = kinds[from] ?? 0;
    const key = keys[from] ?? 0;
    let at = from;
    for (; at > 0 && (keys[at - 1] ?? 0) < key; at -= 1) {
      keys[at] = keys[at - 1] ?? 0;
      kinds[at] = kinds[at - 1] ?? 0;
    }
    keys[at] = key;
    kinds[at] = kind;
  }
  return kinds;
}

const NOISE = 0.5;
const MEASURES: readonly [(piece: PieceKind) => number, ...((piece: PieceKind) => number)[]] = [
  piece => piece.area,
  piece => piece.length,
  piece => piece.width,
  piece => Math.max(piece.length, piece.width),
];
