import type { BlankCode } from '../../codes/codes.ts';
import type { Shop } from '../../trade/shop.ts';
import type { CuttingProblem } from './problem.ts';
import { type OpenBin, piecesIn } from './rows.ts';

type Match = Shop['planning']['colourMatch'];

/** What a blank should share its board with: the other stile of its door, or the rest of it; undefined for none. */
export function companyOf(code: BlankCode, match: Match): string | undefined {
  const [, door, mark] = /^(.+)-([^-]+)$/.exec(code) ?? [];
  if (match === 'none' || door === undefined || /^(TEST|SPARE|STOPS)\b/.test(door)) return undefined;
  return match === 'door' || mark === 'SL' || mark === 'SR' ? door : undefined;
}

/** The kinds of which every piece is a stile that should come with its fellow: an odd number on a board parts a pair. */
export function pairedKinds(problem: CuttingProblem, match: Match): ReadonlySet<number> {
  const paired = problem.pieces.flatMap((piece, kind) =>
    piece.blanks.every(code => /-S[LR]$/.test(code) && companyOf(code, match) !== undefined) ? [kind] : [],
  );
  return new Set(paired);
}

/** So many of the next blanks of a size are looked at for one whose company is on the board. */
const LOOKED_AT = 60;

/**
 * Which blank each piece of each bin is. Pieces of one size are all alike to the saw, so those that should look alike are
 * put on one board wherever it yields them: the company that finds most of its pieces there comes first.
 */
export function assignBlanks(
  problem: CuttingProblem,
  bins: readonly OpenBin[],
  match: Match,
): readonly (readonly BlankCode[])[][] {
  const waiting = problem.pieces.map(piece => [...piece.blanks]);
  return bins.map(bin => {
    const places = new Map<number, number>();
    for (const kind of piecesIn(bin)) places.set(kind, (places.get(kind) ?? 0) + 1);
    const given = problem.pieces.map(() => [] as BlankCode[]);
    for (
      let company = largest(waiting, places, match);
      company !== undefined;
      company = largest(waiting, places, match)
    )
      for (const [kind, code] of company) give(waiting, places, given, kind, code);
    for (const [kind, count] of places)
      for (const code of (waiting[kind] ?? []).slice(0, count)) give(waiting, places, given, kind, code);
    return given;
  });
}

function give(
  waiting: readonly BlankCode[][],
  places: Map<number, number>,
  given: readonly BlankCode[][],
  kind: number,
  code: BlankCode,
): void {
  const row = waiting[kind] ?? [];
  row.splice(row.indexOf(code), 1);
  places.set(kind, (places.get(kind) ?? 0) - 1);
  given[kind]?.push(code);
}

/** The company of which most pieces find a place, two at least. */
function largest(
  waiting: readonly BlankCode[][],
  places: ReadonlyMap<number, number>,
  match: Match,
): readonly (readonly [kind: number, code: BlankCode])[] | undefined {
  if (match === 'none') return undefined;
  const companies = new Map<string, [number, BlankCode][]>();
  for (const [kind, count] of places) {
    if (count <= 0) continue;
    for (const code of (waiting[kind] ?? []).slice(0, LOOKED_AT)) {
      const name = companyOf(code, match);
      if (name === undefined) continue;
      const company = companies.get(name) ?? [];
      if (company.filter(([other]) => other === kind).length < count) company.push([kind, code]);
      companies.set(name, company);
    }
  }
  let best: [number, BlankCode][] = [];
  for (const company of companies.values()) if (company.length > best.length) best = company;
  return best.length < 2 ? undefined : best;
}
