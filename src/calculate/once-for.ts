/**
 * A function that works out its result once for each key and then hands out the same one: what depends on a style or on
 * the shop alone is shared by all doors. A third of the memory of 10,000 doors was such numbers.
 */
export function onceFor<Key extends object, Value>(of: (key: Key) => Value): (key: Key) => Value {
  const known = new WeakMap<Key, { readonly value: Value }>();
  return key => {
    const found = known.get(key) ?? { value: of(key) };
    known.set(key, found);
    return found.value;
  };
}

/** The same for keys that are numbers or words, of which there must be few: they are all kept. */
export function onceForEach<Key extends number | string, Value>(of: (key: Key) => Value): (key: Key) => Value {
  const known = new Map<Key, { readonly value: Value }>();
  return key => {
    const found = known.get(key) ?? { value: of(key) };
    known.set(key, found);
    return found.value;
  };
}
