/** B2 before B10: runs of figures count as numbers, and everything else by its letters. */
export function inCabinetOrder(a: string, b: string): number {
  const [left, right] = [chunks(a), chunks(b)];
  for (let at = 0; at < Math.max(left.length, right.length); at += 1) {
    const [one, other] = [left[at] ?? '', right[at] ?? ''];
    const numbers = /^\d/.test(one) && /^\d/.test(other) ? Number(one) - Number(other) : 0;
    if (numbers !== 0) return numbers;
    if (one !== other) return one < other ? -1 : 1;
  }
  return 0;
}

const chunks = (text: string): readonly string[] => text.match(/\d+|\D+/g) ?? [];

/** One at least. */
export type Some<T> = readonly [T, ...T[]];

/** Things under what they have in common, in the order in which each group is first met. */
export function grouped<T>(things: readonly T[], common: (thing: T) => string): ReadonlyMap<string, Some<T>> {
  const groups = new Map<string, [T, ...T[]]>();
  for (const thing of things) {
    const key = common(thing);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [thing]);
    else group.push(thing);
  }
  return groups;
}

/** So many to a row; the last row may be shorter. */
export const inRows = <T>(things: readonly T[], columns: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(things.length / columns) }, (_, row) =>
    things.slice(row * columns, (row + 1) * columns),
  );
