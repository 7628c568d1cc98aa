import type { Part } from '../../calculate/door-set.ts';

/** Parts with one key together; groups in the keys' order and parts in their codes', whatever the order of rows was. */
export function grouped(parts: readonly Part[], keyOf: (part: Part) => string): readonly (readonly Part[])[] {
  const groups = new Map<string, Part[]>();
  for (const part of parts) {
    const key = keyOf(part);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [part]);
    else group.push(part);
  }
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    .map(([, group]) => group.sort((a, b) => (a.code < b.code ? -1 : 1)));
}

/** In their order, so many at a time; the last may be fewer. */
export const inChunks = <T>(all: readonly T[], size: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(all.length / size) }, (_, at) => all.slice(at * size, (at + 1) * size));
