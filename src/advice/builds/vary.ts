import { DomainError } from '../../quantities/domain-error.ts';

/** One thing that is varied, and the values it takes in turn. */
export interface Axis<T> {
  readonly name: string;
  readonly values: readonly T[];
}

/** How many combinations the axes have. */
export const gridSize = <T>(axes: readonly Axis<T>[]): number =>
  axes.reduce((size, { values }) => size * values.length, 1);

/** The combination with a number, the last axis running fastest. @throws DomainError outside 0 to size − 1 */
export function gridPoint<T>(axes: readonly Axis<T>[], index: number): readonly T[] {
  if (!(Number.isInteger(index) && index >= 0 && index < gridSize(axes)))
    throw new DomainError('number of a combination', index, `0 to ${gridSize(axes) - 1}`);
  let rest = index;
  const point: T[] = [];
  for (const { values } of axes.toReversed()) {
    const value = values[rest % values.length];
    if (value !== undefined) point.unshift(value);
    rest = Math.floor(rest / values.length);
  }
  return point;
}

/**
 * Evaluate the combinations from `from` up to but not including `to`, in order. Nothing is shared between them, so that any
 * split into such ranges gives the same answers.
 */
export function sweepRange<T, R>(
  axes: readonly Axis<T>[],
  { from, to }: { readonly from: number; readonly to: number },
  evaluate: (point: readonly T[]) => R,
): readonly R[] {
  return Array.from({ length: to - from }, (_, i) => evaluate(gridPoint(axes, from + i)));
}
