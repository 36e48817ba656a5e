import { at } from './at.ts';
import { NumericalError, unlessNumericalError } from './numerical-error.ts';
import { clamped, type ParameterSpace } from './parameter-space.ts';

export type Residuals = (parameters: readonly number[]) => readonly number[];

export interface DifferenceOptions extends ParameterSpace {
  /** Relative error of the residuals; that of a rounding by default. */
  readonly precision?: number;
  readonly differences?: 'central' | 'forward';
}

/** The residuals at a place, or null where they cannot be had: a NumericalError, or a number that is not finite. */
export function residualsAt(residuals: Residuals, parameters: readonly number[]): readonly number[] | null {
  const found = unlessNumericalError(() => residuals(parameters));
  return found?.every(Number.isFinite) === true ? found : null;
}

/**
 * The derivatives of residuals by parameters, a row for each residual, from differences.
 *
 * Steps balance the error of the formula against that of the residuals: cbrt(precision) of the typical change for central
 * differences (relative error about precision^(2/3)), sqrt(precision) for forward ones (precision^(1/2)). A step that would
 * leave the bounds, or the region where the residuals exist, is taken on one side alone.
 *
 * @param here the residuals at `parameters`
 * @throws NumericalError 'non-finite' when a parameter cannot be moved either way
 */
export function differenceJacobian(
  residuals: Residuals,
  parameters: readonly number[],
  here: readonly number[],
  options: DifferenceOptions = {},
): number[][] {
  const { typical, precision = Number.EPSILON, differences = 'central' } = options;
  const central = differences === 'central';
  const fraction = central ? Math.cbrt(precision) : Math.sqrt(precision);

  const columns = parameters.map((value, j) => {
    const step = fraction * (typical?.[j] ?? (Math.abs(value) || 1));
    const moved = (change: number): readonly [number, readonly number[]] => {
      const place = clamped(options, parameters.with(j, value + change));
      const found = central || place[j] === value + change ? residualsAt(residuals, place) : null;
      return found === null ? [value, here] : [place[j] ?? value, found];
    };
    const [high, rHigh] = moved(step);
    const [low, rLow] = central || high === value ? moved(-step) : [value, here];
    if (high === low)
      throw new NumericalError(
        'non-finite',
        `no residuals on either side of parameter ${j} at ${value}`,
        value,
      );
    return rHigh.map((r, i) => (r - at(rLow, i)) / (high - low));
  });
  return here.map((_, i) => columns.map((column) => at(column, i)));
}

/** Relative error of the derivatives that the options give: of the formula and the residuals' precision together. */
export const jacobianAccuracy = ({
  precision = Number.EPSILON,
  differences = 'central',
  jacobian,
}: DifferenceOptions & { readonly jacobian?: unknown }): number => {
  if (jacobian !== undefined) return Number.EPSILON;
  return differences === 'central' ? Math.cbrt(precision) ** 2 : Math.sqrt(precision);
};
