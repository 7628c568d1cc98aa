import { type Diagnosed, type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import { cellOf } from '../diagnostics/place.ts';
import { bare, nearest, some } from './columns.ts';
import type { FaceFrame, Opening } from './job.ts';
import { addressOf, type Named } from './named.ts';
import type { CabinetsRead, Reference, TypedOpening } from './sheets/cabinets.ts';
import { CABINETS } from './sheets/cabinets-columns.ts';

/** The openings with their styles found, and a finding for each name that leads nowhere or stands twice. */
export function resolveOpenings(
  cabinets: CabinetsRead,
  styles: Named<{ readonly name: string }>,
): Diagnosed<readonly Opening[]> {
  const directory = directoryOf(cabinets);
  const diagnostics: Diagnostic[] = [...doubled([...cabinets.items, ...cabinets.unread])];
  const resolved: Opening[] = [];
  for (const opening of cabinets.items) {
    const style = styleOf(opening, styles);
    const faceFrame = neighboursOf(opening, directory);
    if (style.value !== undefined) resolved.push({ ...opening, style: style.value, faceFrame: faceFrame.value });
    diagnostics.push(...style.diagnostics, ...faceFrame.diagnostics);
  }
  for (const opening of cabinets.unread) diagnostics.push(...styleOf(opening, styles).diagnostics);
  return { value: resolved, diagnostics };
}

/** The style's name as Styles writes it. With one style only, an empty cell means that one. */
function styleOf(opening: Reference, styles: Named<{ readonly name: string }>): Diagnosed<string | undefined> {
  const { cabinet, style: typed, from } = opening;
  const known = styles.named;
  const at = cellOf(from, 'style');
  if (typed === undefined) {
    return known.length === 1
      ? { value: styles.items[0]?.name, diagnostics: [] }
      : { value: undefined, diagnostics: [problem('style-missing', at, { cabinet, known: some(known) })] };
  }
  const found = styles.items.find(({ name }) => bare(name) === bare(typed));
  // A style whose own row does not read has been reported there.
  if (found !== undefined || known.some(name => bare(name) === bare(typed)))
    return { value: found?.name, diagnostics: [] };
  const facts = { cabinet, typed, nearest: nearest(typed, known) ?? '', known: some(known) };
  return { value: undefined, diagnostics: [problem('style-not-listed', at, facts)] };
}

/** Cabinet and label, as the bench tells them apart: b1 and B 1 are one. */
const address = (name: string): string => name.split('/').map(bare).join('/');

function doubled(references: readonly Reference[]): readonly Diagnostic[] {
  const first = new Map<string, Reference>();
  const openings = [...references].sort((a, b) => a.from.row - b.from.row);
  return openings.flatMap(opening => {
    const { cabinet, label, from } = opening;
    const key = `${bare(cabinet)}/${bare(label)}`;
    const other = first.get(key);
    if (other === undefined) {
      first.set(key, opening);
      return [];
    }
    const field = label === '' ? 'cabinet' : 'label';
    const facts = { cabinet, label, other: String(other.from.row) };
    return [problem('opening-twice', cellOf(from, field), facts, [cellOf(other.from, field)])];
  });
}

/** Finds an opening by what a person calls it. `named` has those, too, whose row did not read. */
type Directory = {
  readonly opening: (typed: string) => TypedOpening | undefined;
  readonly isNamed: (typed: string) => boolean;
  readonly named: readonly string[];
};

function directoryOf({ items, named }: Named<TypedOpening>): Directory {
  const alone = new Map<string, TypedOpening | undefined>();
  for (const opening of items) {
    const cabinet = address(opening.cabinet);
    alone.set(cabinet, alone.has(cabinet) ? undefined : opening);
  }
  const full = new Map(items.map(opening => [address(addressOf(opening.cabinet, opening.label)), opening]));
  const addresses = new Set(named.map(address));
  return {
    opening: typed => full.get(address(typed)) ?? alone.get(address(typed)),
    // A cabinet of several openings names none of them.
    isNamed: typed => addresses.has(address(typed)),
    named,
  };
}

/**
 * The face frame with the neighbours that can be found. One that is no opening of this workbook is said here and taken
 * out, so that nobody asks for it again; one whose own row does not read is only taken out.
 */
function neighboursOf({ faceFrame, from }: TypedOpening, directory: Directory): Diagnosed<FaceFrame> {
  const diagnostics: Diagnostic[] = [];
  const found = (field: 'rightNeighbour' | 'topNeighbour'): string | undefined => {
    const typed = faceFrame[field];
    if (typed === undefined) return undefined;
    const meant = directory.opening(typed);
    if (meant !== undefined) return addressOf(meant.cabinet, meant.label);
    if (directory.isNamed(typed)) return undefined;
    const { named } = directory;
    const facts = { column: CABINETS[field].name, typed, nearest: nearest(typed, named) ?? '', known: some(named) };
    diagnostics.push(problem('neighbour-not-listed', cellOf(from, field), facts));
    return undefined;
  };
  const value = { ...faceFrame, rightNeighbour: found('rightNeighbour'), topNeighbour: found('topNeighbour') };
  return { value, diagnostics };
}
