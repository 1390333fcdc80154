/** A function that works out each answer once. */
export function remembered<Key, Answer>(answer: (key: Key) => Answer): (key: Key) => Answer {
  const known = new Map<Key, Answer>();
  return (key) => {
    if (!known.has(key)) known.set(key, answer(key));
    return known.get(key)!;
  };
}
