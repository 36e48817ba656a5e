import { at } from './at.ts';

/** Where the parameters of a fit may be, and how large a change of each is large. */
export interface ParameterSpace {
  readonly lower?: readonly number[];
  readonly upper?: readonly number[];
  /** For each parameter a change that bends the residuals noticeably; its own size (1 for 0) by default. */
  readonly typical?: readonly number[];
}

const lowest = ({ lower }: ParameterSpace, j: number): number => lower?.[j] ?? -Infinity;
const highest = ({ upper }: ParameterSpace, j: number): number => upper?.[j] ?? Infinity;

/** The nearest place within the bounds. */
export const clamped = (space: ParameterSpace, parameters: readonly number[]): number[] =>
  parameters.map((value, j) => clampedOne(space, value, j));

/** The nearest value of parameter j within its bounds. */
export const clampedOne = (space: ParameterSpace, value: number, j: number): number =>
  Math.min(Math.max(value, lowest(space, j)), highest(space, j));

/** The larger of the parameter and its typical change; 1 where both are 0. */
const sizeOf = ({ typical }: ParameterSpace, value: number, j: number): number =>
  Math.max(Math.abs(value), typical === undefined ? 0 : at(typical, j)) || 1;

/** The largest change of a parameter as a share of its size. */
export const relativeChange = (
  space: ParameterSpace,
  parameters: readonly number[],
  step: readonly number[],
): number => Math.max(...step.map((change, j) => Math.abs(change) / sizeOf(space, at(parameters, j), j)));

/**
 * The indices of the parameters that are free to follow a descent: all but those within `margin`, as a share of their size,
 * of a bound that the descent points at.
 *
 * @param gradient of what is to be minimised
 */
export const freeParameters = (
  space: ParameterSpace,
  parameters: readonly number[],
  gradient: readonly number[],
  margin: number,
): number[] =>
  [...parameters.keys()].filter((j) => {
    const value = at(parameters, j);
    const slope = at(gradient, j);
    const room = slope > 0 ? value - lowest(space, j) : highest(space, j) - value;
    return slope === 0 || room > margin * sizeOf(space, value, j);
  });
