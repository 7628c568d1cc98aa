/** The best ways to go on, as a heap with the worst at the top. */
export type Ways = {
  readonly value: Float64Array;
  readonly from: Int32Array;
  readonly lie: Int32Array;
  readonly where: Uint8Array;
  count: number;
};

/** Room for so many. */
export const waysFor = (count: number): Ways => ({
  value: new Float64Array(count),
  from: new Int32Array(count),
  lie: new Int32Array(count),
  where: new Uint8Array(count),
  count: 0,
});

/** Keeps a way, in place of the worst where there are as many as there is room for, if it is better than that. */
export function keepWay(ways: Ways, value: number, from: number, lie: number, where: number): void {
  const { value: values } = ways;
  let at: number;
  if (ways.count < values.length) {
    at = ways.count;
    ways.count += 1;
    for (let above = (at - 1) >> 1; at > 0 && (values[above] ?? 0) < value; above = (at - 1) >> 1) {
      moveWay(ways, above, at);
      at = above;
    }
  } else {
    if (value >= (values[0] ?? 0)) return;
    at = 0;
    for (let below = 1; below < ways.count; below = 2 * at + 1) {
      const larger = below + 1 < ways.count && (values[below + 1] ?? 0) > (values[below] ?? 0) ? below + 1 : below;
      if ((values[larger] ?? 0) <= value) break;
      moveWay(ways, larger, at);
      at = larger;
    }
  }
  values[at] = value;
  ways.from[at] = from;
  ways.lie[at] = lie;
  ways.where[at] = where;
}

function moveWay({ value, from, lie, where }: Ways, one: number, to: number): void {
  value[to] = value[one] ?? 0;
  from[to] = from[one] ?? 0;
  lie[to] = lie[one] ?? 0;
  where[to] = where[one] ?? 0;
}
