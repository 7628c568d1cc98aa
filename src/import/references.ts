import { type Diagnosed, type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import { cellOf } from '../diagnostics/place.ts';
import { bare, nearest, some } from './columns.ts';
import type { Opening } from './job.ts';
import { CABINETS, type TypedOpening } from './sheets/cabinets.ts';

/** Rows of one sheet under their names; `named` has those, too, whose row did not read. */
export type Named<T> = { readonly items: readonly T[]; readonly named: readonly string[] };

/** The openings with their styles found, and a finding for each name that leads nowhere or stands twice. */
export function resolveOpenings(
  openings: readonly TypedOpening[],
  styles: Named<{ readonly name: string }>,
): Diagnosed<readonly Opening[]> {
  const diagnostics: Diagnostic[] = [...doubled(openings), ...strangers(openings)];
  const resolved: Opening[] = [];
  for (const opening of openings) {
    const style = styleOf(opening, styles);
    if (style.value !== undefined) resolved.push({ ...opening, style: style.value });
    diagnostics.push(...style.diagnostics);
  }
  return { value: resolved, diagnostics };
}

/** The style's name as Styles writes it. With one style only, an empty cell means that one. */
function styleOf(opening: TypedOpening, styles: Named<{ readonly name: string }>): Diagnosed<string | undefined> {
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
  return { value: undefined, diagnostics: [problem('style-unknown', at, facts)] };
}

/** Cabinet and label, as the bench tells them apart: b1 and B 1 are one. */
const address = (name: string): string => name.split('/').map(bare).join('/');

function doubled(openings: readonly TypedOpening[]): readonly Diagnostic[] {
  const first = new Map<string, TypedOpening>();
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

/** Neighbours that are no opening of this workbook. */
function strangers(openings: readonly TypedOpening[]): readonly Diagnostic[] {
  const known = new Map(openings.flatMap(opening => namesOf(opening).map(each => [address(each), each])));
  return openings.flatMap(({ faceFrame, from }) =>
    (['rightNeighbour', 'topNeighbour'] as const).flatMap(field => {
      const typed = faceFrame[field];
      if (typed === undefined || known.has(address(typed))) return [];
      const names = [...known.values()];
      const facts = { column: CABINETS[field].name, typed, nearest: nearest(typed, names) ?? '', known: some(names) };
      return [problem('neighbour-unknown', cellOf(from, field), facts)];
    }),
  );
}

const namesOf = ({ cabinet, label }: TypedOpening): readonly string[] =>
  label === '' ? [cabinet] : [cabinet, `${cabinet}/${label}`];
