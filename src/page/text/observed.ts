/** A value that others may watch. */
export interface Observed<T> {
  readonly value: () => T;
  readonly set: (value: T) => void;
  /** Called with every new value from now on. */
  readonly watch: (seen: (value: T) => void) => void;
}

export function observed<T>(first: T): Observed<T> {
  let current = first;
  const watchers: ((value: T) => void)[] = [];
  return {
    value: () => current,
    set: (value) => {
      if (value === current) return;
      current = value;
      for (const seen of watchers) seen(value);
    },
    watch: (seen) => {
      watchers.push(seen);
    },
  };
}
