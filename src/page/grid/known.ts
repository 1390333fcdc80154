interface Kept<Key, Value> {
  readonly get: (key: Key) => Value | undefined;
  readonly set: (key: Key, value: Value) => unknown;
}

/** What is kept under a key, made when it is first asked for. */
export function known<Key, Value>(kept: Kept<Key, Value>, key: Key, make: () => Value): Value {
  const before = kept.get(key);
  if (before !== undefined) return before;
  const made = make();
  kept.set(key, made);
  return made;
}
