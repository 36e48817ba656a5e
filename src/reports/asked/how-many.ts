const A_MILLION = 1e6;

/** A count for a sentence that refuses it: beyond a million its size says nothing, and it may have no end. */
export const howMany = (count: number): string =>
  count <= A_MILLION ? String(count) : 'more than a million';
