/** What `make` makes, made when it is first asked for and kept. */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** The same for each thing that something is made of, kept as long as that thing is in use. */
export function oncePer<Of extends object, T>(make: (of: Of) => T): (of: Of) => T {
  const made = new WeakMap<Of, { readonly value: T }>();
  return (of) => {
    const known = made.get(of) ?? { value: make(of) };
    made.set(of, known);
    return known.value;
  };
}

/** The same for numbers. */
export function oncePerNumber<T>(make: (of: number) => T): (of: number) => T {
  const made = new Map<number, { readonly value: T }>();
  return (of) => {
    const known = made.get(of) ?? { value: make(of) };
    made.set(of, known);
    return known.value;
  };
}
