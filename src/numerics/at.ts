/**
 * The element at a place that must be there: what an index finds, or an error that names it, never a 0 or NaN in its stead.
 *
 * @param list of elements none of which is undefined
 * @param i from 0
 * @throws RangeError when there is no element i, which is an error of the program and never of its input
 */
export function at<T extends number | string | boolean | bigint | object | null>(
  list: readonly T[],
  i: number,
): T {
  const found = list[i];
  if (found === undefined) throw noElement(list, i);
  return found;
}

/**
 * As `at`, of a Float64Array alone, for inner loops: the engine compiles a function for the kinds of list it has seen, and one
 * that has seen a single kind reads as fast as an index.
 *
 * @throws RangeError as `at`
 */
export function floatAt(list: Float64Array, i: number): number {
  const found = list[i];
  if (found === undefined) throw noElement(list, i);
  return found;
}

/** Apart from its callers, which thereby stay small enough for the engine to write them out in place. */
const noElement = ({ length }: ArrayLike<unknown>, i: number): RangeError =>
  new RangeError(`there is no element ${i} in a list of ${length}`);
