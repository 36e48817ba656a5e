/**
 * The element at a place that must be there: what an index finds, or an error that names it, never a 0 or NaN in its stead.
 *
 * @param list of elements none of which is undefined; a typed array serves as well
 * @param i from 0
 * @throws RangeError when there is no element i, which is an error of the program and never of its input
 */
export function at<T extends number | string | boolean | bigint | object | null>(
  list: ArrayLike<T>,
  i: number,
): T {
  const found = list[i];
  if (found === undefined) throw noElement(list, i);
  return found;
}

/** Apart from `at`, which thereby stays small enough for the engine to write it out in an inner loop. */
const noElement = ({ length }: ArrayLike<unknown>, i: number): RangeError =>
  new RangeError(`there is no element ${i} in a list of ${length}`);
