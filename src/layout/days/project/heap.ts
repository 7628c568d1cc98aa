/** What comes out is the least of what went in. */
export type Heap<T> = {
  readonly push: (item: T) => void;
  readonly pop: () => T | undefined;
  readonly peek: () => T | undefined;
};

/** A binary heap. Where `compare` calls two items equal, which comes first depends on what went in before. */
export function heap<T>(compare: (a: T, b: T) => number): Heap<T> {
  const items: T[] = [];
  return {
    peek: () => items[0],
    push: item => {
      items.push(item);
      rise(items, items.length - 1, compare);
    },
    pop: () => {
      const [first] = items;
      const last = items.pop();
      if (items.length > 0 && last !== undefined) {
        items[0] = last;
        sink(items, compare);
      }
      return first;
    },
  };
}

function rise<T>(items: T[], from: number, compare: (a: T, b: T) => number): void {
  for (let at = from; at > 0; ) {
    const above = (at - 1) >> 1;
    if (!swapped(items, above, at, compare)) return;
    at = above;
  }
}

function sink<T>(items: T[], compare: (a: T, b: T) => number): void {
  for (let at = 0; ; ) {
    const left = 2 * at + 1;
    const [first, second] = [items[left], items[left + 1]];
    if (first === undefined) return;
    const below = second !== undefined && compare(second, first) < 0 ? left + 1 : left;
    if (!swapped(items, at, below, compare)) return;
    at = below;
  }
}

/** Puts the lesser of two above the other, and says whether they changed places. */
function swapped<T>(items: T[], above: number, below: number, compare: (a: T, b: T) => number): boolean {
  const [upper, lower] = [items[above], items[below]];
  if (upper === undefined || lower === undefined || compare(upper, lower) <= 0) return false;
  items[above] = lower;
  items[below] = upper;
  return true;
}
