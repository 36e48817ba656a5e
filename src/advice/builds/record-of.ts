/** A record with one value for each key; the library's own types forget the keys. */
export const recordOf = <K extends string, V>(
  keys: readonly K[],
  value: (key: K) => V,
): Readonly<Record<K, V>> => Object.fromEntries(keys.map((key) => [key, value(key)])) as Record<K, V>;
